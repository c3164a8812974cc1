import type { Nut, Stud } from '../../shared/words/stud/stud.ts';
import type { ThreadSpec } from '../../shared/words/stud/thread.ts';
import { at, fitText, LETTER, textWidth } from './lettering.ts';

// What the drawings of a flexplate stack are put together from: the axis lies along the paper, the converter is at the left.

export const STACK_WIDTH = 352;
export const MOST_PER_MM = 8.5;

/** Where a place along the axis, in mm, lies in the drawing. */
export type Along = (mm: number) => number;

export function majorMmOf(thread: ThreadSpec): number {
  return thread.system === 'unified' ? thread.majorInch * 25.4 : thread.majorMm;
}

function pitchMmOf(thread: ThreadSpec): number {
  return thread.system === 'unified' ? 25.4 / thread.threadsPerInch : thread.pitchMm;
}

/** Between the roots of a thread, as it is drawn. */
export function rootMmOf(thread: ThreadSpec): number {
  return majorMmOf(thread) - 1.2 * pitchMmOf(thread);
}

/** A layer in section, above and below its hole; its outer ends are broken off, because it goes on. */
export function LayerSection(props: {
  left: number;
  right: number;
  /** From the axis to the edge of the hole. */
  hole: number;
  half: number;
  /** The id of its hatch. */
  hatch: string;
  /** Of the hole at the face toward the converter, where the stud’s fillet lies. */
  chamfer?: number;
  /** The hole was not measured: its edge is dashed. */
  guessed?: boolean;
}) {
  const { left, right, hole, half, hatch, guessed = false } = props;
  const chamfer = Math.min(props.chamfer ?? 0, right - left, half - hole);
  const edge = (side: number) =>
    chamfer === 0
      ? `M${at(left)} ${at(side * half)}V${at(side * hole)}H${at(right)}V${at(side * half)}`
      : `M${at(left)} ${at(side * half)}V${at(side * (hole + chamfer))}L${at(left + chamfer)} ${at(side * hole)}H${at(right)}V${at(side * half)}`;
  const wave = (right - left) / 4;
  return (
    <>
      {[-1, 1].map((side) => (
        <g>
          {chamfer > 0 ? (
            <path d={`${edge(side)}Z`} fill={`url(#${hatch})`} />
          ) : (
            <rect
              x={at(left)}
              y={at(side < 0 ? -half : hole)}
              width={at(right - left)}
              height={at(half - hole)}
              fill={`url(#${hatch})`}
            />
          )}
          {guessed ? (
            <>
              <path
                d={`M${at(left)} ${at(side * half)}V${at(side * hole)}M${at(right)} ${at(side * hole)}V${at(side * half)}`}
                class="thick"
              />
              <path d={`M${at(left)} ${at(side * hole)}H${at(right)}`} class="hidden-line" />
            </>
          ) : (
            <path d={edge(side)} class="thick" />
          )}
          <path
            d={`M${at(left)} ${at(side * half)}q${at(wave)} ${-4} ${at(2 * wave)} 0t${at(2 * wave)} 0`}
            class="thin"
          />
        </g>
      ))}
    </>
  );
}

/** What the stud is welded to. */
export function Pad({ x, width, half, hatch }: { x: number; width: number; half: number; hatch: string }) {
  const box = { x: at(x), y: at(-half), width: at(width), height: at(2 * half) };
  return (
    <>
      <rect {...box} class="metal" />
      <rect {...box} fill={`url(#${hatch})`} />
      <rect {...box} class="thick" />
    </>
  );
}

/** Where the nut lies along the axis, and how far out it reaches. */
export interface NutPlace {
  readonly majorMm: number;
  readonly stackMm: number;
  readonly nutFrom: number;
  readonly nutTo: number;
  readonly nutRadiusMm: number;
}

/** On the far face of a stack so thick, with its washer under it. */
export function nutPlace(nut: Nut | null, stackMm: number, majorMm: number): NutPlace {
  const nutFrom = stackMm + (nut?.washerMm ?? 0);
  return {
    majorMm,
    stackMm,
    nutFrom,
    nutTo: nutFrom + (nut?.heightMm ?? 0),
    nutRadiusMm: Math.max(nut?.bearingOuterDiameterMm ?? 0, 1.55 * majorMm) / 2,
  };
}

/** The nut above the axis in section, countersunk at both ends; a washer under it. */
export function NutSection(props: { nut: Nut; hatch: string; x: Along; mm: NutPlace; k: number }) {
  const { nut, hatch, x, mm, k } = props;
  const crest = (k * mm.majorMm) / 2;
  const outer = k * mm.nutRadiusMm;
  const sink = k * nut.countersinkMm;
  const [left, right] = [x(mm.nutFrom), x(mm.nutTo)];
  const nutShape = `M${at(left)} ${at(-crest - sink)}V${at(-outer)}H${at(right)}V${at(-crest - sink)}L${at(right - sink)} ${at(-crest)}H${at(left + sink)}Z`;
  return (
    <>
      <path d={nutShape} fill={`url(#${hatch})`} />
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
export function NutOutside({ x, mm, k }: { x: Along; mm: NutPlace; k: number }) {
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
export function LayerNames(props: {
  of: readonly { readonly name: string; readonly at: number }[];
  /** Where the stack ends. */
  end: number;
  top: number;
}) {
  const { of, end, top } = props;
  const room = STACK_WIDTH - 4 - (end + 14);
  return (
    <>
      {of.map(({ name, at: middle }, index) => {
        const y = top + 12 + (of.length - 1 - index) * (LETTER + 4);
        const text = fitText(name, LETTER, room);
        return (
          <>
            <path d={`M${at(middle)} ${at(y)}H${at(end + 12)}`} class="leader" />
            <circle cx={at(middle)} cy={at(y)} r="1.9" class="arrow" />
            <text x={at(end + 15)} y={at(y + LETTER * 0.36)} class="label halo">
              {textWidth(text, LETTER) > 0 ? text : `layer ${index + 1}`}
            </text>
          </>
        );
      })}
    </>
  );
}

/** Thread after ISO 6410: crests thick, roots thin, ends of full thread thick. */
export function StudBody(props: {
  stud: Pick<Stud, 'threadStartMm' | 'threadEndMm' | 'projectionMm' | 'pilotDiameterMm'>;
  mm: { readonly majorMm: number; readonly minorMm: number };
  k: number;
  x: Along;
}) {
  const { stud, mm, k, x } = props;
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
