import type { CoverCheck, CoverShape } from '../../shared/words/cover.ts';
import {
  type LengthUnit,
  lengthFigure,
  printAgainst,
  printLength,
  printNumber,
} from '../../shared/words/print.ts';
import { at, LETTER, spread } from './lettering.ts';

export interface WallSectionProps {
  /** Starts every id in the drawing; one per drawing on a page. */
  readonly id: string;
  readonly shape: CoverShape;
  readonly check: Pick<CoverCheck, 'stations' | 'leastWall' | 'minimumWall' | 'cut'>;
  readonly unit: LengthUnit;
}

const WIDTH = 348;
const LEFT = 8;
const RIGHT = 340;
const TOP = 26;
const DETAIL_HEIGHT = 168;
const DETAIL_RIGHT = 176;
const GAP = 44;

interface Line {
  readonly text: string;
  readonly mm: number;
  readonly class: string;
}

/**
 * The wall through its thinnest place: across the track at one scale both ways, and beneath it a detail, enlarged,
 * in which cut, minimum and the band of uncertainty can be seen. Null where no station was measured.
 */
export function WallSection({ id, shape, check, unit }: WallSectionProps) {
  const station = check.stations[check.leastWall.station];
  if (station === undefined) return null;
  const { wallMm, wallAfterMm, radiusMm, cutMm } = station;
  const minimum = check.minimumWall?.mm ?? null;
  const band = check.leastWall.expandedUncertaintyMm;
  const [inner, outer] = [shape.trackInnerDiameterMm / 2, shape.trackOuterDiameterMm / 2];
  const k = (RIGHT - LEFT) / Math.max(outer - inner, 1);
  const x = (mm: number) => LEFT + k * (mm - inner);
  // The pad side lies at the foot of the section, the clutch side at its head.
  const foot = TOP + k * Math.max(wallMm, wallAfterMm);
  const y = (mm: number) => foot - k * mm;

  const least = Math.min(wallAfterMm - (band ?? 0), minimum ?? wallAfterMm);
  const most = Math.max(wallMm, wallAfterMm + (band ?? 0));
  const room = Math.max(0.15 * (most - least), 0.01);
  const detailTop = foot + GAP;
  const detailFoot = detailTop + DETAIL_HEIGHT;
  const detail = DETAIL_HEIGHT / (most - least + 2 * room);
  const dy = (mm: number) => detailFoot - detail * (mm - least + room);
  const times = detail / k;

  const lines: Line[] = [
    { text: `as measured ${lengthFigure(wallMm, unit)}`, mm: wallMm, class: 'label' },
    { text: `after the cut ${lengthFigure(wallAfterMm, unit)}`, mm: wallAfterMm, class: 'cut-text' },
    ...(band === null
      ? []
      : [{ text: `± ${lengthFigure(band, unit)} band`, mm: wallAfterMm - band, class: 'label' }]),
    ...(minimum === null
      ? []
      : [{ text: `minimum ${lengthFigure(minimum, unit)}`, mm: minimum, class: 'limit-text' }]),
  ];
  // Names beside lines keep one line's height apart, in their order, and end within the detail.
  const wanted = lines.map(({ mm }) => dy(mm));
  const ys = spread(wanted, LETTER + 4, Number.NEGATIVE_INFINITY, detailFoot - 2);
  const height = detailFoot + 8;
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${at(height)}`}
      class="wall-section"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>Section of the wall through its thinnest place</title>
      <desc id={`${id}-desc`}>{sectionInWords(check, unit)}</desc>
      <defs>
        <pattern
          id={`${id}-hatch`}
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V7" class="hair" />
        </pattern>
        <clipPath id={`${id}-clip`}>
          <rect x={LEFT} y={at(detailTop)} width={DETAIL_RIGHT - LEFT} height={DETAIL_HEIGHT} />
        </clipPath>
      </defs>
      <text x={LEFT} y={LETTER} class="label">
        across the track, clutch side up
      </text>
      <rect
        x={LEFT}
        y={at(y(wallAfterMm))}
        width={at(RIGHT - LEFT)}
        height={at(k * Math.max(wallAfterMm, 0))}
        class="metal"
      />
      <rect
        x={LEFT}
        y={at(y(wallAfterMm))}
        width={at(RIGHT - LEFT)}
        height={at(k * Math.max(wallAfterMm, 0))}
        fill={`url(#${id}-hatch)`}
      />
      <path d={`M${LEFT} ${at(y(wallMm))}H${RIGHT}`} class="thin dash" />
      <path
        d={`M${LEFT} ${at(foot)}H${RIGHT}M${LEFT} ${at(y(wallAfterMm))}V${at(foot)}M${RIGHT} ${at(y(wallAfterMm))}V${at(foot)}`}
        class="thick"
      />
      <path d={`M${LEFT} ${at(y(wallAfterMm))}H${RIGHT}`} class="cut-line" />
      {minimum !== null && <path d={`M${LEFT} ${at(y(minimum))}H${RIGHT}`} class="limit" />}
      <circle cx={at(x(radiusMm))} cy={at(y(wallAfterMm))} r="7" class="st-ring" />
      <text x={LEFT} y={at(foot + LETTER + 6)} class="label">
        pad side; one scale both ways
      </text>

      <text x={LEFT} y={at(detailTop - 6)} class="label">
        detail there, enlarged {printNumber(times, times < 10 ? 1 : 0)} times
      </text>
      <g clip-path={`url(#${id}-clip)`}>
        <rect
          x={LEFT}
          y={at(dy(wallAfterMm))}
          width={DETAIL_RIGHT - LEFT}
          height={at(detailFoot - dy(wallAfterMm))}
          class="metal"
        />
        <rect
          x={LEFT}
          y={at(dy(wallMm))}
          width={DETAIL_RIGHT - LEFT}
          height={at(Math.max(0, dy(wallAfterMm) - dy(wallMm)))}
          fill={`url(#${id}-hatch)`}
        />
        {band !== null && (
          <rect
            x={LEFT}
            y={at(dy(wallAfterMm + band))}
            width={DETAIL_RIGHT - LEFT}
            height={at(2 * detail * band)}
            class="band"
          />
        )}
        <path d={`M${LEFT} ${at(dy(wallMm))}H${DETAIL_RIGHT}`} class="thick" />
        <path d={`M${LEFT} ${at(dy(wallAfterMm))}H${DETAIL_RIGHT}`} class="cut-line" />
        {minimum !== null && <path d={`M${LEFT} ${at(dy(minimum))}H${DETAIL_RIGHT}`} class="limit" />}
      </g>
      <rect x={LEFT} y={at(detailTop)} width={DETAIL_RIGHT - LEFT} height={DETAIL_HEIGHT} class="thin" />
      {cutMm > 0 && (
        <text x={LEFT + 6} y={at((dy(wallMm) + dy(wallAfterMm)) / 2 + 4)} class="strong halo">
          cut {lengthFigure(cutMm, unit)}
        </text>
      )}
      {lines.map((line, index) => (
        <>
          <path
            d={`M${DETAIL_RIGHT} ${at(dy(line.mm))}L${DETAIL_RIGHT + 12} ${at(ys[index]!)}`}
            class="extension"
          />
          <text x={DETAIL_RIGHT + 16} y={at(ys[index]! + LETTER * 0.36)} class={line.class}>
            {line.text}
          </text>
        </>
      ))}
    </svg>
  );
}

/** The sentence a listener gets instead of the drawing. */
function sectionInWords(
  { stations, leastWall, minimumWall }: WallSectionProps['check'],
  unit: LengthUnit,
): string {
  const station = stations[leastWall.station]!;
  const after = minimumWall
    ? printAgainst(station.wallAfterMm, minimumWall.mm, unit)
    : printLength(station.wallAfterMm, unit);
  return [
    `At ${printNumber(station.angleDeg, 0)}°, radius ${printLength(station.radiusMm, unit, 'coarse')}: ${printLength(station.wallMm, unit)} as measured, ${printLength(station.cutMm, unit)} cut there, ${after} left.`,
    ...(leastWall.expandedUncertaintyMm === null
      ? []
      : [`Known to within ${printLength(leastWall.expandedUncertaintyMm, unit)} either way.`]),
    ...(minimumWall ? [`The minimum is ${printLength(minimumWall.mm, unit)}.`] : []),
  ].join(' ');
}
