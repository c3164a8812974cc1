import type {
  CoverCheckInput,
  CoverCriteria,
  CoverShape,
  Mark,
  Station,
} from '../../../shared/words/cover.ts';
import { samePlace } from '../../../shared/words/places.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { betweenStations } from './betweenStations.ts';
import { measuredStations } from './measuredStations.ts';

const MOST_STATIONS = 400;
/** Nothing of a cover is longer; keeps every sum and square finite. */
const LONGEST_MM = 10_000;

const GAUGE_NAMES = [
  ['standardUncertaintyMm', 'The gauge’s standard uncertainty'],
  ['resolutionMm', 'The gauge’s resolution'],
  ['repeatabilityMm', 'The gauge’s repeatability'],
  ['faceStandardUncertaintyMm', 'The indicator’s standard uncertainty'],
  ['cutSettingStandardUncertaintyMm', 'The depth of cut standard uncertainty'],
] as const;

/** Throws: a Refusal that names every field the calculation cannot take. Repairs nothing. */
export function refuseImpossible(input: CoverCheckInput): void {
  const { gauge, criteria } = input;
  const each: readonly Fault[] = [
    ...coverFaults(input.cover),
    ...stationFaults(input.stations),
    ...markFaults(input.marks),
    ...(gauge ? GAUGE_NAMES.flatMap(([key, name]) => length(`gauge.${key}`, name, gauge[key])) : []),
    ...(criteria ? criteriaFaults(criteria) : []),
    ...length('makerMinimumWallMm', 'The maker’s minimum wall', input.makerMinimumWallMm, ABOVE_0),
    ...length('plannedCutMm', 'The planned cut', input.plannedCutMm),
    ...length('releaseClearanceMm', 'The release clearance', input.releaseClearanceMm),
  ];
  const faults = each.length > 0 ? each : [...samePlaces(input), ...marksThroughWall(input)];
  if (faults.length > 0) throw new Refusal('cover-input', faults);
}

interface Ends {
  readonly from: number;
  /** Leaves the least value itself out. */
  readonly open?: boolean;
}

const FROM_0: Ends = { from: 0 };
const ABOVE_0: Ends = { from: 0, open: true };

/** What is wrong with a length; nothing where it is null, which is not given. */
function length(
  path: string,
  name: string,
  mm: number | null,
  { from, open = false }: Ends = FROM_0,
): Fault[] {
  if (mm === null) return [];
  if (!Number.isFinite(mm)) return [{ path, message: `${name} is not a number. Give it in mm.` }];
  return unless(
    (open ? mm > from : mm >= from) && mm <= LONGEST_MM,
    path,
    `${name} is ${mm} mm; it must be ${open ? 'more than' : 'at least'} ${from} mm and at most ${LONGEST_MM} mm.`,
  );
}

function angle(path: string, name: string, deg: number): Fault[] {
  return unless(
    Number.isFinite(deg),
    path,
    `${name} is not a number. Give it in degrees, clockwise from stud 1.`,
  );
}

function unless(right: boolean, path: string, message: string): Fault[] {
  return right ? [] : [{ path, message }];
}

function coverFaults(cover: CoverShape): Fault[] {
  const {
    studCount,
    trackInnerDiameterMm: inner,
    trackOuterDiameterMm: outer,
    densityKgPerM3: density,
  } = cover;
  return [
    ...unless(
      Number.isInteger(studCount) && studCount >= 2 && studCount <= 24,
      'cover.studCount',
      `The number of studs is ${studCount}; it must be a whole number from 2 to 24.`,
    ),
    ...length('cover.studCircleDiameterMm', 'The bolt circle diameter', cover.studCircleDiameterMm, ABOVE_0),
    ...length('cover.trackInnerDiameterMm', 'The friction surface inner diameter', inner),
    ...length('cover.trackOuterDiameterMm', 'The friction surface outer diameter', outer, ABOVE_0),
    ...unless(
      !(inner >= outer),
      'cover.trackInnerDiameterMm',
      `The friction surface inner diameter is ${inner} mm; it must be less than the outer, ${outer} mm.`,
    ),
    ...length('cover.nominalWallMm', 'The wall when new', cover.nominalWallMm, ABOVE_0),
    ...unless(
      density === null || (density > 0 && density < 30_000),
      'cover.densityKgPerM3',
      `The density is ${density} kg/m³; it must be more than 0 and less than 30000.`,
    ),
  ];
}

function stationFaults(stations: readonly Station[]): Fault[] {
  const heights = stations.filter((station) => station.faceMm !== null).length;
  return [
    ...unless(stations.length > 0, 'stations', 'No station is measured. Enter at least one wall.'),
    ...unless(
      stations.length <= MOST_STATIONS,
      'stations',
      `There are ${stations.length} stations; at most ${MOST_STATIONS} are allowed.`,
    ),
    ...stations.slice(0, MOST_STATIONS).flatMap((station, i) => {
      const [at, name] = [`stations.${i}`, `station ${i + 1}`];
      return [
        ...angle(`${at}.angleDeg`, `The angle of ${name}`, station.angleDeg),
        ...length(`${at}.radiusMm`, `The radius of ${name}`, station.radiusMm, ABOVE_0),
        ...unless(station.wallMm.length > 0, `${at}.wallMm`, `The wall at ${name} has no reading.`),
        ...station.wallMm.flatMap((wall, k) =>
          length(`${at}.wallMm.${k}`, `The wall at ${name}`, wall, ABOVE_0),
        ),
        ...length(`${at}.faceMm`, `The indicator reading at ${name}`, station.faceMm, { from: -LONGEST_MM }),
        ...unless(
          station.faceMm !== null || heights === 0,
          `${at}.faceMm`,
          `The indicator reading at ${name} is missing; ${heights} of ${stations.length} have one. Indicate every station, or none.`,
        ),
        ...length(`${at}.markDepthMm`, `The heat mark at ${name}`, station.markDepthMm),
      ];
    }),
  ];
}

function markFaults(marks: readonly Mark[]): Fault[] {
  return [
    ...marks.flatMap((mark, i) => {
      const [at, name] = [`marks.${i}`, `heat mark ${i + 1}`];
      return [
        ...angle(`${at}.angleDeg`, `The angle of ${name}`, mark.angleDeg),
        ...length(`${at}.radiusMm`, `The radius of ${name}`, mark.radiusMm, ABOVE_0),
        ...length(`${at}.depthMm`, `The depth of ${name}`, mark.depthMm),
      ];
    }),
    ...unless(
      marks.length <= MOST_STATIONS,
      'marks',
      `There are ${marks.length} heat marks; at most ${MOST_STATIONS} are allowed.`,
    ),
  ];
}

function criteriaFaults(criteria: CoverCriteria): Fault[] {
  const { minimumWallMm, faceRunoutLimitMm, cleanUpAllowanceMm, typicalCutMm, confidence } = criteria;
  return [
    ...length('criteria.minimumWallMm', 'The minimum wall', minimumWallMm, ABOVE_0),
    ...length('criteria.faceRunoutLimitMm', 'The face runout limit', faceRunoutLimitMm),
    ...length('criteria.cleanUpAllowanceMm', 'The clean-up allowance', cleanUpAllowanceMm),
    ...length('criteria.typicalCutMm', 'The typical cut', typicalCutMm, ABOVE_0),
    ...unless(
      confidence === null || (confidence > 0 && confidence < 1),
      'criteria.confidence',
      `The confidence is ${confidence}; it must be between 0 and 1, such as 0.95.`,
    ),
  ];
}

/** Two stations at one angle on one row are repeats of one wall, and belong in one station. */
function samePlaces({ stations }: CoverCheckInput): Fault[] {
  const faults: Fault[] = [];
  for (const [i, station] of stations.entries()) {
    const k = stations.slice(0, i).findIndex((other) => samePlace(station, other));
    if (k < 0) continue;
    faults.push({
      path: `stations.${i}`,
      message: `Station ${i + 1} is at the same place as station ${k + 1}. Enter repeats as several readings at one station.`,
    });
  }
  return faults;
}

/** A mark as deep as the wall is a hole, or a slipped decimal. */
function marksThroughWall({ stations, marks }: CoverCheckInput): Fault[] {
  const measured = measuredStations(stations);
  const through = (path: string, name: string, depthMm: number, wallMm: number): Fault[] =>
    depthMm < wallMm
      ? []
      : [
          {
            path,
            message: `${name} is ${depthMm} mm deep, but the wall there is only ${Number(wallMm.toFixed(3))} mm. Measure both again.`,
          },
        ];
  return [
    ...measured.flatMap((station, i) =>
      through(
        `stations.${i}.markDepthMm`,
        `The heat mark at station ${i + 1}`,
        station.depthMm,
        station.wallMm,
      ),
    ),
    ...marks.flatMap((mark, i) =>
      through(
        `marks.${i}.depthMm`,
        `Heat mark ${i + 1}`,
        mark.depthMm,
        betweenStations(mark, measured).wallMm,
      ),
    ),
  ];
}
