import { CATALOGUE_WASHER } from '../../shared/words/fields/stud.ts';
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
  TAIL,
  Upright,
} from './letteredDimension.tsx';
import { at } from './lettering.ts';

type Sizes<T> = Readonly<Record<'innerDiameterMm' | 'outerDiameterMm' | 'thicknessMm', T>>;
/** The figures of a washer or shim that the drawing carries; null where one is not entered. */
export type WasherFigures = Sizes<number | null>;

export interface WasherAloneProps {
  readonly id: string;
  /** What is drawn: the figures, and what is usual where one is not entered. */
  readonly drawn: Sizes<number>;
  readonly figures: WasherFigures;
  readonly unit: LengthUnit;
}

const SIDE = 78;
const MOST = { perMm: 10, high: 90 } as const;

/** A washer or shim in section to scale, each of its figures under the letter of its box. */
export function WasherAlone(props: WasherAloneProps) {
  const { id, drawn, figures, unit } = props;
  const k = Math.min(
    MOST.perMm,
    (LETTERED_WIDTH - 2 * SIDE) / drawn.outerDiameterMm,
    MOST.high / drawn.thicknessMm,
  );
  const middle = LETTERED_WIDTH / 2;
  const x = (mm: number) => middle + (k * mm) / 2;
  const bottom = k * drawn.thicknessMm;
  const [inner, outer] = [drawn.innerDiameterMm, drawn.outerDiameterMm];
  const { innerDiameterMm, outerDiameterMm, thicknessMm } = CATALOGUE_WASHER;
  const thick = letteredFigure(figures.thicknessMm, unit);
  const beside = x(outer) + 16;
  return (
    <svg
      viewBox={`0 -36 ${LETTERED_WIDTH} ${at(bottom + 102)}`}
      class="stud-drawing"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>Section of the washer or shim, as typed</title>
      <desc id={`${id}-desc`}>{lettersInWords(CATALOGUE_WASHER, figures, { unit })}</desc>
      <defs>
        <Hatch id={`${id}-hatch`} size={6} />
      </defs>
      {[-1, 1].map((side) => {
        const d = `M${at(x(side * inner))} 0H${at(x(side * outer))}V${at(bottom)}H${at(x(side * inner))}Z`;
        return (
          <>
            <path d={d} fill={`url(#${id}-hatch)`} />
            <path d={d} class="thick" />
          </>
        );
      })}
      <path
        d={`M${at(x(-inner))} 0H${at(x(inner))}M${at(x(-inner))} ${at(bottom)}H${at(x(inner))}`}
        class="thick"
      />
      <path d={`M${at(middle)} -12V${at(bottom + 62)}`} class="chain" />
      <LetteredLength
        letter={innerDiameterMm.letter}
        text={letteredDiameter(figures.innerDiameterMm, unit)}
        from={x(-inner)}
        to={x(inner)}
        part={bottom + 3}
        y={bottom + 30}
      />
      <LetteredLength
        letter={outerDiameterMm.letter}
        text={letteredDiameter(figures.outerDiameterMm, unit)}
        from={x(-outer)}
        to={x(outer)}
        part={bottom + 3}
        y={bottom + 57}
      />
      <path
        d={`M${at(x(outer) + 3)} 0H${at(beside + 5)}M${at(x(outer) + 3)} ${at(bottom)}H${at(beside + 5)}`}
        class="extension"
      />
      <Upright x={beside} top={0} bottom={bottom} />
      <Lettered
        letter={thicknessMm.letter}
        text={thick}
        x={beside + 8 + letteredWidth(thicknessMm.letter, thick) / 2}
        y={-TAIL + 4}
      />
    </svg>
  );
}
