import { FAMILY } from '../../shared/words/fields/family.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import type { HalfSection } from './coverSection.tsx';
import { arrowHead } from './dimension.tsx';
import { Hatch } from './hatch.tsx';
import {
  Lettered,
  letteredDiameter,
  letteredFigure,
  letteredWidth,
  lettersInWords,
  TAIL,
  Upright,
  LETTERED_WIDTH as WIDTH,
} from './letteredDimension.tsx';
import { at } from './lettering.ts';

/** The figures of a cover type that the drawing carries; null where one is not entered. */
export type CoverFigures = Readonly<
  Record<
    | 'studCircleDiameterMm'
    | 'trackOuterDiameterMm'
    | 'trackInnerDiameterMm'
    | 'bossDiameterMm'
    | 'rimDiameterMm'
    | 'nominalWallMm'
    | 'padDiameterMm'
    | 'padThicknessMm',
    number | null
  >
>;

export interface CoverLetteredProps {
  readonly id: string;
  readonly section: HalfSection;
  readonly figures: CoverFigures;
  readonly unit: LengthUnit;
}

const AXIS = 16;
/** Right of the rim, for the figure over the pad. */
const SPARE = 30;
const ROW = 25;

function placesOf({ section }: CoverLetteredProps) {
  const { rimMm, wallMm, bossMm, track, pad, studMm } = section;
  const k = (WIDTH - AXIS - SPARE) / rimMm;
  const padTop = -k * pad.topMm;
  const studHalf = Math.max(3, (k * (pad.toMm - pad.fromMm)) / 5);
  return {
    k,
    x: (mm: number) => AXIS + k * mm,
    wall: -k * wallMm,
    padTop,
    studHalf,
    studTop: padTop - 34,
    foot: Math.max(26, k * wallMm * 3.4),
    radii: { rimMm, bossMm, track, pad, studMm },
  };
}

type Places = ReturnType<typeof placesOf>;

/** Half the section of a cover to scale, engine side up, each of its figures under the letter of its box. */
export function CoverLettered(props: CoverLetteredProps) {
  const { id, section, figures, unit } = props;
  const places = placesOf(props);
  const { x, wall, foot, studTop } = places;
  const rows = diametersOf(props);
  const top = studTop - 42;
  const firstRow = foot + 20;
  return (
    <svg
      viewBox={`0 ${at(top)} ${WIDTH} ${at(firstRow + ROW * (rows.length - 1) + 10 - top)}`}
      class="stud-drawing cover-lettered"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>Half section of the cover, as typed</title>
      <desc id={`${id}-desc`}>{lettersInWords(FAMILY, figures, { unit })}</desc>
      <defs>
        <Hatch id={`${id}-hatch`} size={7} />
      </defs>
      <Metal {...props} places={places} />
      <path d={`M${AXIS} ${at(wall - 34)}V${at(firstRow + ROW * (rows.length - 1) + 6)}`} class="chain" />
      <path d={`M${at(x(section.studMm))} ${at(studTop - 6)}V${at(foot - 4)}`} class="chain" />
      {rows.map(({ letter, text, toMm, from }, row) => (
        <Diameter letter={letter} text={text} to={x(toMm)} from={from} y={firstRow + ROW * row} />
      ))}
      <Thicknesses {...props} places={places} />
    </svg>
  );
}

/** Cut metal, the stud uncut, and the friction surface. */
function Metal({ id, section, places }: CoverLetteredProps & { readonly places: Places }) {
  const { x, k, wall, padTop, studHalf, studTop, foot } = places;
  const { rimMm, wallMm, bossMm, track, pad, studMm } = section;
  const outline = [
    `M${at(x(0))} 0H${at(x(rimMm - wallMm))}V${at(foot)}H${at(x(rimMm))}V${at(wall)}`,
    ...(pad.toMm < rimMm ? [`H${at(x(pad.toMm))}`] : []),
    `V${at(padTop)}H${at(x(pad.fromMm))}V${at(wall)}`,
    `H${at(x(bossMm))}V${at(wall - k * wallMm * 1.4)}H${at(x(0))}`,
  ].join('');
  const [left, right] = [x(studMm) - studHalf, x(studMm) + studHalf];
  return (
    <>
      <path d={`${outline}Z`} fill={`url(#${id}-hatch)`} />
      <path d={outline} class="thick" />
      <path d={`M${at(left)} ${at(padTop)}V${at(studTop)}H${at(right)}V${at(padTop)}Z`} class="stud-body" />
      <path d={`M${at(x(track[0]))} 0H${at(x(track[1]))}`} class="track-face" />
      <text x={at(x(track[0]) - 6)} y={at(foot)} class="label halo end">
        friction surface
      </text>
    </>
  );
}

interface DiameterRow {
  readonly letter: string;
  readonly text: string;
  readonly toMm: number;
  /** Where its extension line leaves the part. */
  readonly from: number;
}

/** From the axis outward, the narrowest first, so that no line crosses another. */
function diametersOf(props: CoverLetteredProps): DiameterRow[] {
  const { section, figures } = props;
  const { foot, wall } = placesOf(props);
  const row = (key: keyof CoverFigures, toMm: number, from: number): DiameterRow => ({
    letter: FAMILY[key].letter,
    text: letteredDiameter(figures[key], props.unit),
    toMm,
    from,
  });
  return [
    row('bossDiameterMm', section.bossMm, wall),
    row('trackInnerDiameterMm', section.track[0], 3),
    row('trackOuterDiameterMm', section.track[1], 3),
    row('studCircleDiameterMm', section.studMm, foot),
    row('rimDiameterMm', section.rimMm, foot + 2),
  ].sort((a, b) => a.toMm - b.toMm);
}

/** Half a diameter, from the axis to its edge: one arrow, and the figure of the whole (ISO 129-1). */
function Diameter({
  letter,
  text,
  to,
  from,
  y,
}: {
  letter: string;
  text: string;
  to: number;
  from: number;
  y: number;
}) {
  const middle = Math.max((AXIS + to) / 2, AXIS + 6 + letteredWidth(letter, text) / 2);
  return (
    <g class="dimension">
      <path d={`M${at(to)} ${at(from)}V${at(y + 5)}`} class="extension" />
      <path d={`M${AXIS - 8} ${at(y)}H${at(to)}`} class="dim" />
      <path d={arrowHead(to, y, 'right')} class="arrow" />
      <Lettered letter={letter} text={text} x={middle} y={y - 5} />
    </g>
  );
}

/** The wall and the pad: thickness from outside, and the pad’s width over the stud. */
function Thicknesses(props: CoverLetteredProps & { readonly places: Places }) {
  const { section, figures, unit, places } = props;
  const { x, wall, padTop, studTop } = places;
  const { bossMm, track, pad } = section;
  const length = (mm: number | null) => letteredFigure(mm, unit);
  const wallAt = x(bossMm + 0.55 * (track[0] - bossMm));
  const padAt = x(pad.fromMm) - 13;
  const [left, right] = [x(pad.fromMm), x(pad.toMm)];
  const over = studTop - 22;
  const padText = length(figures.padThicknessMm);
  const padWide = letteredWidth(FAMILY.padThicknessMm.letter, padText);
  return (
    <>
      <Upright x={wallAt} top={wall} bottom={0} />
      <Lettered
        letter={FAMILY.nominalWallMm.letter}
        text={length(figures.nominalWallMm)}
        x={wallAt}
        y={wall - TAIL - 6}
      />
      <path d={`M${at(left - 1)} ${at(padTop)}H${at(padAt - 5)}`} class="extension" />
      <Upright x={padAt} top={padTop} bottom={wall} />
      <Lettered
        letter={FAMILY.padThicknessMm.letter}
        text={padText}
        x={padAt - padWide / 2 + 8}
        y={padTop - TAIL - 6}
      />
      <path
        d={`M${at(left)} ${at(padTop - 3)}V${at(over - 5)}M${at(right)} ${at(padTop - 3)}V${at(over - 5)}`}
        class="extension"
      />
      <path d={`M${at(left)} ${at(over)}H${at(right)}`} class="dim" />
      <path d={arrowHead(left, over, 'left') + arrowHead(right, over, 'right')} class="arrow" />
      <Lettered
        letter={FAMILY.padDiameterMm.letter}
        text={letteredDiameter(figures.padDiameterMm, unit)}
        x={(left + right) / 2}
        y={over - 6}
      />
    </>
  );
}
