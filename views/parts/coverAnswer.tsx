import type { ComponentChildren } from 'preact';
import {
  type CoverCheck,
  type CoverShape,
  DIALLING_WORTH_MM,
  isMeasured,
  type Mark,
  type MeasuredCheck,
} from '../../shared/words/cover.ts';
import { cutTold, findingsShown } from '../../shared/words/findingsShown.ts';
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

export interface CoverDrawingShape extends CoverShape {
  readonly bossDiameterMm: number | null;
  readonly rimDiameterMm: number | null;
  readonly padDiameterMm: number | null;
}

export interface CoverAnswerProps {
  readonly shape: CoverDrawingShape;
  readonly check: MeasuredCheck;
  readonly unit: LengthUnit;
  /** Starts the ids on a page that shows two answers. */
  readonly id: string;
  /** A person decided to face it although the verdict is to replace it: the cut is then told. */
  readonly decidedToFace?: boolean;
}

/** Seen at once, whatever they say. */
const LEAD = ['crack', 'wall-measured', 'wall-left', 'sure-of-it', 'cleans-up', 'dialled-in', 'cuts-left'];

/** The verdict as a heading, the one number that decided it, and where that lies between too thin and enough. */
export function CoverVerdict({ check, unit, id, level = 1, children }: CoverVerdictProps) {
  const Heading = level === 1 ? 'h1' : 'h3';
  const cracked = check.findings.some((one) => one.id === 'crack' && one.status === 'fail');
  return (
    <div class="verdict-head">
      <div data-tell>
        <Heading class={`verdict verdict-${check.verdict}`}>{check.headline}</Heading>
        <p class="why">{check.because}</p>
      </div>
      {check.minimumWall && isMeasured(check) && !cracked && (
        <figure class="drawing zones-figure">
          <WallZones id={`${id}-zones`} check={check} unit={unit} />
        </figure>
      )}
      {children}
    </div>
  );
}

interface CoverVerdictProps {
  readonly check: CoverCheck;
  readonly unit: LengthUnit;
  readonly id: string;
  readonly level?: 1 | 3;
  /** Stands under the number that decided it. */
  readonly children?: ComponentChildren;
}

/** The stations as the plan shows them; the wall after the cut only where there is to be a cut. */
function planStations(check: MeasuredCheck, decidedToFace = false): PlanStation[] {
  const cut = cutTold(check.verdict, decidedToFace);
  return check.stations.map((station, index) => ({
    angleDeg: station.angleDeg,
    radiusMm: station.radiusMm,
    wallMm: station.wallMm,
    wallAfterMm: cut ? station.wallAfterMm : null,
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

/** The face from the clutch side, with what is at each station. */
export function CoverPlan({ shape, check, unit, id, decidedToFace = false }: CoverAnswerProps) {
  const cut = cutTold(check.verdict, decidedToFace);
  return (
    <figure class="drawing">
      <FacePlan
        id={`${id}-plan`}
        shape={shape}
        bossDiameterMm={shape.bossDiameterMm}
        rimDiameterMm={shape.rimDiameterMm}
        padDiameterMm={shape.padDiameterMm}
        stations={planStations(check, decidedToFace)}
        marks={planMarks(check)}
        thinnest={check.leastWall.station}
        unit={unit}
      />
      <figcaption>
        The face from the clutch side: wall {cut ? 'left' : 'measured'} at each station, in {UNIT_WORD[unit]}.
        Stud 1 is scribed on the rim.
      </figcaption>
    </figure>
  );
}

type Told = Omit<CoverAnswerProps, 'shape'>;
/** Without walls there is nothing to draw, but findings there are. */
type Found = Omit<Told, 'check'> & { readonly check: CoverCheck };

/** Every finding, those that decide in sight. */
export function CoverFindings({ check, unit, id, decidedToFace = false }: Found) {
  return (
    <FindingsFolded
      findings={findingsShown(check, decidedToFace)}
      lead={LEAD}
      unit={unit}
      id={`${id}-finding`}
      subject="cover"
    />
  );
}

/** The friction surface unrolled. */
export function TrackFigure({ shape, check, unit, id, cut }: CoverAnswerProps & { readonly cut: boolean }) {
  return (
    <figure class="drawing wide">
      <TrackUnrolled id={`${id}-track`} check={check} studCount={shape.studCount} unit={unit} cut={cut} />
      <figcaption>
        The friction surface unrolled: wall at each angle from stud 1. Height and length have different
        scales.
      </figcaption>
    </figure>
  );
}

/** The wall through its thinnest place. */
export function SectionFigure({ shape, check, unit, id }: CoverAnswerProps) {
  return (
    <figure class="drawing section-figure">
      <WallSection id={`${id}-section`} shape={shape} check={check} unit={unit} />
      <figcaption>
        The wall at its thinnest station, in {UNIT_WORD[unit]}: what is cut, what is left
        {check.minimumWall && ', the minimum'}
        {check.leastWall.expandedUncertaintyMm !== null && ' and the uncertainty band'}.
      </figcaption>
    </figure>
  );
}

/** How the cover is shimmed, where that is worth it. */
export function TiltFigure({ shape, check, unit, id }: CoverAnswerProps) {
  if (!check.dialledIn || check.dialledIn.wallGainedMm < DIALLING_WORTH_MM) return null;
  return (
    <figure class="drawing section-figure">
      <TiltPlan id={`${id}-tilt`} shape={shape} dialledIn={check.dialledIn} unit={unit} />
      <figcaption>
        Indicated in with these shims, in {UNIT_WORD[unit]}, it keeps{' '}
        {printLength(check.dialledIn.wallGainedMm, unit)} more wall. The arrow points to the low side.
      </figcaption>
    </figure>
  );
}

/** Every station, with what is cut there and what is left where there is to be a cut. */
export function StationsAnswered(props: { check: MeasuredCheck; unit: LengthUnit; cut?: boolean }) {
  const { check, unit, cut = cutTold(check.verdict) } = props;
  const figure = (mm: number | null) => (mm === null ? '—' : lengthFigure(mm, unit));
  return (
    <section class="table-box" tabindex={0} aria-label="Every station">
      <table class="figures">
        <caption>Lengths in {UNIT_WORD[unit]}</caption>
        <thead>
          <tr>
            <th scope="col">Station</th>
            <th scope="col">Angle from stud 1, °</th>
            <th scope="col">Radius</th>
            <th scope="col">Wall</th>
            <th scope="col">Indicator reading</th>
            <th scope="col">Heat mark</th>
            {cut && <th scope="col">Cut here</th>}
            {cut && <th scope="col">Wall left</th>}
          </tr>
        </thead>
        <tbody>
          {check.stations.map((station, index) => (
            <tr class={index === check.leastWall.station ? 'thinnest' : undefined}>
              <th scope="row">
                {index + 1}
                {index === check.leastWall.station && <span class="unseen"> thinnest</span>}
              </th>
              <td>{Math.round(station.angleDeg * 10) / 10}</td>
              <td>{briefLength(station.radiusMm, unit).replace(` ${unit}`, '')}</td>
              <td>{figure(station.wallMm)}</td>
              <td>{figure(station.faceMm)}</td>
              <td>{station.markDepthMm > 0 ? figure(station.markDepthMm) : '—'}</td>
              {cut && <td>{figure(station.cutMm)}</td>}
              {cut && <td>{figure(station.wallAfterMm)}</td>}
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
