import { NUT } from '../../shared/words/fields/stud.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import type { Nut } from '../../shared/words/stud/stud.ts';
import { arrowHead } from './dimension.tsx';
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
import { at } from './lettering.ts';
import { NutOutside, NutSection, nutPlace } from './stackParts.tsx';

/** The figures of a nut that the drawing carries; null where one is not entered. */
export type NutFigures = Readonly<
  Record<'heightMm' | 'countersinkMm' | 'bearingOuterDiameterMm', number | null>
>;

export interface NutAloneProps {
  readonly id: string;
  /** What is drawn: the figures, and what is usual where one is not entered. */
  readonly drawn: Nut & { readonly majorMm: number };
  readonly figures: NutFigures;
  readonly thread: string | null;
  readonly unit: LengthUnit;
}

const LEFT = 96;
const MOST = { perMm: 12, wide: 150, high: 170 } as const;

/** A nut to scale, half in section and half from outside, each of its figures under the letter of its box. */
export function NutAlone(props: NutAloneProps) {
  const { id, drawn, figures, thread, unit } = props;
  const mm = nutPlace({ ...drawn, washerMm: 0 }, 0, drawn.majorMm);
  const k = Math.min(MOST.perMm, MOST.wide / drawn.heightMm, MOST.high / (2 * mm.nutRadiusMm));
  const x = (along: number) => LEFT + k * along;
  const outer = k * mm.nutRadiusMm;
  const bore = (k * drawn.majorMm) / 2;
  const right = x(drawn.heightMm);
  const face = right + 30;
  const diameter = letteredDiameter(figures.bearingOuterDiameterMm, unit);
  const { heightMm, countersinkMm, bearingOuterDiameterMm } = NUT;
  const top = -outer - 44;
  return (
    <svg
      viewBox={`0 ${at(top)} ${LETTERED_WIDTH} ${at(outer + 46 - top)}`}
      class="stud-drawing"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>The nut, as typed</title>
      <desc id={`${id}-desc`}>{lettersInWords(NUT, figures, { unit, thread })}</desc>
      <defs>
        <Hatch id={`${id}-hatch`} size={7} turn={135} />
      </defs>
      <NutSection nut={{ ...drawn, washerMm: 0 }} hatch={`${id}-hatch`} x={x} mm={mm} k={k} />
      <NutOutside x={x} mm={mm} k={k} />
      <path d={`M${LEFT} ${at(-bore)}V0M${at(right)} ${at(-bore)}V0`} class="thick" />
      <path d={`M${at(LEFT - 10)} 0H${at(right + 10)}`} class="chain" />
      {thread !== null && (
        <>
          <path
            d={`M${at(LEFT - 6)} ${at(-bore / 2)}H${at((LEFT + right) / 2)}V${at(-bore)}`}
            class="leader"
          />
          <text x={at(LEFT - 9)} y={at(-bore / 2 + 4)} class="label halo end">
            {thread}
          </text>
        </>
      )}
      <LetteredLength
        letter={heightMm.letter}
        text={letteredFigure(figures.heightMm, unit)}
        from={LEFT}
        to={right}
        part={outer + 3}
        y={outer + 30}
      />
      {drawn.countersinkMm > 0 && (
        <LetteredLength
          letter={countersinkMm.letter}
          text={letteredFigure(figures.countersinkMm, unit)}
          from={LEFT}
          to={x(drawn.countersinkMm)}
          part={-outer - 3}
          y={-outer - 22}
        />
      )}
      <path
        d={`M${at(right + 3)} ${at(-outer)}H${at(face + 5)}M${at(right + 3)} ${at(outer)}H${at(face + 5)}`}
        class="extension"
      />
      <path d={`M${at(face)} ${at(-outer)}V${at(outer)}`} class="dim" />
      <path d={arrowHead(face, -outer, 'up') + arrowHead(face, outer, 'down')} class="arrow" />
      <Lettered
        letter={bearingOuterDiameterMm.letter}
        text={diameter}
        x={face + 10 + letteredWidth(bearingOuterDiameterMm.letter, diameter) / 2}
        y={5}
      />
    </svg>
  );
}
