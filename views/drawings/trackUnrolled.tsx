import type { MeasuredCheck } from '../../shared/words/cover.ts';
import { RING_WIDTH_MM, turned } from '../../shared/words/places.ts';
import {
  briefLength,
  type LengthUnit,
  lengthFigure,
  printAgainst,
  printLength,
  printNumber,
} from '../../shared/words/print.ts';
import { arrowHead } from './dimension.tsx';
import { Hatch } from './hatch.tsx';
import { at, LETTER, spread, textWidth } from './lettering.ts';
import { roundScale } from './ticks.ts';

/** What the drawing takes of a check. */
export type TrackCheck = Pick<MeasuredCheck, 'stations' | 'marks' | 'minimumWall' | 'leastWall'>;

export interface TrackUnrolledProps {
  readonly id: string;
  readonly check: TrackCheck;
  readonly studCount: number;
  readonly unit: LengthUnit;
  /** Left out for a cover that is to be replaced: what is cut and what is left. */
  readonly cut?: boolean;
}

/** One for a desk, one for a phone; the style sheet shows the one its place has room for. */
interface Proportions {
  readonly name: 'wide' | 'tall';
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly letter: number;
  readonly markWidth: number;
  readonly figures: number;
}

export const WIDE: Proportions = {
  name: 'wide',
  width: 900,
  height: 260,
  left: 58,
  right: 742,
  top: 30,
  bottom: 226,
  letter: 14.5,
  markWidth: 11,
  figures: 5,
};
export const TALL: Proportions = {
  name: 'tall',
  width: 352,
  height: 324,
  left: 46,
  right: 346,
  top: 26,
  bottom: 240,
  letter: LETTER,
  markWidth: 7,
  figures: 5,
};

/** A little more than once round, so that a mark behind stud 1 is seen whole. */
const BEYOND_DEG = 14;
const END_DEG = 360 + BEYOND_DEG;

interface Ring {
  readonly radiusMm: number;
  readonly stations: TrackCheck['stations'];
}

/** Stations of one radius (within 0.5 mm) in the order of their angles; the ring of the thinnest first. */
function ringsOf({ stations, leastWall }: TrackCheck): Ring[] {
  const sorted = [...stations].sort((a, b) => a.radiusMm - b.radiusMm);
  const rings: (typeof sorted)[] = [];
  for (const station of sorted) {
    const last = rings.at(-1);
    if (last && station.radiusMm - last[0]!.radiusMm <= RING_WIDTH_MM + 1e-9) last.push(station);
    else rings.push([station]);
  }
  const thinnest = stations[leastWall.station];
  return rings
    .map((ring) => ({
      radiusMm: ring[0]!.radiusMm,
      stations: ring.sort((a, b) => a.angleDeg - b.angleDeg),
    }))
    .sort((a, b) => Number(b.stations.includes(thinnest!)) - Number(a.stations.includes(thinnest!)));
}

/** The stations of a ring that its line is drawn through: carried round to one beyond each end of the drawing. */
function carriedRound(ring: Ring) {
  const all = [-360, 0, 360].flatMap((turn) =>
    ring.stations.map((station) => ({ station, deg: station.angleDeg + turn })),
  );
  const first = all.findLastIndex(({ deg }) => deg <= -BEYOND_DEG);
  const last = all.findIndex(({ deg }) => deg >= END_DEG);
  return all.slice(Math.max(first, 0), last < 0 ? undefined : last + 1);
}

/** The line of a ring, to be clipped to the drawing. */
function ringPath(
  ring: Ring,
  wallOf: (station: TrackCheck['stations'][number]) => number,
  x: (deg: number) => number,
  y: (mm: number) => number,
): string {
  return carriedRound(ring)
    .map(({ station, deg }) => `${at(x(deg))} ${at(y(wallOf(station)))}`)
    .join('L');
}

/** Places of a drawing that shows all of it, however long the marks and however low the minimum. */
export function trackScales(check: TrackCheck, unit: LengthUnit, form: Proportions, cut = true) {
  const { stations, marks, minimumWall } = check;
  const walls = stations.map((station) => station.wallMm);
  const lows = [
    ...(cut ? stations.map((station) => station.wallAfterMm) : []),
    ...stations.map((station) => station.wallMm - station.markDepthMm),
    ...marks.map((mark) => mark.wallMm - mark.depthMm),
    ...(minimumWall ? [minimumWall.mm] : []),
  ];
  const least = Math.min(...lows);
  const most = Math.max(...walls, minimumWall?.mm ?? 0);
  const span = Math.max(most - least, 0.05);
  const scale = roundScale(least - 0.32 * span, most + 0.1 * span, unit, form.figures);
  const x = (deg: number) =>
    form.left + ((deg + BEYOND_DEG) / (360 + 2 * BEYOND_DEG)) * (form.right - form.left);
  const y = (mm: number) =>
    form.bottom - ((mm - scale.leastMm) / (scale.mostMm - scale.leastMm)) * (form.bottom - form.top);
  return { scale, x, y };
}

/** "0.040 mm above": the difference of the two figures as they are printed elsewhere. */
function marginInWords(wallMm: number, minimumMm: number, unit: LengthUnit): string {
  if (Math.abs(wallMm - minimumMm) <= 1e-9) return 'at the minimum';
  const [wall, minimum] = [printAgainst(wallMm, minimumMm, unit), printLength(minimumMm, unit)];
  const decimals = wall.split(' ')[0]?.split('.')[1]?.length ?? 0;
  const apart = Math.abs(Number.parseFloat(wall) - Number.parseFloat(minimum)).toFixed(decimals);
  return `${apart} ${unit} ${wallMm < minimumMm ? 'below' : 'above'}`;
}

/** What every part of the drawing is drawn with. */
interface Drawn {
  readonly check: TrackCheck;
  readonly unit: LengthUnit;
  readonly form: Proportions;
  readonly rings: readonly Ring[];
  readonly x: (deg: number) => number;
  readonly y: (mm: number) => number;
  /** Whether what is left after the cut is drawn. */
  readonly cut: boolean;
}

/** The length between the wall left and the minimum, its arrows outside where there is no room for them. */
function Margin({ check, unit, form, x, y }: Drawn) {
  const thinnest = check.stations[check.leastWall.station];
  if (thinnest === undefined) return null;
  const px = x(turned(thinnest.angleDeg));
  const py = y(thinnest.wallAfterMm);
  const lozenge = <path d={`M${at(px)} ${at(py - 5)}l5 5l-5 5l-5 -5Z`} class="st-thinnest" />;
  if (check.minimumWall === null) {
    const text = printLength(thinnest.wallAfterMm, unit);
    const end = px + 10 + textWidth(text, form.letter) > form.right;
    return (
      <>
        {lozenge}
        <text x={at(end ? px - 9 : px + 9)} y={at(py + 18)} class={end ? 'end strong halo' : 'strong halo'}>
          {text}
        </text>
      </>
    );
  }
  const text = marginInWords(thinnest.wallAfterMm, check.minimumWall.mm, unit);
  const toRight = px + 26 + textWidth(text, form.letter) <= form.right;
  return (
    <>
      <path d={`M${at(px)} ${at(py)}H${at(px + (toRight ? 19 : -19))}`} class="extension" />
      <MarginLine text={text} px={px} between={[py, y(check.minimumWall.mm)]} toRight={toRight} form={form} />
      {lozenge}
    </>
  );
}

function MarginLine({
  text,
  px,
  between,
  toRight,
  form,
}: {
  text: string;
  px: number;
  between: readonly [number, number];
  toRight: boolean;
  form: Proportions;
}) {
  const [upper, lower] = [Math.min(...between), Math.max(...between)];
  const side = toRight ? 1 : -1;
  const dx = px + 14 * side;
  const tail = 17;
  const lettering = toRight ? 'strong halo' : 'end strong halo';
  const roomy = lower - upper >= form.letter + 16;
  return roomy ? (
    <>
      <path d={`M${at(dx)} ${at(upper)}V${at(lower)}`} class="dim" />
      <path d={arrowHead(dx, upper, 'up') + arrowHead(dx, lower, 'down')} class="arrow" />
      <text x={at(dx + 6 * side)} y={at((upper + lower) / 2 + form.letter * 0.36)} class={lettering}>
        {text}
      </text>
    </>
  ) : (
    <>
      <path
        d={`M${at(dx)} ${at(upper - tail)}V${at(upper)}M${at(dx)} ${at(lower)}V${at(lower + tail)}h${6 * side}`}
        class="dim"
      />
      <path d={arrowHead(dx, upper, 'down') + arrowHead(dx, lower, 'up')} class="arrow" />
      <text x={at(dx + 9 * side)} y={at(lower + tail + form.letter * 0.36)} class={lettering}>
        {text}
      </text>
    </>
  );
}

const before = (station: TrackCheck['stations'][number]) => station.wallMm;
const after = (station: TrackCheck['stations'][number]) => station.wallAfterMm;

function Sheet(props: TrackUnrolledProps & { form: Proportions }) {
  const { id, check, studCount, unit, form, cut = true } = props;
  const { scale, x, y } = trackScales(check, unit, form, cut);
  const rings = ringsOf(check);
  const drawn: Drawn = { check, unit, form, rings, x, y, cut };
  const wide = form.name === 'wide';
  const { left, right, top, bottom } = form;
  const own = `${id}-${form.name}`;
  return (
    <svg
      viewBox={`0 0 ${form.width} ${form.height}`}
      class={`track track-${form.name}`}
      role="img"
      aria-labelledby={`${own}-title ${own}-desc`}
    >
      <title id={`${own}-title`}>The friction surface unrolled: wall at each angle from stud 1</title>
      <desc id={`${own}-desc`}>{trackInWords(check, unit, cut)}</desc>
      <defs>
        <Hatch id={`${own}-chips`} size={6} />
        <clipPath id={`${own}-clip`}>
          <rect x={left} y={top - 8} width={right - left} height={bottom - top + 8} />
        </clipPath>
      </defs>
      <Walls {...drawn} own={own} />
      {scale.ticks.map((tick) => (
        <>
          <path d={`M${left} ${at(y(tick.mm))}h${tick.text === null ? -4 : -7}`} class="thin" />
          {tick.text !== null && (
            <text x={left - 10} y={at(y(tick.mm) + form.letter * 0.36)} class="end label">
              {tick.text}
            </text>
          )}
        </>
      ))}
      <path d={`M${left} ${top - 6}V${bottom}`} class="thin" />
      <path d={brokenEdge(left, right, bottom)} class="thin" />
      <text x={wide ? 8 : 2} y={form.letter} class="label">
        wall, {unit}
      </text>
      <Studs form={form} studCount={studCount} x={x} />
      {wide ? <LineNames {...drawn} /> : rings.length > 0 && <Key {...drawn} />}
      {cut && <Margin {...drawn} />}
    </svg>
  );
}

/** Metal left, chips, marks, and the lines of every ring; the ring of the thinnest station in full. */
function Walls(drawn: Drawn & { own: string }) {
  const { own, rings, check, form, x, y, cut } = drawn;
  const metal = cut ? after : before;
  const main = rings[0];
  const limit = check.minimumWall;
  return (
    <g clip-path={`url(#${own}-clip)`}>
      {main && (
        <>
          <path
            d={`M${ringPath(main, metal, x, y)}V${form.bottom}H${at(x(carriedRound(main)[0]!.deg))}Z`}
            class="metal"
          />
          {cut && (
            <path
              d={`M${ringPath(main, before, x, y)}L${ringPath(main, after, x, y).split('L').reverse().join('L')}Z`}
              fill={`url(#${own}-chips)`}
            />
          )}
        </>
      )}
      <HeatMarks {...drawn} />
      {rings.slice(1).map((ring) => (
        <>
          <path d={`M${ringPath(ring, before, x, y)}`} class="thin dash" />
          {cut && <path d={`M${ringPath(ring, after, x, y)}`} class="cut-line dash" />}
        </>
      ))}
      {main && (
        <>
          <path d={`M${ringPath(main, before, x, y)}`} class="thick" />
          {cut && <path d={`M${ringPath(main, after, x, y)}`} class="cut-line" />}
        </>
      )}
      {limit && <path d={`M${form.left} ${at(y(limit.mm))}H${form.right}`} class="limit" />}
    </g>
  );
}

/** Each mark to its depth, from the line of the ring it is nearest to. */
function HeatMarks({ check, form, rings, x, y }: Drawn) {
  const { left, right } = form;
  const many = check.stations.length / Math.max(1, rings.length) > 24;
  const markWidth = many ? form.markWidth / 2 : form.markWidth;
  const markHalfDeg = (markWidth * (360 + 2 * BEYOND_DEG)) / (right - left);
  const marks = [
    ...check.stations
      .filter((station) => station.markDepthMm > 0)
      .map(({ markDepthMm, ...station }) => ({ ...station, depthMm: markDepthMm })),
    ...check.marks,
  ].flatMap((mark) => [-360, 0, 360].map((turn) => ({ ...mark, angleDeg: mark.angleDeg + turn })));
  return (
    <g class="marks">
      {marks.map((mark) => {
        const px = x(mark.angleDeg);
        if (px < left - markWidth || px > right + markWidth) return null;
        const ring = nearestRing(rings, mark.radiusMm);
        const edge = (deg: number) => y(ring ? lineAt(ring, deg, before) : mark.wallMm);
        const [from, to] = [edge(mark.angleDeg - markHalfDeg), edge(mark.angleDeg + markHalfDeg)];
        // A quadratic's middle lies halfway to its control point, so this one reaches the mark's depth.
        const control = 2 * y(mark.wallMm - mark.depthMm) - (from + to) / 2;
        return (
          <path
            d={`M${at(px - markWidth)} ${at(from)}Q${at(px)} ${at(control)} ${at(px + markWidth)} ${at(to)}Z`}
            class="mark"
          />
        );
      })}
    </g>
  );
}

function nearestRing(rings: readonly Ring[], radiusMm: number): Ring | undefined {
  return rings.reduce<Ring | undefined>(
    (near, ring) =>
      near && Math.abs(near.radiusMm - radiusMm) <= Math.abs(ring.radiusMm - radiusMm) ? near : ring,
    undefined,
  );
}

/** What each line means, beside its end; names keep one line's height apart. */
function LineNames({ check, unit, form, rings, y, cut }: Drawn) {
  const main = rings[0];
  const limit = check.minimumWall;
  const names = [
    { text: 'as measured', mm: main ? lineAt(main, END_DEG, before) : null, class: 'label' },
    { text: 'after the cut', mm: main && cut ? lineAt(main, END_DEG, after) : null, class: 'label cut-text' },
    {
      text: `minimum ${limit ? lengthFigure(limit.mm, unit) : ''}`,
      mm: limit?.mm ?? null,
      class: 'limit-text',
    },
    ...(rings.length > 1 && rings.length < 5
      ? rings.slice(1).map((ring) => ({
          text: `dashed: r ${briefLength(ring.radiusMm, unit)}`,
          mm: lineAt(ring, END_DEG, before),
          class: 'label',
        }))
      : []),
  ].filter((name): name is { text: string; mm: number; class: string } => name.mm !== null);
  const nameYs = spread(
    names.map((name) => y(name.mm)),
    form.letter + 3,
    form.top + 4,
    form.bottom,
  );
  return (
    <>
      {names.map((name, index) => (
        <>
          <path
            d={`M${form.right} ${at(y(name.mm))}L${form.right + 10} ${at(nameYs[index] ?? 0)}`}
            class="extension"
          />
          <text x={form.right + 14} y={at((nameYs[index] ?? 0) + form.letter * 0.36)} class={name.class}>
            {name.text}
          </text>
        </>
      ))}
    </>
  );
}

/** A ring's line at any angle, straight from station to station and round again. */
function lineAt(
  ring: Ring,
  deg: number,
  wallOf: (station: TrackCheck['stations'][number]) => number,
): number {
  const turns = [-360, 0, 360, 720].flatMap((turn) =>
    ring.stations.map((station) => ({ deg: station.angleDeg + turn, mm: wallOf(station) })),
  );
  const next = turns.findIndex((place) => place.deg > deg);
  const [a, b] = [turns[next - 1] ?? turns[0]!, turns[next] ?? turns[0]!];
  return b.deg === a.deg ? a.mm : a.mm + ((deg - a.deg) / (b.deg - a.deg)) * (b.mm - a.mm);
}

/** The metal goes on below: a thin line with zigzags, as ISO 128 breaks a part off. */
function brokenEdge(left: number, right: number, y: number): string {
  const third = (right - left) / 3;
  const zigzag = 'l3 -6l6 12l3 -6';
  return `M${left} ${y}H${at(left + third - 6)}${zigzag}H${at(left + 2 * third - 6)}${zigzag}H${right}`;
}

function Studs({ form, studCount, x }: { form: Proportions; studCount: number; x: (deg: number) => number }) {
  const half = 180 / studCount;
  const places = Array.from({ length: 2 * studCount + 1 }, (_, index) => ({
    deg: index * half,
    stud: index % 2 === 0 ? ((index / 2) % studCount) + 1 : null,
  }));
  const room = x(2 * half) - x(0);
  const said = room > textWidth('stud 1', form.letter) + 14;
  const between = room > textWidth('stud 1', form.letter) + textWidth('between', form.letter) + 20;
  return (
    <>
      {places.map(({ deg, stud }) => (
        <>
          <path d={`M${at(x(deg))} ${form.bottom + 2}v${stud === null ? 4 : 7}`} class="thin" />
          {stud !== null && (
            <text x={at(x(deg))} y={at(form.bottom + 10 + form.letter)} class="mid label">
              {said ? `stud ${stud}` : stud}
            </text>
          )}
          {stud === null && between && (
            <text x={at(x(deg))} y={at(form.bottom + 10 + form.letter)} class="mid label">
              between
            </text>
          )}
        </>
      ))}
      {!said && (
        <text x={form.right} y={at(form.bottom + 12 + 2 * form.letter)} class="end label">
          behind stud
        </text>
      )}
    </>
  );
}

/** What each line means, beneath the drawing where there is no room beside it. */
function Key({ check, form, rings, unit, cut }: Drawn) {
  const limit = check.minimumWall ? lengthFigure(check.minimumWall.mm, unit) : null;
  const first = form.height - 26;
  const second = form.height - 6;
  const others = rings.slice(1, 4).map((ring) => briefLength(ring.radiusMm, unit));
  const entries: { x: number; y: number; line: string; text: string; class: string }[] = [
    { x: 2, y: first, line: 'thick', text: 'as measured', class: 'label' },
    ...(cut ? [{ x: 128, y: first, line: 'cut-line', text: 'after the cut', class: 'label cut-text' }] : []),
  ];
  if (limit !== null) {
    entries.push({ x: 2, y: second, line: 'limit', text: `minimum ${limit}`, class: 'limit-text' });
  }
  if (others.length > 0 && rings.length < 5) {
    entries.push({
      x: 182,
      y: second,
      line: 'thin dash',
      text: `r ${others.join(', ')}`,
      class: 'label',
    });
  }
  return (
    <>
      {entries.map((entry) => (
        <>
          <path d={`M${entry.x} ${entry.y - 4}h26`} class={entry.line} />
          <text x={entry.x + 32} y={entry.y} class={entry.class}>
            {entry.text}
          </text>
        </>
      ))}
    </>
  );
}

/** The sentence a listener gets instead of the drawing. */
function trackInWords(check: TrackCheck, unit: LengthUnit, cut: boolean): string {
  const { stations, minimumWall, leastWall, marks } = check;
  const walls = stations.map((station) => station.wallMm);
  const thinnest = stations[leastWall.station];
  if (thinnest === undefined) return 'No stations.';
  const heat = stations.filter((station) => station.markDepthMm > 0).length + marks.length;
  const parts = [
    `${stations.length} stations; wall as measured ${printLength(Math.min(...walls), unit)} to ${printLength(Math.max(...walls), unit)}.`,
    ...(cut ? [thinnestInWords(thinnest, minimumWall, unit)] : []),
  ];
  if (minimumWall) parts.push(`The minimum is ${printLength(minimumWall.mm, unit)}.`);
  if (heat > 0) parts.push(`${heat} heat ${heat === 1 ? 'mark' : 'marks'}.`);
  return parts.join(' ');
}

function thinnestInWords(
  { wallAfterMm, angleDeg }: TrackCheck['stations'][number],
  minimumWall: TrackCheck['minimumWall'],
  unit: LengthUnit,
): string {
  const wall = minimumWall ? printAgainst(wallAfterMm, minimumWall.mm, unit) : printLength(wallAfterMm, unit);
  return `After the cut the thinnest wall is ${wall} at ${printNumber(angleDeg, 0)}°.`;
}

/** Wall at each angle from stud 1: metal left, hatched chips, marks to their depth, the minimum. */
export function TrackUnrolled(props: TrackUnrolledProps) {
  return (
    <div class="tracks">
      <Sheet {...props} form={WIDE} />
      <Sheet {...props} form={TALL} />
    </div>
  );
}
