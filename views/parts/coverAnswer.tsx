import { type CoverCheck, type CoverShape, DIALLING_WORTH_MM, type Mark } from '../../shared/words/cover.ts';
import {
  briefLength,
  type LengthUnit,
  lengthFigure,
  printLength,
  UNIT_WORD,
} from '../../shared/words/print.ts';
import { FacePlan, type PlanStation } from '../drawings/facePlan.tsx';
import { TiltPlan } from '../drawings/tiltPlan.tsx';
import { TrackUnrolled } from '../drawings/trackUnrolled.tsx';
import { WallSection } from '../drawings/wallSection.tsx';
import { WallZones } from '../drawings/wallZones.tsx';
import { Cautions } from './caution.tsx';
import { FindingsFolded } from './findingsFolded.tsx';
import { KeyFigures } from './keyFigures.tsx';

export interface CoverDrawingShape extends CoverShape {
  readonly bossDiameterMm: number | null;
  readonly rimDiameterMm: number | null;
  readonly padDiameterMm: number | null;
}

export interface CoverAnswerProps {
  readonly shape: CoverDrawingShape;
  readonly check: CoverCheck;
  readonly unit: LengthUnit;
  /** Starts the ids on a page that shows two answers. */
  readonly id: string;
}

/** Seen at once, whatever they say. */
const LEAD = ['crack', 'wall-left', 'sure-of-it', 'cleans-up', 'dialled-in', 'cuts-left'];

/** The verdict as a heading, the one number that decided it, and where that lies between too thin and enough. */
export function CoverVerdict({ check, unit, id, level = 1 }: CoverVerdictProps) {
  const Heading = level === 1 ? 'h1' : 'h2';
  const cracked = check.findings.some((one) => one.id === 'crack' && one.status === 'fail');
  return (
    <div class="verdict-head">
      <div>
        <Heading class={`verdict verdict-${check.verdict}`}>{check.headline}</Heading>
        <p class="why">{check.because}</p>
      </div>
      {check.minimumWall && !cracked && (
        <figure class="drawing zones-figure">
          <WallZones id={`${id}-zones`} check={check} unit={unit} />
        </figure>
      )}
    </div>
  );
}

interface CoverVerdictProps {
  readonly check: CoverCheck;
  readonly unit: LengthUnit;
  readonly id: string;
  readonly level?: 1 | 2;
}

/** The stations as the plan shows them. */
export function planStations(check: CoverCheck): PlanStation[] {
  return check.stations.map((station, index) => ({
    angleDeg: station.angleDeg,
    radiusMm: station.radiusMm,
    wallMm: station.wallMm,
    wallAfterMm: station.wallAfterMm,
    state: index === check.leastWall.station ? 'thinnest' : 'measured',
  }));
}

/** Heat marks at stations and between them, in one list. */
export function planMarks(check: CoverCheck): Mark[] {
  const at = check.stations.filter((station) => station.markDepthMm > 0);
  return [
    ...at.map(({ angleDeg, radiusMm, markDepthMm }) => ({ angleDeg, radiusMm, depthMm: markDepthMm })),
    ...check.marks.map(({ angleDeg, radiusMm, depthMm }) => ({ angleDeg, radiusMm, depthMm })),
  ];
}

/** Drawings, the few numbers that matter, and every finding with its working. */
export function CoverAnswer({ shape, check, unit, id }: CoverAnswerProps) {
  return (
    <>
      <figure class="drawing">
        <FacePlan
          id={`${id}-plan`}
          shape={shape}
          bossDiameterMm={shape.bossDiameterMm}
          rimDiameterMm={shape.rimDiameterMm}
          padDiameterMm={shape.padDiameterMm}
          stations={planStations(check)}
          marks={planMarks(check)}
          thinnest={check.leastWall.station}
          unit={unit}
        />
        <figcaption>
          The face, seen from the clutch side: each station with the wall left, in {UNIT_WORD[unit]}. Stud 1
          is scribed on the rim.
        </figcaption>
      </figure>
      <KeyFigures figures={coverFigures(check, unit)} />
      <FindingsFolded
        findings={check.findings}
        lead={LEAD}
        unit={unit}
        id={`${id}-finding`}
        subject="cover"
      />
    </>
  );
}

/** The track unrolled, with its text twin. */
export function CoverTrack({ shape, check, unit, id }: CoverAnswerProps) {
  return (
    <>
      <figure class="drawing wide">
        <TrackUnrolled id={`${id}-track`} check={check} studCount={shape.studCount} unit={unit} />
        <figcaption>
          The track unrolled: wall against clock position, height not to the scale of its length.
        </figcaption>
      </figure>
      <div class="section-pair">
        <figure class="drawing section-figure">
          <WallSection id={`${id}-section`} shape={shape} check={check} unit={unit} />
          <figcaption>
            The wall through its thinnest place, {unit}: what is cut, what is left
            {check.minimumWall && ', the minimum'}
            {check.leastWall.expandedUncertaintyMm !== null && ' and the band of uncertainty'}.
          </figcaption>
        </figure>
        {check.dialledIn && check.dialledIn.wallGainedMm >= DIALLING_WORTH_MM && (
          <figure class="drawing section-figure">
            <TiltPlan id={`${id}-tilt`} shape={shape} dialledIn={check.dialledIn} unit={unit} />
            <figcaption>
              Dialled in it would keep {printLength(check.dialledIn.wallGainedMm, unit)} more wall: the shim
              under each pad, {unit}, clutch side; the arrow points where the tool plane then lies highest on
              the cover.
            </figcaption>
          </figure>
        )}
      </div>
      <details class="twin">
        <summary>The same as a table</summary>
        <StationsAnswered check={check} unit={unit} />
      </details>
    </>
  );
}

function coverFigures(check: CoverCheck, unit: LengthUnit) {
  const { cut, leastWall, cutsLeft } = check;
  return [
    { label: 'cut to dial', value: lengthFigure(cut.dialledMm, unit), unit },
    { label: 'thinnest now', value: lengthFigure(leastWall.beforeMm, unit), unit },
    { label: 'thinnest after the cut', value: lengthFigure(leastWall.afterMm, unit), unit },
    ...(cutsLeft === null ? [] : [{ label: 'cuts left after this one', value: String(cutsLeft) }]),
  ];
}

/** Every station with what is cut there and what is left. */
export function StationsAnswered({ check, unit }: { check: CoverCheck; unit: LengthUnit }) {
  const figure = (mm: number | null) => (mm === null ? '—' : lengthFigure(mm, unit));
  return (
    <section class="table-box" tabindex={0} aria-label="Every station">
      <table class="figures">
        <caption>Lengths in {UNIT_WORD[unit]}</caption>
        <thead>
          <tr>
            <th scope="col">station</th>
            <th scope="col">clock</th>
            <th scope="col">radius</th>
            <th scope="col">wall</th>
            <th scope="col">face</th>
            <th scope="col">mark</th>
            <th scope="col">cut</th>
            <th scope="col">left</th>
          </tr>
        </thead>
        <tbody>
          {check.stations.map((station, index) => (
            <tr class={index === check.leastWall.station ? 'thinnest' : undefined}>
              <th scope="row">
                {index + 1}
                {index === check.leastWall.station && <span class="unseen"> thinnest</span>}
              </th>
              <td>{Math.round(station.angleDeg * 10) / 10}°</td>
              <td>{briefLength(station.radiusMm, unit).replace(` ${unit}`, '')}</td>
              <td>{figure(station.wallMm)}</td>
              <td>{figure(station.faceMm)}</td>
              <td>{station.markDepthMm > 0 ? figure(station.markDepthMm) : '—'}</td>
              <td>{figure(station.cutMm)}</td>
              <td>{figure(station.wallAfterMm)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** What lies where lathe and cover meet. */
export function CoverCautions({ ring = false }: { ring?: boolean }) {
  return <Cautions kinds={ring ? ['lathe', 'weld', 'crack', 'general'] : ['lathe', 'crack', 'general']} />;
}
