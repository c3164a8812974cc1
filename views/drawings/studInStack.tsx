import { type LengthUnit, lengthFigure, listInWords, printLength } from '../../shared/words/print.ts';
import type { Nut, Stack, Stud, StudCheck } from '../../shared/words/stud/stud.ts';
import { Dimension, type Length, placeLengths, ROW } from './dimension.tsx';
import { Hatch } from './hatch.tsx';
import { at, LETTER } from './lettering.ts';
import {
  LayerNames,
  LayerSection,
  MOST_PER_MM,
  majorMmOf,
  NutOutside,
  NutSection,
  nutPlace,
  Pad,
  rootMmOf,
  STACK_WIDTH,
  StudBody,
} from './stackParts.tsx';

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
  /** On half a sheet of paper: narrower and without names of layers, so that its figures are read at arm’s length. */
  readonly onPaper?: boolean;
}

const EDGE = 8;

/** Every length of the drawing, in mm from the pad's seating face in the seated view. */
function lengthsOf(props: StudInStackProps) {
  const { stud, stack, nut, pullForwardMm } = props;
  const majorMm = majorMmOf(stud.thread);
  const stackMm = stack.layers.reduce((sum, layer) => sum + layer.thicknessMm, 0);
  const place = nutPlace(nut, stackMm, majorMm);
  const { nutFrom, nutTo } = place;
  const engagedFrom = Math.max(stud.threadStartMm, nutFrom + (nut?.countersinkMm ?? 0));
  const engagedTo = Math.min(stud.threadEndMm, nutTo - (nut?.countersinkMm ?? 0));
  return {
    minorMm: rootMmOf(stud.thread),
    ...place,
    engagedFrom,
    engagedTo,
    padThicknessMm: props.padThicknessMm ?? 10,
    padRadiusMm: Math.max(props.padDiameterMm ?? 0, 2.3 * majorMm) / 2,
    gapMm: pullForwardMm ?? 0,
  };
}

/** Drawing units for a millimeter: the same in both views, so that they can be compared. */
export function stackScale(props: StudInStackProps): number {
  const { padThicknessMm, gapMm, nutTo } = lengthsOf(props);
  const length = Math.max(props.stud.projectionMm, nutTo) + padThicknessMm + gapMm;
  return Math.min(MOST_PER_MM, (widthOf(props) - 2 * edgeOf(props) - 12) / length);
}

const PAPER_WIDTH = 300;
/** Room at both sides for figures that don’t fit between their arrows: another row would make it higher. */
const PAPER_EDGE = 50;

function edgeOf({ onPaper = false }: StudInStackProps): number {
  return onPaper ? PAPER_EDGE : EDGE;
}

function widthOf({ onPaper = false }: StudInStackProps): number {
  return onPaper ? PAPER_WIDTH : STACK_WIDTH;
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
    return { above: [], below: placeLengths(into, 2, widthOf(props) - 2) };
  }
  return {
    above: placeLengths(lengthsAbove(props, pushedBack, half), 2, widthOf(props) - 2),
    below: placeLengths(lengthsBelow(props, pushedBack, half), 2, widthOf(props) - 2),
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
  const stackLength: Length = {
    from: x(0),
    to: x(mm.stackMm),
    figure: figure(mm.stackMm),
    word: 'stack',
    partFrom: edge,
    partTo: edge,
  };
  return [
    ...(gap > 0 ? [gapLength] : []),
    // On paper it stands in the view beside this one.
    ...(pushedBack && props.onPaper ? [] : [stackLength]),
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
  return edgeOf(props) + 6 + stackScale(props) * (padThicknessMm + gapMm + alongMm);
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
  const names = props.onPaper ? 0 : 12 + stack.layers.length * (LETTER + 4);
  const half = Math.max(k * mm.padRadiusMm + (props.onPaper ? 2 : 8), k * mm.nutRadiusMm + 4 + names);
  const { above, below } = dimensionsOf(props, pushedBack, half);
  const { top, bottom } = heightOf(props, half);
  return (
    <svg
      viewBox={`0 ${at(top)} ${widthOf(props)} ${at(bottom - top)}`}
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
      <Layers props={props} own={own} half={half} />
      <Assembled {...props} own={own} />
      {!props.onPaper && (
        <LayerNames
          of={placesOf(props).map(({ layer, left, right }) => ({ name: layer.name, at: (left + right) / 2 }))}
          end={placeOf(props, mm.stackMm)}
          top={-half}
        />
      )}
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
      <Pad x={padFrom} width={k * mm.padThicknessMm} half={k * mm.padRadiusMm} hatch={`${own}-h45-1`} />
      {nut && !pushedBack && <NutSection nut={nut} hatch={`${own}-h135-0`} x={x} mm={mm} k={k} />}
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

/** Plates in section, each hatched its own way. */
function Layers({ props, own, half }: { props: ViewProps; own: string; half: number }) {
  const k = stackScale(props);
  const bare = majorMmOf(props.stud.thread) + 0.8;
  return (
    <>
      {placesOf(props).map(({ layer, left, right }, index) => (
        <LayerSection
          left={left}
          right={right}
          hole={(k * (layer.holeDiameterMm ?? bare)) / 2}
          half={half}
          chamfer={k * (layer.chamferMm ?? 0)}
          hatch={`${own}-h${index % 2 === 0 ? 45 : 135}-${index % 3}`}
        />
      ))}
    </>
  );
}

/** Where each layer begins and ends in the drawing. */
function placesOf(props: ViewProps) {
  let from = 0;
  return props.stack.layers.map((layer) => {
    const left = placeOf(props, from);
    from += layer.thicknessMm;
    return { layer, left, right: placeOf(props, from) };
  });
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
