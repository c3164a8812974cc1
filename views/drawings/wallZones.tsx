import type { MeasuredCheck } from '../../shared/words/cover.ts';
import { type LengthUnit, printAgainst, printLength } from '../../shared/words/print.ts';
import { Hatch } from './hatch.tsx';
import { at, LETTER, textWidth } from './lettering.ts';

export interface WallZonesProps {
  /** Starts every id in the drawing; one per drawing on a page. */
  readonly id: string;
  readonly check: Pick<MeasuredCheck, 'leastWall' | 'minimumWall' | 'bounds'>;
  readonly unit: LengthUnit;
}

const WIDTH = 352;
const LEFT = 6;
const RIGHT = WIDTH - 6;
const ROW = LETTER + 5;
const BAR = 26;
/** However near wall and minimum lie to one another, this much is shown. */
const LEAST_SPAN_MM = 0.02;
const WORD_ROOM = 8;

interface Marker {
  readonly mm: number;
  readonly text: string;
}

/** A stretch of the scale, by the word for it. */
interface Zone {
  readonly name: string;
  readonly class: string;
  readonly from: number;
  readonly to: number;
}

/**
 * Why the verdict is what it is, at one glance: on a scale of walls, where it is too thin, where nobody can be sure
 * enough, where it is enough; and where the wall after the cut lies. Null where no minimum is set.
 */
export function WallZones({ id, check, unit }: WallZonesProps) {
  const { minimumWall, leastWall } = check;
  if (minimumWall === null) return null;
  const minimum = minimumWall.mm;
  const sureFrom = Math.max(leastWall.sureFromMm ?? minimum, minimum);
  const markers = markersOf(check, unit);
  const x = scaleOf([minimum, sureFrom, ...markers.map(({ mm }) => mm)]);
  const barTop = 6 + ROW * markers.length;
  const foot = barTop + BAR;
  const zones: readonly Zone[] = [
    { name: 'too thin', class: 'zone-thin', from: LEFT, to: x(minimum) },
    { name: 'not sure enough', class: 'zone-unsure', from: x(minimum), to: x(sureFrom) },
    { name: 'enough', class: 'zone-enough', from: x(sureFrom), to: RIGHT },
  ];
  const ends = [
    { x: x(minimum), text: `minimum ${printLength(minimum, unit)}`, class: 'limit-text' },
    ...(sureFrom - minimum > 1e-6
      ? [{ x: x(sureFrom), text: `sure from ${printAgainst(sureFrom, minimum, unit)}`, class: 'strong' }]
      : []),
  ];
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${at(foot + 8 + ROW * ends.length)}`}
      class="wall-zones"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>The wall left, against the minimum and the confidence required</title>
      <desc id={`${id}-desc`}>{zonesInWords(markers, minimum, sureFrom, unit)}</desc>
      <defs>
        <Hatch id={`${id}-hatch`} size={7} line="thin" />
      </defs>
      {zones.map((zone) => (
        <ZoneBar id={id} zone={zone} barTop={barTop} markersAt={markers.map(({ mm }) => x(mm))} />
      ))}
      <rect x={LEFT} y={barTop} width={RIGHT - LEFT} height={BAR} class="thin" />
      <path d={`M${at(x(minimum))} ${barTop - 4}V${foot + 6}`} class="limit" />
      {ends.length > 1 && <path d={`M${at(x(sureFrom))} ${barTop - 4}V${foot + 6}`} class="thick" />}
      {ends.map((end, row) => (
        <text
          x={at(fitted(end.x, end.text))}
          y={at(foot + 6 + ROW * (row + 1) - 4)}
          class={`mid halo ${end.class}`}
        >
          {end.text}
        </text>
      ))}
      {markers.map((marker, row) => (
        <>
          <path d={`M${at(x(marker.mm))} ${at(ROW * (row + 1))}V${at(barTop + BAR / 2)}`} class="extension" />
          <path d={diamond(x(marker.mm), barTop + BAR / 2)} class="st-core" />
          <text x={at(fitted(x(marker.mm), marker.text))} y={at(ROW * (row + 1) - 3)} class="mid strong halo">
            {marker.text}
          </text>
        </>
      ))}
    </svg>
  );
}

/** Where a wall lies on the scale, which holds all of these with room to either side. */
function scaleOf(walls: readonly number[]): (mm: number) => number {
  const [lowest, highest] = [Math.min(...walls), Math.max(...walls)];
  const span = Math.max(highest - lowest, LEAST_SPAN_MM);
  const [low, high] = [lowest - 0.3 * span, highest + 0.3 * span];
  return (mm) => LEFT + ((RIGHT - LEFT) * (mm - low)) / (high - low);
}

/** The word stands in it where it has room and no wall's mark lies on it. */
function ZoneBar({
  id,
  zone,
  barTop,
  markersAt,
}: {
  id: string;
  zone: Zone;
  barTop: number;
  markersAt: readonly number[];
}) {
  const { name, from, to } = zone;
  const thin = zone.class === 'zone-thin';
  const bar = { x: at(from), y: barTop, width: at(Math.max(0, to - from)), height: BAR };
  const fits = textWidth(name, LETTER) + 2 * WORD_ROOM < to - from;
  return (
    <>
      <rect {...bar} class={zone.class} />
      {thin && <rect {...bar} width={at(to - from)} fill={`url(#${id}-hatch)`} />}
      {fits && !markersAt.some((x) => besideWord(x, zone)) && (
        <text x={at((from + to) / 2)} y={at(barTop + BAR / 2 + 4.5)} class="mid label halo">
          {name}
        </text>
      )}
    </>
  );
}

/** One wall, or, where the face was not read, one for each way it may lie. */
function markersOf({ leastWall, bounds, minimumWall }: WallZonesProps['check'], unit: LengthUnit): Marker[] {
  const text = (mm: number) => printAgainst(mm, minimumWall!.mm, unit);
  if (bounds === null) return [{ mm: leastWall.afterMm, text: `${text(leastWall.afterMm)} left` }];
  const { padSideFlat, faceFlat } = bounds;
  return [
    { mm: padSideFlat.leastWallMm, text: `${text(padSideFlat.leastWallMm)} if the pad side runs true` },
    { mm: faceFlat.leastWallMm, text: `${text(faceFlat.leastWallMm)} if the face runs true` },
  ];
}

/** A word gives way to the mark of the wall. */
function besideWord(x: number, zone: Zone): boolean {
  return Math.abs(x - (zone.from + zone.to) / 2) < textWidth(zone.name, LETTER) / 2 + 12;
}

/** Lettering in the middle over its line, unless that would carry it out of the drawing. */
function fitted(x: number, text: string): number {
  const half = textWidth(text, LETTER) / 2 + 4;
  return Math.min(Math.max(x, half), WIDTH - half);
}

function diamond(x: number, y: number): string {
  return `M${at(x)} ${at(y - 9)}l9 9l-9 9l-9 -9Z`;
}

function zonesInWords(
  markers: readonly Marker[],
  minimum: number,
  sureFrom: number,
  unit: LengthUnit,
): string {
  const zone = (mm: number) =>
    mm < minimum - 1e-9 ? 'too thin' : mm < sureFrom - 1e-5 ? 'not sure enough' : 'enough';
  return [
    ...markers.map(({ mm, text }) => `${text}: ${zone(mm)}.`),
    `Below the minimum of ${printLength(minimum, unit)} it is too thin.`,
    ...(sureFrom - minimum > 1e-6
      ? [`At ${printAgainst(sureFrom, minimum, unit)} or more it is enough, at the confidence required.`]
      : []),
  ].join(' ');
}
