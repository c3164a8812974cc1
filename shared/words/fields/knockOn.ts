import type { FitLimits, KnockOn } from '../cover.ts';
import type { Fields } from './field.ts';

/** What the lengths round the face may be. A cover type has these figures; a job may give its own. */
const LIMITS = {
  leastPadThicknessMm: { label: 'Minimum pad thickness', kind: 'size', optional: true },
  padsCoplanarWithinMm: { label: 'Pad height difference allowed', kind: 'extent', optional: true },
  leastPullForwardMm: { label: 'Minimum pull-forward gap', kind: 'extent', optional: true },
  mostPullForwardMm: { label: 'Maximum pull-forward gap', kind: 'extent', optional: true },
  leastHubEngagementMm: { label: 'Minimum impeller hub engagement', kind: 'extent', optional: true },
  mostPilotClearanceMm: { label: 'Maximum crank pilot clearance', kind: 'extent', optional: true },
  leastPilotEngagedMm: { label: 'Minimum crank pilot engagement', kind: 'extent', optional: true },
  leastSideWallHeightMm: { label: 'Minimum side wall height', kind: 'size', optional: true },
  mostSideWallHeightMm: { label: 'Maximum side wall height', kind: 'size', optional: true },
  leastOverallHeightMm: { label: 'Minimum overall height', kind: 'size', optional: true },
  mostOverallHeightMm: { label: 'Maximum overall height', kind: 'size', optional: true },
  leastEndPlayMm: { label: 'Minimum end play', kind: 'extent', optional: true },
  mostEndPlayMm: { label: 'Maximum end play', kind: 'extent', optional: true },
} as const satisfies Fields<Omit<FitLimits, 'source'>>;

export const FIT_LIMITS = {
  ...LIMITS,
  source: {
    label: 'Source of these figures',
    help: 'Where they are printed',
    kind: 'text',
    least: 1,
    most: 200,
  },
} as const satisfies Fields<FitLimits>;

/** Least and most of one thing, for the check that they do not cross. */
export const FIT_PAIRS = [
  ['leastPullForwardMm', 'mostPullForwardMm', 'The pull-forward gap'],
  ['leastSideWallHeightMm', 'mostSideWallHeightMm', 'The side wall height'],
  ['leastOverallHeightMm', 'mostOverallHeightMm', 'The overall height'],
  ['leastEndPlayMm', 'mostEndPlayMm', 'The end play'],
] as const satisfies readonly (readonly [keyof FitLimits, keyof FitLimits, string])[];

/** A length as measured, with what it may be. */
function within(
  box: string,
  label: string,
  least: (typeof LIMITS)[keyof typeof LIMITS],
  most: (typeof LIMITS)[keyof typeof LIMITS],
) {
  return {
    label,
    kind: 'part',
    optional: true,
    quiet: true,
    fields: {
      mm: { label, kind: 'extent', box },
      leastMm: { ...least, kind: 'extent', box: `${box}.least` },
      mostMm: { ...most, kind: 'extent', box: `${box}.most` },
    },
  } as const;
}

/** What was measured round the face: other dimensions the job affects. */
export const KNOCK_ON = {
  clampedFaceMm: {
    head: 'Chuck',
    headHelp: 'Needed where the jaws may spring the cover: one station read clamped, and again released.',
    folded: true,
    label: 'Indicator reading, clamped',
    kind: 'height',
    optional: true,
  },
  releasedFaceMm: {
    label: 'Indicator reading, released',
    help: 'Same station, jaws released',
    kind: 'height',
    optional: true,
  },
  padsResurfacedMm: {
    head: 'Pads',
    headHelp: 'Needed where pads are resurfaced or shimmed, or may not lie in one plane.',
    folded: true,
    label: 'Metal removed from pads',
    kind: 'extent',
    optional: true,
  },
  shimsMm: {
    label: 'Shim under each pad',
    help: 'Same shim under every pad',
    kind: 'extent',
    optional: true,
  },
  padThicknessMm: { label: 'Pad thickness', help: 'Before resurfacing', kind: 'size', optional: true },
  leastPadThicknessMm: LIMITS.leastPadThicknessMm,
  padHeightsMm: {
    label: 'Pad heights',
    help: 'One for each pad, separated with ;',
    kind: 'lengths',
    each: 'height',
    most: 24,
    ifLeftOut: [],
  },
  padsCoplanarWithinMm: LIMITS.padsCoplanarWithinMm,
  pullForwardMm: {
    head: 'Pull-forward and impeller hub',
    headHelp: 'Needed where shims or resurfaced pads change how far the converter goes into the pump.',
    folded: true,
    label: 'Pull-forward gap',
    help: 'Converter fully back',
    kind: 'extent',
    optional: true,
  },
  leastPullForwardMm: LIMITS.leastPullForwardMm,
  mostPullForwardMm: LIMITS.mostPullForwardMm,
  hubEngagementMm: {
    label: 'Impeller hub engagement',
    help: 'In the pump, converter fully back',
    kind: 'extent',
    optional: true,
  },
  leastHubEngagementMm: LIMITS.leastHubEngagementMm,
  crankPilotMm: {
    head: 'Crank pilot',
    headHelp:
      'Needed to tell whether the crank holds the pilot: its diameter, its bore and how far it goes in.',
    folded: true,
    label: 'Crank pilot diameter',
    kind: 'size',
    optional: true,
  },
  crankBoreMm: { label: 'Crank bore diameter', kind: 'size', optional: true },
  mostPilotClearanceMm: LIMITS.mostPilotClearanceMm,
  pilotEngagedMm: { label: 'Crank pilot engagement', kind: 'extent', optional: true },
  leastPilotEngagedMm: LIMITS.leastPilotEngagedMm,
  pilotRoomMm: { label: 'Crank bore depth', kind: 'extent', optional: true },
  sideWallHeightMm: {
    ...within(
      'sideWallHeightMm',
      'Side wall height',
      LIMITS.leastSideWallHeightMm,
      LIMITS.mostSideWallHeightMm,
    ),
    head: 'After opening and closing the converter',
    headHelp: 'Needed after the converter was opened and welded up again: heights and end play.',
    folded: true,
  },
  overallHeightMm: within(
    'overallHeightMm',
    'Overall height',
    LIMITS.leastOverallHeightMm,
    LIMITS.mostOverallHeightMm,
  ),
  endPlayMm: within('endPlayMm', 'End play', LIMITS.leastEndPlayMm, LIMITS.mostEndPlayMm),
} as const satisfies Fields<KnockOn>;
