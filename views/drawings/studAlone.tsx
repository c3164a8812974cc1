import { STUD } from '../../shared/words/fields/stud.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { Hatch } from './hatch.tsx';
import {
  LETTERED_WIDTH,
  Lettered,
  LetteredLength,
  letteredDiameter,
  letteredFigure,
  letteredWidth,
  lettersInWords,
} from './letteredDimension.tsx';
import { at, LETTER } from './lettering.ts';
import { MOST_PER_MM, Pad, StudBody } from './stackParts.tsx';

/** The figures of a stud that the drawing carries; null where one is not entered. */
export type StudFigures = Readonly<
  Record<'threadStartMm' | 'threadEndMm' | 'projectionMm' | 'pilotDiameterMm' | 'filletMm', number | null>
>;

export interface StudAloneProps {
  readonly id: string;
  /** What is drawn: the figures, and what is usual where one is not entered. */
  readonly drawn: {
    readonly threadStartMm: number;
    readonly threadEndMm: number;
    readonly projectionMm: number;
    readonly pilotDiameterMm: number;
    readonly filletMm: number | null;
    readonly majorMm: number;
    readonly minorMm: number;
  };
  readonly figures: StudFigures;
  /** As its callout is written out; null where it is not entered. */
  readonly thread: string | null;
  readonly unit: LengthUnit;
}

const EDGE = 14;
const PAD_MM = 6;
const ROW = 27;

/** A stud on its pad to scale, each of its figures under the letter of its box. */
export function StudAlone(props: StudAloneProps) {
  const { id, drawn, figures, thread, unit } = props;
  const k = Math.min(MOST_PER_MM, (LETTERED_WIDTH - 2 * EDGE) / (PAD_MM + drawn.projectionMm));
  const x = (mm: number) => EDGE + k * (PAD_MM + mm);
  const crest = (k * drawn.majorMm) / 2;
  const half = Math.max(1.15 * k * drawn.majorMm, crest + 16);
  const lengths = (['threadStartMm', 'threadEndMm', 'projectionMm'] as const).map((key, row) => ({
    letter: STUD[key].letter,
    text: letteredFigure(figures[key], unit),
    to: x(drawn[key]),
    y: half + 24 + ROW * row,
  }));
  const pilotAt = x((drawn.threadEndMm + drawn.projectionMm) / 2);
  const over = -half - 10;
  const top = over - LETTER - 26;
  return (
    <svg
      viewBox={`0 ${at(top)} ${LETTERED_WIDTH} ${at(half + 24 + 2 * ROW + 10 - top)}`}
      class="stud-drawing"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>The stud on its pad, as typed</title>
      <desc id={`${id}-desc`}>{lettersInWords(STUD, figures, { unit, thread })}</desc>
      <defs>
        <Hatch id={`${id}-hatch`} size={8} />
      </defs>
      <Pad x={x(-PAD_MM)} width={k * PAD_MM} half={half} hatch={`${id}-hatch`} />
      {drawn.filletMm !== null && <Fillet at={x(0)} crest={crest} size={k * drawn.filletMm} />}
      <StudBody stud={drawn} mm={drawn} k={k} x={x} />
      <path d={`M${at(x(-PAD_MM) - 6)} 0H${at(x(drawn.projectionMm) + 8)}`} class="chain" />
      {thread !== null && (
        <text
          x={at(x((drawn.threadStartMm + drawn.threadEndMm) / 2))}
          y={at(-crest - 8)}
          class="label halo mid"
        >
          {thread}
        </text>
      )}
      <Pointed
        {...{ letter: STUD.pilotDiameterMm.letter, text: letteredDiameter(figures.pilotDiameterMm, unit) }}
        x={pilotAt}
        from={(-k * drawn.pilotDiameterMm) / 2}
        y={over}
      />
      {drawn.filletMm !== null && (
        <Pointed
          {...{ letter: STUD.filletMm.letter, text: letteredFigure(figures.filletMm, unit) }}
          x={x(Math.min(drawn.filletMm / 2, 0.8))}
          from={-crest - (k * drawn.filletMm) / 2}
          y={over - LETTER - 6}
        />
      )}
      {lengths.map((length) => (
        <LetteredLength {...length} from={x(0)} part={crest + 3} />
      ))}
    </svg>
  );
}

/** The weld between pad and stud, on both sides of the axis. */
function Fillet({ at: pad, crest, size }: { at: number; crest: number; size: number }) {
  return (
    <>
      {[-1, 1].map((side) => (
        <path
          d={`M${at(pad)} ${at(side * (crest + size))}Q${at(pad)} ${at(side * crest)} ${at(pad + size)} ${at(side * crest)}H${at(pad)}Z`}
          class="thick weld"
        />
      ))}
    </>
  );
}

/** A leader up to its letter. */
function Pointed(props: { letter: string; text: string; x: number; from: number; y: number }) {
  const { letter, text, x, from, y } = props;
  const half = letteredWidth(letter, text) / 2;
  const room = LETTERED_WIDTH - x - 1 >= half;
  return (
    <>
      <path d={`M${at(x)} ${at(from)}V${at(y + 3)}`} class="leader" />
      <circle cx={at(x)} cy={at(from)} r="1.9" class="arrow" />
      <Lettered letter={letter} text={text} x={room ? x : LETTERED_WIDTH - 1 - half} y={y} />
    </>
  );
}
