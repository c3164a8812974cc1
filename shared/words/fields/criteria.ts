import type { BendingSettings, HeatSettings } from '../bending/bending.ts';
import type { ShopCriteria, StudSettingLimits } from '../catalogue.ts';
import type { BalanceWanted, CoverCriteria } from '../cover.ts';
import { PILOT_LEAD_MM } from '../stud/stud.ts';
import { USUAL_WEIGHT } from '../whatStops.ts';
import { LOCK_UP_PRESSURE, YIELD } from './family.ts';
import type { Fields } from './field.ts';
import { LATHE, RPM } from './lathe.ts';
import { LINING_MODULUS } from './lining.ts';
import { CONDUCTIVITY, DENSITY, POISSON, SPECIFIC_HEAT, YOUNG } from './steel.ts';
import { WHAT_STOPS } from './whatStops.ts';

const above = (most: number) => ({ least: 0, open: true, most }) as const;
const THREADS = { kind: 'number', unit: 'threads', least: 0, most: 20 } as const;
/** Less than the new cover’s no cover can keep. */
const TIMES_NEW = { kind: 'number', unit: 'times new', least: 1, most: 100, optional: true } as const;

/** ISO 21940-11: grade, mass and speed. */
export const BALANCE = {
  gradeMmPerS: {
    label: 'Balance quality grade G',
    help: 'As in G 6.3',
    kind: 'number',
    unit: '',
    ...above(4000),
  },
  massKg: { label: 'Mass of the rotating part', kind: 'mass', ...above(1000) },
  speedRpm: { label: 'Service speed', kind: 'speed', ...above(50_000) },
} as const satisfies Fields<BalanceWanted>;

/** What the shop asks of a replaced stud. */
const STUD_SETTING = {
  leanAt25Mm: {
    label: 'Out of square allowed (replaced stud)',
    subject: 'The out of square allowed for a replaced stud',
    help: { mm: '25 mm above the pad', in: 'About 1 in above the pad' },
    box: 'studLean',
    kind: 'extent',
    none: 'none',
    optional: true,
  },
  offMm: {
    label: 'Base off location allowed (replaced stud)',
    subject: 'The base off location allowed for a replaced stud',
    box: 'studOff',
    kind: 'extent',
    none: 'none',
    optional: true,
  },
  proofNm: {
    label: 'Proof torque (replaced stud)',
    subject: 'The proof torque of a replaced stud',
    help: 'On a spacer; the maker’s figure comes first',
    box: 'studProof',
    kind: 'torque',
    ...above(5000),
    none: 'none',
    optional: true,
  },
} as const satisfies Fields<StudSettingLimits>;

/** What the shop takes for every cover it works the bending out of, and the limits it has set on it. */
const BENDING = {
  liningModulusMPaPerMm: {
    head: 'Bending',
    folded: true,
    headHelp: {
      mm: 'Needed for advice on how a thinned cover bends: fill in the first three, or none of them. Steel: about 206 000 MPa and 0.29 (handbook values, from memory). The lining modulus is its maker’s, or measured.',
      in: 'Needed for advice on how a thinned cover bends: fill in the first three, or none of them. Steel: about 29,900 ksi and 0.29 (handbook values, from memory). The lining modulus is its maker’s, or measured.',
    },
    ...LINING_MODULUS,
  },
  youngMPa: {
    label: 'Young’s modulus',
    subject: 'Young’s modulus',
    box: 'young',
    ...YOUNG,
  },
  poisson: {
    label: 'Poisson’s ratio',
    subject: 'Poisson’s ratio',
    box: 'poisson',
    ...POISSON,
  },
  lockUpPressureMPa: {
    label: 'Lock-up pressure',
    help: 'Used where a cover type gives none',
    box: 'lockUpPressure',
    ...LOCK_UP_PRESSURE,
    optional: true,
  },
  yieldMPa: {
    label: 'Yield strength',
    help: 'Used where a cover type gives none',
    box: 'yield',
    ...YIELD,
    optional: true,
  },
  speedRpm: {
    label: 'Speed for ballooning',
    help: 'Blank leaves out the pressure of the spinning oil',
    box: 'bendingSpeed',
    ...RPM,
    optional: true,
  },
  ringRunoutMm: {
    label: 'Stiffening ring runout allowed',
    help: 'Around its rim, as welded',
    box: 'ringRunout',
    kind: 'extent',
    optional: true,
  },
  peakOverNew: {
    head: 'Limits on bending',
    folded: true,
    headHelp:
      'Needed where bending decides: a cover over its limit gets a ring or is replaced. Blank: advice only. 1.10 is 10 % more than new. A ring counts only when welded to the pads all around.',
    label: 'Maximum peak lining pressure',
    help: 'Peak over mean, compared with the new cover',
    box: 'peakOverNew',
    ...TIMES_NEW,
  },
  rippleOverNew: {
    label: 'Maximum friction-surface waviness',
    help: 'Around its middle, compared with the new cover',
    box: 'rippleOverNew',
    ...TIMES_NEW,
  },
} as const satisfies Fields<BendingSettings>;

/** One engagement of the lock-up clutch, and the steel it heats. */
const HEAT = {
  share: { label: 'Share of heat into the cover', box: 'heatShare', kind: 'share', ...above(1) },
  torqueNm: { label: 'Clutch torque while it slips', box: 'slipTorque', kind: 'torque', ...above(100_000) },
  slipRpm: { label: 'Slip speed at the start', box: 'slipSpeed', ...RPM },
  slipTimeS: { label: 'Slip time', box: 'slipTime', kind: 'time', ...above(3600) },
  conductivityWPerMK: {
    label: 'Thermal conductivity',
    box: 'conductivity',
    ...CONDUCTIVITY,
  },
  densityKgPerM3: { label: 'Density', box: 'density', ...DENSITY },
  specificHeatJPerKgK: {
    label: 'Specific heat',
    box: 'specificHeat',
    ...SPECIFIC_HEAT,
  },
  startTemperatureC: {
    label: 'Face temperature before the slip',
    box: 'startTemperature',
    kind: 'temperature',
    least: -100,
    most: 2000,
    optional: true,
  },
} as const satisfies Fields<HeatSettings>;

/** What a cover is judged by; the sheet of a job prints these. */
export const COVER_LIMITS = {
  minimumWallMm: {
    head: 'Cover',
    label: 'Minimum wall',
    help: 'For every cover type; a cover type’s own figure wins',
    box: 'minimum',
    kind: 'size',
    none: 'none',
    optional: true,
  },
  minimumWallFormula: {
    label: 'Minimum wall as a formula',
    help: 'Instead of the figure: worked out for each cover type',
    box: 'minimumFormula',
    kind: 'formula',
    most: 200,
    none: 'none',
    optional: true,
  },
  cleanUpAllowanceMm: {
    label: 'Clean-up allowance',
    help: 'Cut this much below the deepest heat mark',
    box: 'allowance',
    kind: 'extent',
  },
  faceRunoutLimitMm: {
    label: 'Runout allowed after the cut',
    help: 'Over the friction surface',
    box: 'runout',
    kind: 'extent',
    none: 'none',
    optional: true,
  },
  typicalCutMm: {
    label: 'Typical cut',
    help: 'To count the cuts left',
    box: 'typical',
    kind: 'size',
    none: 'none',
    optional: true,
  },
  confidence: {
    label: 'Confidence required',
    help: 'That no station is below the minimum',
    kind: 'share',
    least: 0.5,
    most: 0.9999,
  },
} as const satisfies Fields<
  Pick<ShopCriteria, Exclude<keyof CoverCriteria, 'minimumWallSource' | 'minimumWallWorking' | 'whatStops'>>
>;

const GAP = { kind: 'extent', none: 'not set', optional: true } as const;

/** The shop’s own limits and habits. */
export const CRITERIA = {
  ...COVER_LIMITS,
  protrusionThreads: { head: 'Stud', label: 'Threads past the nut', box: 'protrusion', ...THREADS },
  startThreads: { label: 'Threads showing to start the nut by hand', box: 'start', ...THREADS },
  pilotLeadMm: {
    label: 'Stud pilot into the last piece',
    help: 'When the thread comes to the first piece; common practice, no source',
    box: 'pilotLead',
    kind: 'extent',
    ifLeftOut: PILOT_LEAD_MM,
    ifEmpty: PILOT_LEAD_MM,
  },
  leastPullForwardMm: { label: 'Minimum pull-forward gap', box: 'leastGap', ...GAP },
  mostPullForwardMm: { label: 'Maximum pull-forward gap', box: 'mostGap', ...GAP },
  shimsMm: {
    label: 'Shims in stock',
    help: 'More than one? Separate with ;',
    box: 'shims',
    kind: 'lengths',
    each: 'size',
    most: 40,
    none: 'none',
    ifLeftOut: [],
  },
  inspectionStops: {
    head: 'Inspection list and backups',
    label: 'Sign only once the inspection list is done',
    help: 'Unticked: what is not inspected is shown, and stops nothing',
    kind: 'yes-no',
    ifLeftOut: false,
  },
  backupAwayDays: {
    label: 'Remind a manager when no backup has left this machine for',
    help: 'Days; blank: no reminder',
    kind: 'count',
    least: 1,
    most: 366,
    none: 'no reminder',
    optional: true,
  },
  whatStops: {
    label: 'What stops and what warns',
    kind: 'part',
    at: 'stops.',
    fields: WHAT_STOPS,
    ifLeftOut: USUAL_WEIGHT,
  },
  studSetting: {
    head: 'Replaced studs',
    folded: true,
    headHelp:
      'Needed when studs are welded in: how square and how near their location they must be, and the torque that proves the weld. What is blank is not judged.',
    label: 'Limits of a replaced stud',
    kind: 'part',
    fields: STUD_SETTING,
    optional: true,
  },
  lathe: {
    head: 'Lathe',
    folded: true,
    headHelp: 'Needed for a cut plan: passes, rpm and time. Fill in all of it or none.',
    label: 'Lathe',
    kind: 'part',
    fields: LATHE,
    optional: true,
  },
  balance: {
    head: 'Balance, after ISO 21940-11',
    folded: true,
    headHelp:
      'Needed to judge the unbalance a cut leaves: all three or none. The maker’s figure comes first.',
    label: 'Balance',
    kind: 'part',
    fields: BALANCE,
    optional: true,
  },
  bending: { label: 'Bending', kind: 'part', fields: BENDING, optional: true },
  heat: {
    head: 'Heat of one engagement',
    folded: true,
    headHelp: {
      mm: 'Needed for advice on how hot a slip makes the face. Fill in all; only the temperature may be blank. Plain carbon steel: about 51.9 W/(m·K), 7870 kg/m³, 486 J/(kg·K) (handbook values).',
      in: 'Needed for advice on how hot a slip makes the face. Fill in all; only the temperature may be blank. Plain carbon steel: about 30 Btu/(h·ft·°F), 0.284 lb/in³, 0.116 Btu/(lb·°F) (handbook values).',
    },
    label: 'Heat of one engagement',
    kind: 'part',
    fields: HEAT,
    optional: true,
  },
  shopName: { head: 'Shop', label: 'Shop name', kind: 'text', most: 80 },
  lengthUnit: {
    label: 'Units when none are typed',
    kind: 'choice',
    options: { mm: 'millimeters', in: 'inches' },
    ifEmpty: 'mm',
  },
  decimalSign: {
    label: 'Decimals are written with a',
    subject: 'The decimal sign',
    kind: 'choice',
    options: { point: 'point, 4.92', comma: 'comma, 4,92' },
    ifEmpty: 'point',
  },
  timeZone: {
    label: 'Time zone',
    help: 'As America/Chicago. Blank: this computer’s',
    kind: 'text',
    most: 60,
    none: 'this computer’s',
    optional: true,
  },
} as const satisfies Fields<ShopCriteria>;
