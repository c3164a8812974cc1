import { type LengthUnit, lengthFigure, listInWords, printLength } from '../../shared/words/print.ts';
import type { Nut, Stack, Stud, StudCheck } from '../../shared/words/stud/stud.ts';
import { Dimension, type Length, placeLengths, ROW } from './dimension.tsx';
import { Hatch } from './hatch.tsx';
import { at, fitText, LETTER, textWidth } from './lettering.ts';

export interface StudInStackProps {
  readonly id: string;
  /** What the stud goes by; said in the drawing's title and captions. */
  readonly name?: string;
  readonly stud: Stud;
  readonly stack: Stack;
  readonly nut: Nut | null;
  /** null: only the seated view is drawn. */
  readonly pullForwardMm: number | null;
  readonly check: Pick<StudCheck, 'reach' | 'engagement' | 'pilot'> | null;
  readonly unit: LengthUnit;
  readonly padThicknessMm?: number | null;
  readonly padDiameterMm?: number | null;
}

export const STACK_WIDTH = 352;
const EDGE = 8;
const MOST_PER_MM = 8.5;

function threadMajorMm({ thread }: Stud): number {
  return thread.system === 'unified' ? thread.majorInch * 25.4 : thread.majorMm;
}

function threadPitchMm({ thread }: Stud): number {
  return thread.system === 'unified' ? 25.4 / thread.threadsPerInch : thread.pitchMm;
}

/** Every length of the drawing, in mm from the pad's seating face in the seated view. */
function lengthsOf(props: StudInStackProps) {
  const { stud, stack, nut, pullForwardMm } = props;
  const majorMm = threadMajorMm(stud);
  const pitchMm = threadPitchMm(stud);
  const stackMm = stack.layers.reduce((sum, layer) => sum + layer.thicknessMm, 0);
  const nutFrom = stackMm + (nut?.washerMm ?? 0);
  const nutTo = nutFrom + (nut?.heightMm ?? 0);
  const engagedFrom = Math.max(stud.threadStartMm, nutFrom + (nut?.countersinkMm ?? 0));
  const engagedTo = Math.min(stud.threadEndMm, nutTo - (nut?.countersinkMm ?? 0));
  return {
    majorMm,
    pitchMm,
    minorMm: majorMm - 1.2 * pitchMm,
    stackMm,
    nutFrom,
    nutTo,
    engagedFrom,
    engagedTo,
    padThicknessMm: props.padThicknessMm ?? 10,
    padRadiusMm: Math.max(props.padDiameterMm ?? 0, 2.3 * majorMm) / 2,
    nutRadiusMm: Math.max(nut?.bearingOuterDiameterMm ?? 0, 1.55 * majorMm) / 2,
    gapMm: pullForwardMm ?? 0,
  };
}

/** Drawing units for a millimeter: the same in both views, so that they can be compared. */
export function stackScale(props: StudInStackProps): number {
  const { padThicknessMm, gapMm, nutTo } = lengthsOf(props);
  const length = Math.max(props.stud.projectionMm, nutTo) + padThicknessMm + gapMm;
  return Math.min(MOST_PER_MM, (STACK_WIDTH - 2 * EDGE - 12) / length);
}

/** The stud in its stack, seated and with the converter pushed back, both to one scale. */
export function StudInStack(props: StudInStackProps) {
  const { name, pullForwardMm, unit } = props;
  const called = name === undefined ? '' : `${name}, `;
  return (
    <div class="views">
      <div class="view">
        <p class="view-caption">
          {`${called}seated`} <small>{unit}</small>
        </p>
        <View {...props} pushedBack={false} />
      </div>
      {pullForwardMm !== null && (
        <div class="view">
          <p class="view-caption">
            {`${called}pushed back ${lengthFigure(pullForwardMm, unit, 'coarse')}`} <small>{unit}</small>
          </p>
          <View {...props} pushedBack={true} />
        </div>
      )}
      <OfferedUp {...props} />
    </div>
  );
}

/** Offered up, the thread about to enter the first piece: how far the stud pilot is into the last one, to scale. */
function OfferedUp(props: StudInStackProps) {
  const { check, name, stud, unit } = props;
  const into = check?.pilot?.intoLastPieceMm?.nominal;
  if (into === undefined) return null;
  const play = check?.pilot?.outOfLineMm?.pilot ?? null;
  const figure = (mm: number) => lengthFigure(mm, unit, 'coarse');
  return (
    <div class="view">
      <p class="view-caption">
        {`${name === undefined ? '' : `${name}, `}going in, thread about to enter`} <small>{unit}</small>
      </p>
      <View {...props} nut={null} pullForwardMm={stud.threadEndMm} pushedBack={true} intoLastMm={into} />
      {play !== null && <p class="view-caption">{`Holes may be ${figure(play)} ${unit} out of line`}</p>}
    </div>
  );
}

/** The lengths dimensioned above and below the part in one view. */
function dimensionsOf(props: ViewProps, pushedBack: boolean, half: number) {
  if (props.intoLastMm !== undefined) {
    const into = intoLast(props, props.intoLastMm, half);
    return { above: [], below: placeLengths(into, 2, STACK_WIDTH - 2) };
  }
  return {
    above: placeLengths(lengthsAbove(props, pushedBack, half), 2, STACK_WIDTH - 2),
    below: placeLengths(lengthsBelow(props, pushedBack, half), 2, STACK_WIDTH - 2),
  };
}

/** From the near face of the last piece to the stud's end; `bad` where the pilot has not reached it. */
function intoLast(props: StudInStackProps, intoMm: number, half: number): Length[] {
  const faceMm = props.stack.layers.slice(0, -1).reduce((sum, layer) => sum + layer.thicknessMm, 0);
  return [
    {
      from: placeOf(props, faceMm),
      to: placeOf(props, faceMm + intoMm),
      figure: lengthFigure(Math.abs(intoMm), props.unit, 'coarse'),
      word: intoMm < 0 ? 'short' : 'pilot in',
      bad: intoMm < 0,
      partFrom: half + 3,
      partTo: half + 3,
    },
  ];
}

/** The gap, the stack, and how far the tip stands beyond it or is short of it. */
function lengthsBelow(props: StudInStackProps, pushedBack: boolean, half: number): Length[] {
  const mm = lengthsOf(props);
  const k = stackScale(props);
  const gap = pushedBack ? mm.gapMm : 0;
  const x = (along: number) => placeOf(props, along);
  const figure = (length: number) => lengthFigure(length, props.unit, 'coarse');
  const edge = half + 3;
  const tip = props.stud.projectionMm - gap;
  const short = tip < mm.stackMm;
  const gapLength: Length = {
    from: x(-gap),
    to: x(0),
    figure: figure(gap),
    word: 'gap',
    partFrom: k * mm.padRadiusMm + 3,
    partTo: edge,
  };
  return [
    ...(gap > 0 ? [gapLength] : []),
    {
      from: x(0),
      to: x(mm.stackMm),
      figure: figure(mm.stackMm),
      word: 'stack',
      partFrom: edge,
      partTo: edge,
    },
    {
      from: x(mm.stackMm),
      to: x(tip),
      figure: figure(Math.abs(tip - mm.stackMm)),
      word: short ? 'short' : 'beyond',
      bad: short,
      partFrom: edge,
      partTo: short ? edge : (k * mm.majorMm) / 2,
    },
  ];
}

/** Seated, the thread engaged in the nut; pushed back, the thread that stands out of the stack. */
function lengthsAbove(props: StudInStackProps, pushedBack: boolean, half: number): Length[] {
  const { stud, nut, unit } = props;
  const mm = lengthsOf(props);
  const k = stackScale(props);
  const between = (from: number, to: number, word: string, partFrom: number, partTo: number): Length[] =>
    to > from
      ? [
          {
            from: placeOf(props, from),
            to: placeOf(props, to),
            figure: lengthFigure(to - from, unit, 'coarse'),
            word,
            partFrom,
            partTo,
          },
        ]
      : [];
  if (pushedBack) {
    const showsFrom = Math.max(mm.stackMm, stud.threadStartMm - mm.gapMm);
    const crest = -(k * mm.majorMm) / 2 - 2;
    const edge = -(half + 3);
    const starts = showsFrom > mm.stackMm ? crest : edge;
    return between(showsFrom, stud.threadEndMm - mm.gapMm, 'thread', starts, crest);
  }
  const outer = -k * mm.nutRadiusMm - 2;
  return nut ? between(mm.engagedFrom, mm.engagedTo, 'engaged', outer, outer) : [];
}

/** Where a place along the stud's axis lies in the drawing; 0 is the face the pads come to. */
export function placeOf(props: StudInStackProps, alongMm: number): number {
  const { padThicknessMm, gapMm } = lengthsOf(props);
  return EDGE + 6 + stackScale(props) * (padThicknessMm + gapMm + alongMm);
}

/** Both views keep one height, so that the parts stand side by side. */
function heightOf(props: ViewProps, half: number) {
  const both = (props.intoLastMm === undefined ? [false, true] : [true]).map((way) =>
    dimensionsOf(props, way, half),
  );
  const rowsAbove = Math.max(0, ...both.flatMap((view) => view.above.map((length) => length.row + 1)));
  const rowsBelow = Math.max(...both.flatMap((view) => view.below.map((length) => length.row + 1)));
  return { top: -half - 6 - ROW * rowsAbove, bottom: half + 8 + ROW * rowsBelow };
}

interface ViewProps extends StudInStackProps {
  /** Offered up: how far the stud pilot is in the last piece. */
  readonly intoLastMm?: number;
}

function View(props: ViewProps & { pushedBack: boolean }) {
  const { id, name, stack, pushedBack } = props;
  const offered = props.intoLastMm !== undefined;
  const own = `${id}-${offered ? 'offered' : pushedBack ? 'back' : 'seated'}`;
  const mm = lengthsOf(props);
  const k = stackScale(props);
  const x = (along: number) => placeOf(props, along);
  const half = Math.max(k * mm.padRadiusMm + 8, k * mm.nutRadiusMm + 16 + stack.layers.length * (LETTER + 4));
  const { above, below } = dimensionsOf(props, pushedBack, half);
  const { top, bottom } = heightOf(props, half);
  return (
    <svg
      viewBox={`0 ${at(top)} ${STACK_WIDTH} ${at(bottom - top)}`}
      class="stud-drawing"
      role="img"
      aria-labelledby={`${own}-title ${own}-desc`}
    >
      <title id={`${own}-title`}>
        {`${name ?? 'The stud'} in its flexplate stack, ${offered ? 'going in' : pushedBack ? 'converter pushed back' : 'seated'}`}
      </title>
      <desc id={`${own}-desc`}>
        {props.intoLastMm === undefined
          ? stackInWords(props, pushedBack)
          : offeredInWords(props.intoLastMm, props.unit)}
      </desc>
      <defs>
        {[45, 135].map((turn) =>
          [0, 1, 2].map((size) => <Hatch id={`${own}-h${turn}-${size}`} size={6 + 2 * size} turn={turn} />),
        )}
      </defs>
      <Layers props={props} own={own} x={x} k={k} half={half} />
      <Assembled {...props} own={own} />
      <LayerNames props={props} x={x} top={-half} />
      {above.map((length) => (
        <Dimension length={length} y={-half - LETTER - 5} away="up" />
      ))}
      {below.map((length) => (
        <Dimension length={length} y={half + 22} away="down" />
      ))}
    </svg>
  );
}

/** Pad, stud and nut; pushed back, the nut only where it will be. */
function Assembled(props: StudInStackProps & { pushedBack: boolean; own: string }) {
  const { stud, nut, pushedBack, own } = props;
  const mm = lengthsOf(props);
  const k = stackScale(props);
  const gap = pushedBack ? mm.gapMm : 0;
  const x = (along: number) => placeOf(props, along);
  const padFrom = x(-gap - mm.padThicknessMm);
  const nutHalf = k * mm.nutRadiusMm;
  return (
    <>
      <Pad x={padFrom} width={k * mm.padThicknessMm} half={k * mm.padRadiusMm} own={own} />
      {nut && !pushedBack && <NutSection nut={nut} own={own} x={x} mm={mm} k={k} />}
      {nut && pushedBack && (
        <path
          d={`M${at(x(mm.nutFrom))} ${at(-nutHalf)}H${at(x(mm.nutTo))}V${at(nutHalf)}H${at(x(mm.nutFrom))}Z`}
          class="phantom"
        />
      )}
      <text
        x={at(x(-gap - mm.padThicknessMm / 2))}
        y={at(-k * mm.padRadiusMm + 18)}
        class="mid label halo-metal"
      >
        pad
      </text>
      <StudBody stud={stud} mm={mm} k={k} x={(along) => x(along - gap)} />
      {nut && !pushedBack && <NutOutside x={x} mm={mm} k={k} />}
      {nut && !pushedBack && mm.engagedTo > mm.engagedFrom && (
        <path
          d={`M${at(x(mm.engagedFrom))} ${at((-k * mm.majorMm) / 2)}H${at(x(mm.engagedTo))}`}
          class="engaged"
        />
      )}
      <path
        d={`M${at(padFrom - 6)} 0H${at(x(Math.max(stud.projectionMm - gap, mm.nutTo)) + 8)}`}
        class="chain"
      />
    </>
  );
}

type Lengths = ReturnType<typeof lengthsOf>;
type Along = (mm: number) => number;

/** Plates in section, each hatched its own way; their outer ends are broken off, because they go on. */
function Layers({
  props,
  own,
  x,
  k,
  half,
}: {
  props: StudInStackProps;
  own: string;
  x: Along;
  k: number;
  half: number;
}) {
  const major = threadMajorMm(props.stud);
  let from = 0;
  return (
    <>
      {props.stack.layers.map((layer, index) => {
        const left = x(from);
        from += layer.thicknessMm;
        const right = x(from);
        const hole = (k * (layer.holeDiameterMm ?? major + 0.8)) / 2;
        const hatch = `url(#${own}-h${index % 2 === 0 ? 45 : 135}-${index % 3})`;
        const wave = (right - left) / 4;
        return [-1, 1].map((side) => (
          <g>
            <rect
              x={at(left)}
              y={at(side < 0 ? -half : hole)}
              width={at(right - left)}
              height={at(half - hole)}
              fill={hatch}
            />
            <path
              d={`M${at(left)} ${at(side * half)}V${at(side * hole)}H${at(right)}V${at(side * half)}`}
              class="thick"
            />
            <path
              d={`M${at(left)} ${at(side * half)}q${at(wave)} ${-4} ${at(2 * wave)} 0t${at(2 * wave)} 0`}
              class="thin"
            />
          </g>
        ));
      })}
    </>
  );
}

function Pad({ x, width, half, own }: { x: number; width: number; half: number; own: string }) {
  const box = { x: at(x), y: at(-half), width: at(width), height: at(2 * half) };
  return (
    <>
      <rect {...box} class="metal" />
      <rect {...box} fill={`url(#${own}-h45-1)`} />
      <rect {...box} class="thick" />
    </>
  );
}

/** Thread after ISO 6410: crests thick, roots thin, ends of full thread thick. */
function StudBody({ stud, mm, k, x }: { stud: Stud; mm: Lengths; k: number; x: Along }) {
  const crest = (k * mm.majorMm) / 2;
  const root = (k * mm.minorMm) / 2;
  const pilot = stud.pilotDiameterMm === null ? root : (k * stud.pilotDiameterMm) / 2;
  const tipMm = stud.projectionMm;
  const run = Math.max(0, tipMm - stud.threadEndMm);
  const shoulder = stud.threadEndMm + Math.min(0.3 * run, 0.8);
  const chamfer = Math.min(0.4 * run, 1);
  const outline =
    `M${at(x(0))} ${at(-crest)}H${at(x(stud.threadEndMm))}L${at(x(shoulder))} ${at(-pilot)}` +
    `H${at(x(tipMm - chamfer))}L${at(x(tipMm))} ${at(-pilot + k * chamfer)}V${at(pilot - k * chamfer)}` +
    `L${at(x(tipMm - chamfer))} ${at(pilot)}H${at(x(shoulder))}L${at(x(stud.threadEndMm))} ${at(crest)}H${at(x(0))}`;
  return (
    <>
      <path d={`${outline}Z`} class="stud-body" />
      <path
        d={`M${at(x(stud.threadStartMm))} ${at(-root)}H${at(x(stud.threadEndMm))}M${at(x(stud.threadStartMm))} ${at(root)}H${at(x(stud.threadEndMm))}`}
        class="thin"
      />
      <path
        d={`M${at(x(stud.threadStartMm))} ${at(-crest)}V${at(crest)}M${at(x(stud.threadEndMm))} ${at(-crest)}V${at(crest)}`}
        class="thick"
      />
    </>
  );
}

/** The nut above the axis in section, countersunk at both ends; a washer under it. */
function NutSection({ nut, own, x, mm, k }: { nut: Nut; own: string; x: Along; mm: Lengths; k: number }) {
  const crest = (k * mm.majorMm) / 2;
  const outer = k * mm.nutRadiusMm;
  const sink = k * nut.countersinkMm;
  const [left, right] = [x(mm.nutFrom), x(mm.nutTo)];
  const nutShape = `M${at(left)} ${at(-crest - sink)}V${at(-outer)}H${at(right)}V${at(-crest - sink)}L${at(right - sink)} ${at(-crest)}H${at(left + sink)}Z`;
  return (
    <>
      <path d={nutShape} fill={`url(#${own}-h135-0)`} />
      <path d={nutShape} class="thick" />
      {nut.washerMm > 0 && (
        <rect
          x={at(x(mm.stackMm))}
          y={at(-outer - 4)}
          width={at(k * nut.washerMm)}
          height={at(2 * outer + 8)}
          class="washer"
        />
      )}
    </>
  );
}

/** The nut below the axis from outside: it hides the stud. */
function NutOutside({ x, mm, k }: { x: Along; mm: Lengths; k: number }) {
  const outer = k * mm.nutRadiusMm;
  const [left, right] = [x(mm.nutFrom), x(mm.nutTo)];
  const bevel = Math.min(3, (right - left) / 4);
  return (
    <path
      d={`M${at(left)} 0V${at(outer)}H${at(right - bevel)}L${at(right)} ${at(outer - bevel)}V0M${at(left)} ${at(outer / 2)}H${at(right)}`}
      class="nut-outside"
    />
  );
}

/** Names with a leader that ends in a dot on the layer (ISO 128-22), on the side that has more room. */
function LayerNames({ props, x, top }: { props: StudInStackProps; x: Along; top: number }) {
  const { layers } = props.stack;
  const total = layers.reduce((sum, layer) => sum + layer.thicknessMm, 0);
  const room = STACK_WIDTH - 4 - (x(total) + 14);
  let from = 0;
  return (
    <>
      {layers.map((layer, index) => {
        const middle = x(from + layer.thicknessMm / 2);
        from += layer.thicknessMm;
        const y = top + 12 + (layers.length - 1 - index) * (LETTER + 4);
        const text = fitText(layer.name, LETTER, room);
        return (
          <>
            <path d={`M${at(middle)} ${at(y)}H${at(x(total) + 12)}`} class="leader" />
            <circle cx={at(middle)} cy={at(y)} r="1.9" class="arrow" />
            <text x={at(x(total) + 15)} y={at(y + LETTER * 0.36)} class="label halo">
              {textWidth(text, LETTER) > 0 ? text : `layer ${index + 1}`}
            </text>
          </>
        );
      })}
    </>
  );
}

function offeredInWords(intoMm: number, unit: LengthUnit): string {
  const length = printLength(Math.abs(intoMm), unit, 'coarse');
  return intoMm < 0
    ? `As the thread enters the first piece, the stud pilot is ${length} short of the last piece.`
    : `As the thread enters the first piece, the stud pilot is ${length} into the last piece.`;
}

/** The sentence a listener gets instead of the drawing. */
function stackInWords(props: StudInStackProps, pushedBack: boolean): string {
  const { stud, stack, nut, check, unit } = props;
  const mm = lengthsOf(props);
  const print = (length: number) => printLength(length, unit, 'coarse');
  const parts = [
    `Stack ${print(mm.stackMm)}: ${listInWords(stack.layers.map((layer) => `${layer.name} ${print(layer.thicknessMm)}`))}.`,
  ];
  const beyond = stud.projectionMm - (pushedBack ? mm.gapMm : 0) - mm.stackMm;
  parts.push(
    beyond >= 0
      ? `The stud end stands ${print(beyond)} past the engine side.`
      : `The stud end is ${print(-beyond)} short of the engine side.`,
  );
  if (pushedBack) {
    const thread = stud.threadEndMm - mm.gapMm - Math.max(mm.stackMm, stud.threadStartMm - mm.gapMm);
    parts.push(thread > 0 ? `${print(thread)} of thread shows.` : 'No thread shows.');
    if (check?.reach.grade === 'starts-by-hand') parts.push('The nut starts by hand.');
  } else if (nut) {
    parts.push(`Engaged: ${print(Math.max(0, mm.engagedTo - mm.engagedFrom))}.`);
  }
  return parts.join(' ');
}
