import type { CoverShape, MeasuredCheck } from '../../shared/words/cover.ts';
import {
  type LengthUnit,
  lengthFigure,
  printAgainst,
  printLength,
  printNumber,
} from '../../shared/words/print.ts';
import { Hatch } from './hatch.tsx';
import { at, LETTER, spread } from './lettering.ts';

export interface WallSectionProps {
  /** Starts every id in the drawing; one per drawing on a page. */
  readonly id: string;
  readonly shape: CoverShape;
  readonly check: Pick<MeasuredCheck, 'stations' | 'leastWall' | 'minimumWall' | 'cut'>;
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

type Station = MeasuredCheck['stations'][number];

/** Both drawings’ places: the section at one scale both ways, the detail enlarged upward. */
interface Places {
  readonly station: Station;
  readonly minimum: number | null;
  readonly band: number | null;
  readonly section: {
    readonly x: (mm: number) => number;
    readonly y: (mm: number) => number;
    readonly perMm: number;
    readonly foot: number;
  };
  readonly detail: {
    readonly y: (mm: number) => number;
    readonly perMm: number;
    readonly top: number;
    readonly foot: number;
  };
}

function placesOf({ shape, check }: WallSectionProps, station: Station): Places {
  const { wallMm, wallAfterMm } = station;
  const minimum = check.minimumWall?.mm ?? null;
  const band = check.leastWall.expandedUncertaintyMm;
  const [inner, outer] = [shape.trackInnerDiameterMm / 2, shape.trackOuterDiameterMm / 2];
  const k = (RIGHT - LEFT) / Math.max(outer - inner, 1);
  // The pad side lies at the foot of the section, the clutch side at its head.
  const foot = TOP + k * Math.max(wallMm, wallAfterMm, minimum ?? 0);
  const least = Math.min(wallAfterMm - (band ?? 0), minimum ?? wallAfterMm);
  // A wall that is too thin before any cut has its minimum above it.
  const most = Math.max(wallMm, wallAfterMm + (band ?? 0), minimum ?? 0);
  const room = Math.max(0.15 * (most - least), 0.01);
  const detailTop = foot + GAP;
  const detailFoot = detailTop + DETAIL_HEIGHT;
  const detail = DETAIL_HEIGHT / (most - least + 2 * room);
  return {
    station,
    minimum,
    band,
    section: { x: (mm) => LEFT + k * (mm - inner), y: (mm) => foot - k * mm, perMm: k, foot },
    detail: {
      y: (mm) => detailFoot - detail * (mm - least + room),
      perMm: detail,
      top: detailTop,
      foot: detailFoot,
    },
  };
}

/**
 * The wall through its thinnest place: across the track at one scale both ways, and beneath it a detail, enlarged,
 * in which cut, minimum and the band of uncertainty can be seen. Null where no station was measured.
 */
export function WallSection(props: WallSectionProps) {
  const { id, check, unit } = props;
  const station = check.stations[check.leastWall.station];
  if (station === undefined) return null;
  const places = placesOf(props, station);
  const { detail } = places;
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${at(detail.foot + 8)}`}
      class="wall-section"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>Section of the wall at its thinnest station</title>
      <desc id={`${id}-desc`}>{sectionInWords(check, unit)}</desc>
      <defs>
        <Hatch id={`${id}-hatch`} size={7} />
        <clipPath id={`${id}-clip`}>
          <rect x={LEFT} y={at(detail.top)} width={DETAIL_RIGHT - LEFT} height={DETAIL_HEIGHT} />
        </clipPath>
      </defs>
      <AcrossTrack id={id} places={places} />
      <Detail id={id} places={places} />
      {station.cutMm > 0 && (
        <text
          x={LEFT + 6}
          y={at((detail.y(station.wallMm) + detail.y(station.wallAfterMm)) / 2 + 4)}
          class="strong halo"
        >
          cut {lengthFigure(station.cutMm, unit)}
        </text>
      )}
      <LineNames places={places} unit={unit} />
    </svg>
  );
}

function AcrossTrack({ id, places: { station, minimum, section } }: { id: string; places: Places }) {
  const { wallMm, wallAfterMm, radiusMm } = station;
  const { x, y, foot, perMm } = section;
  const left = {
    x: LEFT,
    y: at(y(wallAfterMm)),
    width: at(RIGHT - LEFT),
    height: at(perMm * Math.max(wallAfterMm, 0)),
  };
  return (
    <>
      <text x={LEFT} y={LETTER} class="label">
        across the friction surface, clutch side up
      </text>
      <rect {...left} class="metal" />
      <rect {...left} fill={`url(#${id}-hatch)`} />
      <path d={`M${LEFT} ${at(y(wallMm))}H${RIGHT}`} class="thin dash" />
      <path
        d={`M${LEFT} ${at(foot)}H${RIGHT}M${LEFT} ${at(y(wallAfterMm))}V${at(foot)}M${RIGHT} ${at(y(wallAfterMm))}V${at(foot)}`}
        class="thick"
      />
      <path d={`M${LEFT} ${at(y(wallAfterMm))}H${RIGHT}`} class="cut-line" />
      {minimum !== null && <path d={`M${LEFT} ${at(y(minimum))}H${RIGHT}`} class="limit" />}
      <circle cx={at(x(radiusMm))} cy={at(y(wallAfterMm))} r="7" class="st-ring" />
      <text x={LEFT} y={at(foot + LETTER + 6)} class="label">
        pad side; same scale both ways
      </text>
    </>
  );
}

function Detail({ id, places }: { id: string; places: Places }) {
  const { station, minimum, band, section, detail } = places;
  const { wallMm, wallAfterMm } = station;
  const { y } = detail;
  const times = detail.perMm / section.perMm;
  const wide = { x: LEFT, width: DETAIL_RIGHT - LEFT };
  return (
    <>
      <text x={LEFT} y={at(detail.top - 6)} class="label">
        detail, enlarged {printNumber(times, times < 10 ? 1 : 0)} times
      </text>
      <g clip-path={`url(#${id}-clip)`}>
        <rect {...wide} y={at(y(wallAfterMm))} height={at(detail.foot - y(wallAfterMm))} class="metal" />
        <rect
          {...wide}
          y={at(y(wallMm))}
          height={at(Math.max(0, y(wallAfterMm) - y(wallMm)))}
          fill={`url(#${id}-hatch)`}
        />
        {band !== null && (
          <rect {...wide} y={at(y(wallAfterMm + band))} height={at(2 * detail.perMm * band)} class="band" />
        )}
        <path d={`M${LEFT} ${at(y(wallMm))}H${DETAIL_RIGHT}`} class="thick" />
        <path d={`M${LEFT} ${at(y(wallAfterMm))}H${DETAIL_RIGHT}`} class="cut-line" />
        {minimum !== null && <path d={`M${LEFT} ${at(y(minimum))}H${DETAIL_RIGHT}`} class="limit" />}
      </g>
      <rect {...wide} y={at(detail.top)} height={DETAIL_HEIGHT} class="thin" />
    </>
  );
}

/** Names beside the lines of the detail: one line's height apart, in their order, none below the detail. */
function LineNames({ places, unit }: { places: Places; unit: LengthUnit }) {
  const { station, minimum, band, detail } = places;
  const { wallMm, wallAfterMm } = station;
  const lines: Line[] = [
    { text: `as measured ${lengthFigure(wallMm, unit)}`, mm: wallMm, class: 'label' },
    { text: `after the cut ${lengthFigure(wallAfterMm, unit)}`, mm: wallAfterMm, class: 'cut-text' },
    ...(band === null
      ? []
      : [{ text: `± ${lengthFigure(band, unit)} uncertainty`, mm: wallAfterMm - band, class: 'label' }]),
    ...(minimum === null
      ? []
      : [{ text: `minimum ${lengthFigure(minimum, unit)}`, mm: minimum, class: 'limit-text' }]),
  ];
  const wanted = lines.map(({ mm }) => detail.y(mm));
  const ys = spread(wanted, LETTER + 4, Number.NEGATIVE_INFINITY, detail.foot - 2);
  return (
    <>
      {lines.map((line, index) => (
        <>
          <path
            d={`M${DETAIL_RIGHT} ${at(detail.y(line.mm))}L${DETAIL_RIGHT + 12} ${at(ys[index]!)}`}
            class="extension"
          />
          <text x={DETAIL_RIGHT + 16} y={at(ys[index]! + LETTER * 0.36)} class={line.class}>
            {line.text}
          </text>
        </>
      ))}
    </>
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
