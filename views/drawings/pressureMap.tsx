import type { StiffnessAnswer } from '../../shared/words/bending/stiffness.ts';
import {
  type LengthUnit,
  PRESSURE,
  printAs,
  printLength,
  printNumber,
  printShare,
} from '../../shared/words/print.ts';
import { onPlan, PLAN_BOX } from './facePlan.tsx';
import { Hatch } from './hatch.tsx';
import { type Box, boxRound, LETTER, overlaps, type Point, textWidth } from './lettering.ts';
import { type GridPoint, type LoopStep, levelLoops } from './levelLoops.ts';
import {
  between,
  COLOURS,
  fallingOn,
  lineAt,
  type PressureBand,
  placeAmong,
  pressureBands,
  type Values,
} from './pressureBands.ts';

export interface PressureMark {
  readonly angleDeg: number;
  readonly radiusMm: number;
  readonly depthMm: number | null;
}

export interface PressureMapProps {
  /** Starts every id in the drawing; one per drawing on a page. */
  readonly id: string;
  readonly map: StiffnessAnswer['pressureMap'];
  readonly meanPressureMPa: number;
  /** Of the model itself; without it, of the map’s own points. */
  readonly peakOverMean?: number;
  readonly peakAt: { readonly radiusMm: number; readonly angleDeg: number };
  readonly trackInnerDiameterMm: number;
  readonly trackOuterDiameterMm: number;
  readonly studCount: number;
  readonly studCircleDiameterMm: number;
  /** Recorded heat marks, drawn over the pressure. */
  readonly marks: readonly PressureMark[];
  readonly unit: LengthUnit;
}

/** Names stand inside the ring here, so it may be larger than in the plan of the face. */
const STUDS = 156;
const DIGIT_HEIGHT = 0.74;

/** To a tenth: half of what other drawings write, for there are a thousand points here. */
const at = (value: number) => String(Math.round(value * 10) / 10 || 0);

/** Points as a path, without those that fall on the one before. */
function pathOf(points: readonly Point[], closed: boolean): string {
  const said = points.map(({ x, y }) => `${at(x)} ${at(y)}`).filter((text, i, all) => text !== all[i - 1]);
  return said.length < 2 ? '' : `M${said.join(' ')}${closed ? 'Z' : ''}`;
}

/** The pieces of a loop that run along its level, within these columns. */
function levelLines(loop: readonly LoopStep[], first: number, last: number): GridPoint[][] {
  const lines: GridPoint[][] = [];
  const within = ({ column }: GridPoint) => column >= first && column <= last;
  const begin = loop.findIndex((step) => step.border || !within(step));
  let open = false;
  for (let k = 1; k <= loop.length; k++) {
    const step = loop[(begin + k) % loop.length]!;
    const next = loop[(begin + k + 1) % loop.length]!;
    if (step.border || !within(step) || !within(next)) {
      open = false;
      continue;
    }
    if (!open) lines.push([step]);
    lines.at(-1)!.push(next);
    open = true;
  }
  return lines;
}

/**
 * The sector round one stud, drawn once: the known half mirrored, and one column more on either side, so that
 * neighbors overlap and no seam shows.
 */
function sectorPaths(
  ratios: Values,
  map: PressureMapProps['map'],
  bands: readonly PressureBand[],
  k: number,
) {
  const half = map.anglesDeg.length - 1;
  const end = map.anglesDeg[half]!;
  const columns = Array.from({ length: 2 * half + 3 }, (_, index) => {
    const column = index - half - 1;
    const away = Math.abs(column);
    const known = away > half ? 2 * half - away : away;
    const angle = away > half ? 2 * end - map.anglesDeg[known]! : map.anglesDeg[known]!;
    return { known, angle: Math.sign(column) * angle };
  });
  const angles = columns.map(({ angle }) => angle);
  const whole = fallingOn(ratios).map((row) => columns.map(({ known }) => row[known]!));
  const place = ({ row, column }: GridPoint) => onPlan(lineAt(angles, column), k * lineAt(map.radiiMm, row));
  const touchesAll = ratios.every((row) => row.every((ratio) => ratio > 0));
  return bands.map((band, i) => {
    const loops = levelLoops(whole, i > 0 ? band.from : touchesAll ? Number.MIN_SAFE_INTEGER : 0);
    return {
      band,
      fill: loops.map((loop) => pathOf(loop.map(place), true)).join(''),
      line: loops
        .flatMap((loop) => levelLines(loop, 1, columns.length - 2))
        .map((line) => pathOf(line.map(place), false))
        .join(''),
    };
  });
}

/**
 * How hard the lining presses on the face, clutch side: bands of pressure with a line between each two, and the
 * recorded heat marks over them. What is known of half a sector is mirrored and repeated round. It brings its own
 * figure, key and words.
 */
export function PressureMap(props: PressureMapProps) {
  const { map, meanPressureMPa } = props;
  const ratios = map.pressureMPa.map((row) =>
    row.map((pressure) => (meanPressureMPa > 0 ? pressure / meanPressureMPa : 0)),
  );
  const shared = pressureBands(ratios, map.radiiMm);
  const peak = props.peakOverMean ?? Math.max(...ratios.flat());
  const marks = props.marks.map((mark) => ({ ...mark, ratio: ratioAt(mark, ratios, props) }));
  const words = [
    peakInWords(props, peak, ratios),
    freeInWords(shared.freeShare),
    marksInWords(marks, shared.aboveMeanShare),
  ]
    .filter(Boolean)
    .join(' ');
  return (
    <figure class="drawing pressure-map">
      <PressurePlan
        {...props}
        ratios={ratios}
        bands={shared.bands}
        free={shared.freeShare > 0}
        words={words}
      />
      <PressureKey {...props} shared={shared} />
      <figcaption>
        {words}
        {marks.length > 0 && (
          <ol class="press-marks">
            {marks.map((mark) => (
              <li>{markInWords(mark, props.unit)}</li>
            ))}
          </ol>
        )}
      </figcaption>
    </figure>
  );
}

function PressurePlan(
  props: PressureMapProps & {
    ratios: Values;
    bands: readonly PressureBand[];
    /** Somewhere the lining does not touch. */
    free: boolean;
    words: string;
  },
) {
  const { id, map, marks, studCount } = props;
  const k = (2 * STUDS) / Math.max(props.studCircleDiameterMm, props.trackOuterDiameterMm);
  const sector = sectorPaths(props.ratios, map, props.bands, k);
  const radii = [props.trackInnerDiameterMm, props.trackOuterDiameterMm, props.studCircleDiameterMm];
  const [inner, outer, studs] = radii.map((mm) => (k * mm) / 2) as [number, number, number];
  const turns = Array.from({ length: studCount }, (_, index) => (360 * index) / studCount);
  const { left, top, right, bottom } = PLAN_BOX;
  return (
    <svg
      viewBox={`${left} ${top} ${right - left} ${bottom - top}`}
      class="plan"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>Lining pressure on the face, clutch side</title>
      <desc id={`${id}-desc`}>{props.words}</desc>
      <defs>
        <Hatch id={`${id}-free`} size={5} />
        <g id={`${id}-sector`}>
          {sector.map(({ band, fill }) => (
            <path d={fill} class={`press-${band.colour}`} />
          ))}
          {sector.map(({ band, line }) => line && <path d={line} class={lineClass(band)} />)}
        </g>
      </defs>
      <path d={`M${left} 0H${right}M0 ${top}V${bottom}`} class="chain" />
      {props.free && <path d={circle(outer) + circle(inner)} fill-rule="evenodd" fill={`url(#${id}-free)`} />}
      {turns.map((turn) => (
        <use href={`#${id}-sector`} transform={turn === 0 ? undefined : `rotate(${turn})`} />
      ))}
      <circle r={at(outer)} class="thick" />
      <circle r={at(inner)} class="thick" />
      <StudCircle radius={studs} turns={turns} />
      {peakPlaces(props).map((angle) => (
        <Cross point={onPlan(angle, k * props.peakAt.radiusMm)} />
      ))}
      {marks.map((mark) => (
        <MarkRing mark={mark} k={k} />
      ))}
      {placeNames(turns, marks, inner).map(({ text, centre, strong }) => (
        <text
          x={at(centre.x)}
          y={at(centre.y + (LETTER * DIGIT_HEIGHT) / 2)}
          class={strong ? 'mid halo strong' : 'mid halo label'}
        >
          {text}
        </text>
      ))}
    </svg>
  );
}

function StudCircle({ radius, turns }: { radius: number; turns: readonly number[] }) {
  return (
    <>
      <circle r={at(radius)} class="chain" />
      {turns.map((turn) => {
        const { x, y } = onPlan(turn, radius);
        return <circle cx={at(x)} cy={at(y)} r="5" class="stud-body" />;
      })}
      <path d={`M0 ${at(-radius - 14)}V${at(-radius - 5)}`} class="scribe" />
    </>
  );
}

function PressureKey({
  id,
  meanPressureMPa,
  unit,
  shared: { bands, width, freeShare },
}: PressureMapProps & { shared: ReturnType<typeof pressureBands> }) {
  const inUnit = PRESSURE[unit];
  return (
    <div class="table-box" tabindex={0}>
      <table class="figures press-key">
        <caption>Lining pressure; mean {printAs(meanPressureMPa, inUnit)}</caption>
        <thead>
          <tr>
            <th scope="col">× mean</th>
            <th scope="col">{inUnit.unit}</th>
            <th scope="col">of the surface</th>
          </tr>
        </thead>
        <tbody>
          {[...bands].reverse().map((band) => (
            <KeyRow
              swatch={{ class: `press-${band.colour} press-edge` }}
              times={range(band, 1, width)}
              pressure={range(band, meanPressureMPa * inUnit.per, width)}
              share={band.share}
            />
          ))}
          {freeShare > 0 && (
            <KeyRow
              swatch={{ class: 'press-edge', fill: `url(#${id}-free)` }}
              times="not touching"
              pressure="0"
              share={freeShare}
            />
          )}
        </tbody>
      </table>
    </div>
  );
}

function KeyRow(props: {
  swatch: { class: string; fill?: string };
  times: string;
  pressure: string;
  share: number;
}) {
  return (
    <tr>
      <th scope="row">
        <svg viewBox="0 0 22 14" class="swatch" aria-hidden="true">
          <rect x="1" y="1" width="20" height="12" {...props.swatch} />
        </svg>
        {props.times}
      </th>
      <td>{props.pressure}</td>
      <td>{props.share < 0.005 ? '< 1 %' : printShare(Math.round(100 * props.share) / 100, 0)}</td>
    </tr>
  );
}

/** Where the peak is. */
function Cross({ point: { x, y } }: { point: Point }) {
  const d = `M${at(x - 5)} ${at(y)}h10M${at(x)} ${at(y - 5)}v10`;
  return (
    <>
      <path d={d} class="press-under" />
      <path d={d} class="press-over" />
    </>
  );
}

/** A recorded heat mark: an outline, so that the pressure under it is seen. */
function MarkRing({ mark, k }: { mark: PressureMark; k: number }) {
  const { x, y } = onPlan(mark.angleDeg, k * mark.radiusMm);
  const long = Math.min(24, 11 + 38 * (mark.depthMm ?? 0));
  const ring = {
    rx: at(long),
    ry: at(0.62 * long),
    transform: `translate(${at(x)} ${at(y)}) rotate(${at(mark.angleDeg)})`,
  };
  return (
    <>
      <ellipse {...ring} class="press-under" />
      <ellipse {...ring} class="press-over press-mark" />
    </>
  );
}

/** The marks’ numbers stand along the inside of the ring, and the studs’ names within these, none over another. */
function placeNames(turns: readonly number[], marks: readonly PressureMark[], inner: number) {
  const names = [
    ...marks.map(({ angleDeg }, i) => ({ text: String(i + 1), angleDeg, strong: true })),
    ...turns.map((angleDeg, i) => ({ text: `stud ${i + 1}`, angleDeg, strong: false })),
  ];
  const taken: Box[] = [];
  return names.map(({ text, angleDeg, strong }) => {
    const width = textWidth(text, LETTER);
    const way = onPlan(angleDeg, 1);
    let distance = inner - 10 - Math.abs(way.x) * (width / 2 - 3);
    const placed = () => onPlan(angleDeg, distance);
    const box = () => boxRound(placed(), width, LETTER);
    while (distance > 14 && taken.some((other) => overlaps(box(), other, 2))) distance -= 4;
    taken.push(box());
    return { text, centre: placed(), strong };
  });
}

/** The line where a band begins stays visible on darker bands. */
const lineClass = ({ colour }: PressureBand) =>
  colour > COLOURS / 2 ? 'press-line press-line-over' : 'press-line';

const circle = (r: number) =>
  `M0 ${at(-r)}A${at(r)} ${at(r)} 0 1 1 0 ${at(r)}A${at(r)} ${at(r)} 0 1 1 0 ${at(-r)}Z`;

/** Two places a sector, unless the peak is behind a stud or midway. */
function peakPlaces({ peakAt: { angleDeg }, studCount }: PressureMapProps): number[] {
  const turn = 360 / studCount;
  const alone = angleDeg < 0.05 || angleDeg > turn / 2 - 0.05;
  return Array.from({ length: studCount }, (_, i) => i * turn).flatMap((stud) =>
    alone ? [stud + angleDeg] : [stud - angleDeg, stud + angleDeg],
  );
}

/** Pressure over the mean at a mark; null off the friction surface. */
function ratioAt(
  { angleDeg, radiusMm }: PressureMark,
  ratios: Values,
  props: PressureMapProps,
): number | null {
  if (2 * radiusMm < props.trackInnerDiameterMm || 2 * radiusMm > props.trackOuterDiameterMm) return null;
  const turn = 360 / props.studCount;
  const within = ((angleDeg % turn) + turn) % turn;
  const away = Math.min(within, turn - within);
  return between(ratios, placeAmong(props.map.radiiMm, radiusMm), placeAmong(props.map.anglesDeg, away));
}

/** `0.9 – 1.0`, with decimals enough to tell the bands apart. */
function range({ from, to }: PressureBand, times: number, width: number): string {
  const needed = Math.ceil(-Math.log10(times * width) - 1e-9) + (times === 1 ? 0 : 1);
  const decimals = Math.min(4, Math.max(0, needed));
  return `${printNumber(times * from, decimals)} – ${printNumber(times * to, decimals)}`;
}

function fromStud(angleDeg: number, studCount: number): string {
  if (angleDeg < 0.05) return 'behind a stud';
  if (angleDeg > 180 / studCount - 0.05) return 'midway between two studs';
  return `${printNumber(angleDeg, 1)}° from a stud`;
}

function peakInWords(
  { meanPressureMPa, peakAt, studCount, unit }: PressureMapProps,
  peak: number,
  ratios: Values,
) {
  const least = Math.min(...ratios.flat());
  return [
    `Hardest pressed (+): ${printNumber(peak, 2)} times the mean, ${printAs(peak * meanPressureMPa, PRESSURE[unit])}, at radius ${printLength(peakAt.radiusMm, unit, 'coarse')}, ${fromStud(peakAt.angleDeg, studCount)}`,
    ...(least > 0 ? [`. Least: ${printNumber(least, 2)} times the mean`] : []),
    '.',
  ].join('');
}

function freeInWords(freeShare: number): string {
  return freeShare > 0
    ? `The lining does not touch about ${printShare(Math.max(1, Math.round(100 * freeShare)) / 100, 0)} of the friction surface.`
    : 'The lining touches all of the friction surface.';
}

type PlacedMark = PressureMark & { readonly ratio: number | null };

/** Whether marks sit where the model says, beside how many would by chance. */
function marksInWords(marks: readonly PlacedMark[], aboveMeanShare: number): string {
  const on = marks.filter(({ ratio }) => ratio !== null);
  if (on.length === 0) return marks.length === 0 ? '' : 'No heat mark is on the friction surface.';
  const harder = on.filter(({ ratio }) => ratio! > 1).length;
  return `Heat marks where the lining presses harder than its mean: ${harder} of ${on.length} on the friction surface. By chance it would be about ${printShare(Math.round(100 * aboveMeanShare) / 100, 0)} of them.`;
}

function markInWords({ angleDeg, radiusMm, ratio }: PlacedMark, unit: LengthUnit): string {
  const where = `at ${printNumber(angleDeg, 0)}°, radius ${printLength(radiusMm, unit, 'coarse')}`;
  return `Heat mark ${where}: ${ratio === null ? 'off the friction surface' : ratio > 0 ? `${printNumber(ratio, 2)} times the mean` : 'not touched here'}.`;
}
