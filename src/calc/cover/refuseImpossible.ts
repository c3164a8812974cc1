import type { CoverCheckInput } from '../../../shared/words/cover.ts';
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
  ['cutSettingStandardUncertaintyMm', 'The standard uncertainty of the cut’s setting'],
] as const;

/** Throws: a Refusal that names every field the calculation cannot take. Repairs nothing. */
export function refuseImpossible(input: CoverCheckInput): void {
  const faults: Fault[] = [];
  const refuse = (path: string, message: string) => faults.push({ path, message });

  /** `from` is the least value allowed; `open` leaves the least value itself out. */
  const length = (path: string, name: string, mm: number, from: number, open = false) => {
    if (!Number.isFinite(mm)) refuse(path, `${name} is not a number. Give it in mm.`);
    else if (mm < from || (open && mm === from) || mm > LONGEST_MM) {
      refuse(
        path,
        `${name} is ${mm} mm; it must be ${open ? 'more than' : 'at least'} ${from} mm and at most ${LONGEST_MM} mm.`,
      );
    }
  };
  const positive = (path: string, name: string, mm: number) => length(path, name, mm, 0, true);
  const optional = (path: string, name: string, mm: number | null, open = false) => {
    if (mm !== null) length(path, name, mm, 0, open);
  };
  const angle = (path: string, name: string, deg: number) => {
    if (!Number.isFinite(deg))
      refuse(path, `${name} is not a number. Give it in degrees, clockwise from stud 1.`);
  };

  const { cover, stations, marks, gauge, criteria } = input;
  if (!Number.isInteger(cover.studCount) || cover.studCount < 2 || cover.studCount > 24) {
    refuse(
      'cover.studCount',
      `The number of studs is ${cover.studCount}; it must be a whole number from 2 to 24.`,
    );
  }
  positive('cover.studCircleDiameterMm', 'The stud circle', cover.studCircleDiameterMm);
  length('cover.trackInnerDiameterMm', 'The track’s inner diameter', cover.trackInnerDiameterMm, 0);
  positive('cover.trackOuterDiameterMm', 'The track’s outer diameter', cover.trackOuterDiameterMm);
  if (cover.trackInnerDiameterMm >= cover.trackOuterDiameterMm) {
    refuse(
      'cover.trackInnerDiameterMm',
      `The track’s inner diameter is ${cover.trackInnerDiameterMm} mm; it must be less than its outer diameter, ${cover.trackOuterDiameterMm} mm.`,
    );
  }
  positive('cover.nominalWallMm', 'The nominal wall', cover.nominalWallMm);
  const density = cover.densityKgPerM3;
  if (density !== null && !(density > 0 && density < 30_000)) {
    refuse(
      'cover.densityKgPerM3',
      `The density is ${density} kg/m³; it must be more than 0 and less than 30000.`,
    );
  }

  if (stations.length === 0)
    refuse('stations', 'No station has been measured. Give at least one with its wall.');
  if (stations.length > MOST_STATIONS) {
    refuse(
      'stations',
      `There are ${stations.length} stations; at most ${MOST_STATIONS} can be worked out at once.`,
    );
  }
  const heights = stations.filter((station) => station.faceMm !== null).length;
  for (const [i, station] of stations.slice(0, MOST_STATIONS).entries()) {
    const [at, name] = [`stations.${i}`, `station ${i + 1}`];
    angle(`${at}.angleDeg`, `The angle of ${name}`, station.angleDeg);
    positive(`${at}.radiusMm`, `The radius of ${name}`, station.radiusMm);
    if (station.wallMm.length === 0) refuse(`${at}.wallMm`, `The wall at ${name} has no reading.`);
    for (const [k, wall] of station.wallMm.entries())
      positive(`${at}.wallMm.${k}`, `The wall at ${name}`, wall);
    if (station.faceMm !== null)
      length(`${at}.faceMm`, `The face height at ${name}`, station.faceMm, -LONGEST_MM);
    else if (heights > 0) {
      refuse(
        `${at}.faceMm`,
        `The face height at ${name} is missing. Give heights at all stations or at none; ${heights} of ${stations.length} have one.`,
      );
    }
    optional(`${at}.markDepthMm`, `The mark at ${name}`, station.markDepthMm);
  }
  for (const [i, mark] of marks.entries()) {
    const [at, name] = [`marks.${i}`, `mark ${i + 1}`];
    angle(`${at}.angleDeg`, `The angle of ${name}`, mark.angleDeg);
    positive(`${at}.radiusMm`, `The radius of ${name}`, mark.radiusMm);
    length(`${at}.depthMm`, `The depth of ${name}`, mark.depthMm, 0);
  }
  if (marks.length > MOST_STATIONS) {
    refuse('marks', `There are ${marks.length} marks; at most ${MOST_STATIONS} can be worked out at once.`);
  }
  if (gauge) {
    for (const [key, name] of GAUGE_NAMES) optional(`gauge.${key}`, name, gauge[key]);
  }
  if (criteria) {
    optional('criteria.minimumWallMm', 'The minimum wall', criteria.minimumWallMm, true);
    optional('criteria.faceRunoutLimitMm', 'The runout allowed after the cut', criteria.faceRunoutLimitMm);
    optional('criteria.cleanUpAllowanceMm', 'The clean-up allowance', criteria.cleanUpAllowanceMm);
    optional('criteria.typicalCutMm', 'The typical cut', criteria.typicalCutMm, true);
    const { confidence } = criteria;
    if (confidence !== null && !(confidence > 0 && confidence < 1)) {
      refuse(
        'criteria.confidence',
        `The confidence is ${confidence}; it must be between 0 and 1, such as 0.95.`,
      );
    }
  }
  optional('makerMinimumWallMm', 'The maker’s minimum wall', input.makerMinimumWallMm, true);
  optional('plannedCutMm', 'The planned cut', input.plannedCutMm);
  optional('releaseClearanceMm', 'The release clearance', input.releaseClearanceMm);
  if (faults.length === 0) faults.push(...samePlaces(input), ...marksThroughWall(input));
  if (faults.length > 0) throw new Refusal('cover-input', faults);
}

/** Two stations at one clock position on one ring are repeats of one wall, and belong in one station. */
function samePlaces({ stations }: CoverCheckInput): Fault[] {
  const faults: Fault[] = [];
  for (const [i, station] of stations.entries()) {
    const k = stations.slice(0, i).findIndex((other) => samePlace(station, other));
    if (k < 0) continue;
    faults.push({
      path: `stations.${i}`,
      message: `Station ${i + 1} is at the same place as station ${k + 1}. Give repeats as several wall readings of one station.`,
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
            message: `${name} is ${depthMm} mm deep, but the wall there is only ${Number(wallMm.toFixed(3))} mm. Read both again.`,
          },
        ];
  return [
    ...measured.flatMap((station, i) =>
      through(`stations.${i}.markDepthMm`, `The mark at station ${i + 1}`, station.depthMm, station.wallMm),
    ),
    ...marks.flatMap((mark, i) =>
      through(`marks.${i}.depthMm`, `Mark ${i + 1}`, mark.depthMm, betweenStations(mark, measured).wallMm),
    ),
  ];
}
