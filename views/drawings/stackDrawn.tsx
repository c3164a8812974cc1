import { type LengthUnit, lengthFigure, printLength } from '../../shared/words/print.ts';
import type { Layer, LayerKind, Nut } from '../../shared/words/stud/stud.ts';
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
  STACK_WIDTH,
} from './stackParts.tsx';

export interface LayerDrawn extends Pick<Layer, 'name' | 'thicknessMm' | 'holeDiameterMm'> {
  readonly kind: LayerKind;
  readonly chamferMm?: number | null;
}

export interface StackDrawnProps {
  readonly id: string;
  /** Converter side first: those that can be drawn, at least one. */
  readonly layers: readonly LayerDrawn[];
  /** All that was typed of the layers is drawn. */
  readonly whole: boolean;
  readonly nut: Nut | null;
  readonly gapMm: number | null;
  /** The bore drawn, dashed, where no hole was entered. */
  readonly usualHoleMm: number;
  readonly unit: LengthUnit;
}

/** Room for an arrow outside the first length. */
const EDGE = 18;
const PAD_MM = 4;
/** Right of the stack, for what its layers are. */
const NAMES_ROOM = 132;
const MOST_HALF = 130;

/** Every length of the drawing, in mm from the face the pads come to. */
function lengthsOf({ layers, nut, gapMm, usualHoleMm }: StackDrawnProps) {
  const stackMm = layers.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0);
  const majorMm = nut?.thread ? majorMmOf(nut.thread) : usualHoleMm / 1.08;
  return {
    ...nutPlace(nut, stackMm, majorMm),
    beforeMm: gapMm === null ? 0 : gapMm + PAD_MM,
    padRadiusMm: 1.15 * majorMm,
    holeMm: Math.max(...layers.map((layer) => holeOf(layer, usualHoleMm))),
  };
}

function holeOf({ holeDiameterMm }: LayerDrawn, usualHoleMm: number): number {
  return holeDiameterMm ?? usualHoleMm;
}

/** Drawing units for a millimeter, along the axis and across it. */
function stackDrawnScale(props: StackDrawnProps): number {
  const { beforeMm, stackMm, nutTo, nutRadiusMm, holeMm } = lengthsOf(props);
  return Math.min(
    MOST_PER_MM,
    (STACK_WIDTH - EDGE - NAMES_ROOM) / (beforeMm + stackMm),
    (STACK_WIDTH - 2 * EDGE) / (beforeMm + nutTo),
    (2 * MOST_HALF) / Math.max(holeMm, props.nut === null ? 0 : 2 * nutRadiusMm),
  );
}

/** Where everything lies in the drawing. */
function placesOf(props: StackDrawnProps) {
  const mm = lengthsOf(props);
  const k = stackDrawnScale(props);
  const x = (along: number) => EDGE + k * (mm.beforeMm + along);
  let from = 0;
  const layers = props.layers.map((layer) => {
    const left = x(from);
    from += layer.thicknessMm;
    return { layer, left, right: x(from) };
  });
  const half = Math.max(
    (k * mm.holeMm) / 2 + 24,
    props.gapMm === null ? 0 : k * mm.padRadiusMm + 8,
    (props.nut === null ? 0 : k * mm.nutRadiusMm) + 16 + layers.length * (LETTER + 4),
  );
  return { mm, k, x, layers, half };
}

type Places = ReturnType<typeof placesOf>;

/** A flexplate stack at a stud hole as far as it is typed: gap, layers, holes and nut to one scale, converter side first. */
export function StackDrawn(props: StackDrawnProps) {
  const { id, nut, gapMm } = props;
  const places = placesOf(props);
  const { mm, k, x, layers, half } = places;
  const below = placeLengths(lengthsBelow(props, places), 2, STACK_WIDTH - 2);
  const above = placeLengths(lengthsAbove(props, places), 2, STACK_WIDTH - 2);
  const rows = (of: typeof below) => Math.max(0, ...of.map((length) => length.row + 1));
  const top = -half - 24 - ROW * rows(above);
  return (
    <svg
      viewBox={`0 ${at(top)} ${STACK_WIDTH} ${at(half + 8 + ROW * rows(below) - top)}`}
      class="stud-drawing"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>The flexplate stack as typed</title>
      <desc id={`${id}-desc`}>{drawnInWords(props)}</desc>
      <Hatches id={id} />
      {layers.map(({ layer, left, right }, index) => (
        <LayerSection
          left={left}
          right={right}
          hole={(k * holeOf(layer, props.usualHoleMm)) / 2}
          half={half}
          hatch={hatchOf(id, layer.kind, index)}
          chamfer={k * (layer.chamferMm ?? 0)}
          guessed={layer.holeDiameterMm === null}
        />
      ))}
      {gapMm !== null && (
        <Pad
          x={x(-gapMm - PAD_MM)}
          width={k * PAD_MM}
          half={k * mm.padRadiusMm}
          hatch={hatchOf(id, 'casting', 1)}
        />
      )}
      {nut && <NutSection nut={nut} hatch={hatchOf(id, 'casting', 0)} x={x} mm={mm} k={k} />}
      {nut && <NutOutside x={x} mm={mm} k={k} />}
      <path d={`M${at(x(-mm.beforeMm) - 6)} 0H${at(x(mm.nutTo) + 8)}`} class="chain" />
      <Sides y={top + LETTER} />
      {above.map((length) => (
        <Dimension length={length} y={-half - LETTER - 5} away="up" />
      ))}
      {below
        .sort((a, b) => b.row - a.row)
        .map((length) => (
          <Dimension length={length} y={half + 22} away="down" />
        ))}
      <LayerNames
        of={layers.map(({ layer, left, right }) => ({
          name: told(layer, props.unit),
          at: (left + right) / 2,
        }))}
        end={x(mm.stackMm)}
        top={-half}
      />
    </svg>
  );
}

function Sides({ y }: { y: number }) {
  return (
    <>
      <text x="2" y={at(y)} class="label">
        converter side
      </text>
      <text x={STACK_WIDTH - 2} y={at(y)} class="label end">
        engine side
      </text>
    </>
  );
}

/** Plate in pairs of lines, casting in single ones, shim in close ones; the one beside it of its kind the other way. */
function Hatches({ id }: { id: string }) {
  return (
    <defs>
      {[0, 1].map((way) => (
        <>
          <Hatch id={hatchOf(id, 'plate', way)} size={9} pair={2.5} turn={45 + 90 * way} />
          <Hatch id={hatchOf(id, 'casting', way)} size={8} turn={135 - 90 * way} />
          <Hatch id={hatchOf(id, 'shim', way)} size={3} turn={45 + 90 * way} />
        </>
      ))}
    </defs>
  );
}

function hatchOf(id: string, kind: LayerKind, index: number): string {
  return `${id}-${kind}-${index % 2}`;
}

/** The gap, each layer, and the whole where all of it is there; what is lettered between its arrows comes first. */
function lengthsBelow({ gapMm, whole, unit }: StackDrawnProps, { mm, k, x, layers, half }: Places): Length[] {
  const edge = half + 3;
  const ends = { partFrom: edge, partTo: edge };
  const figure = (length: number) => lengthFigure(length, unit, 'coarse');
  const gap =
    gapMm === null || gapMm <= 0
      ? []
      : [
          {
            from: x(-gapMm),
            to: x(0),
            figure: figure(gapMm),
            word: 'gap',
            partFrom: k * mm.padRadiusMm + 3,
            partTo: edge,
          },
        ];
  const each = layers.map(({ layer, left, right }) => ({
    from: left,
    to: right,
    figure: figure(layer.thicknessMm),
    word: layer.kind,
    ...ends,
  }));
  const all = { from: x(0), to: x(mm.stackMm), figure: figure(mm.stackMm), word: 'stack', ...ends };
  const widestFirst = [...gap, ...each].sort((a, b) => b.to - b.from - (a.to - a.from));
  return [...widestFirst, ...(whole && layers.length > 1 ? [all] : [])];
}

function lengthsAbove({ nut, unit }: StackDrawnProps, { mm, k, x }: Places): Length[] {
  if (nut === null) return [];
  const outer = -k * mm.nutRadiusMm - 2;
  const figure = lengthFigure(nut.heightMm, unit, 'coarse');
  return [{ from: x(mm.nutFrom), to: x(mm.nutTo), figure, word: 'nut', partFrom: outer, partTo: outer }];
}

/** "flexplate (plate), Ø 10.30". */
function told(layer: LayerDrawn, unit: LengthUnit): string {
  const { holeDiameterMm } = layer;
  const hole = holeDiameterMm === null ? '' : `, Ø ${lengthFigure(holeDiameterMm, unit, 'coarse')}`;
  return `${called(layer)}${hole}`;
}

/** Its name, and its kind where the name does not say it. */
function called({ name, kind }: LayerDrawn): string {
  return name.toLowerCase().includes(kind) ? name : `${name} (${kind})`;
}

/** The sentences a listener gets instead of the drawing. */
function drawnInWords({ layers, nut, gapMm, unit }: StackDrawnProps): string {
  const print = (mm: number) => printLength(mm, unit, 'coarse');
  const each = layers.map((layer) => {
    const hole = layer.holeDiameterMm === null ? 'hole not entered' : `hole ${print(layer.holeDiameterMm)}`;
    return `${called(layer)} ${print(layer.thicknessMm)} thick, ${hole}`;
  });
  return [
    `From the converter side: ${each.join('; ')}.`,
    ...(nut ? [`Nut ${print(nut.heightMm)} high.`] : []),
    ...(gapMm === null ? [] : [`Pull-forward gap ${print(gapMm)}.`]),
  ].join(' ');
}
