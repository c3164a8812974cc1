import type { z } from 'zod';
import type { FitLimits, KnockOn } from '../words/cover.ts';
import { extent, height, list, orElse, orNull, size, strict, text } from './fields.ts';
import { across } from './studParts.ts';

const within = (what: string) =>
  orNull(
    strict(what, {
      mm: extent(what),
      leastMm: orNull(extent(`${what}, at least`)),
      mostMm: orNull(extent(`${what}, at most`)),
    }),
  );

/** What was measured round the face, so that what the cut and the pads do elsewhere can be said. All may be left out. */
export const knockOnSchema = strict('The knock-on', {
  clampedFaceMm: orNull(height('The face height, clamped')),
  releasedFaceMm: orNull(height('The face height, released')),
  padsResurfacedMm: orNull(extent('What is taken off the pads')),
  shimsMm: orNull(extent('The shims under the pads')),
  padThicknessMm: orNull(size('The pads’ thickness')),
  leastPadThicknessMm: orNull(size('The least pad thickness')),
  padHeightsMm: orElse(list('The pad heights', height('The pad’s height'), { most: 24 }), []),
  padsCoplanarWithinMm: orNull(extent('What the pads may differ by')),
  pullForwardMm: orNull(extent('The pull-forward gap')),
  leastPullForwardMm: orNull(extent('The least pull-forward gap')),
  mostPullForwardMm: orNull(extent('The most pull-forward gap')),
  hubEngagementMm: orNull(extent('The hub’s engagement')),
  leastHubEngagementMm: orNull(extent('The least hub engagement')),
  crankPilotMm: orNull(size('The crank pilot’s diameter')),
  crankBoreMm: orNull(size('The crank bore’s diameter')),
  mostPilotClearanceMm: orNull(extent('The most pilot clearance')),
  pilotEngagedMm: orNull(extent('The crank pilot’s length engaged')),
  leastPilotEngagedMm: orNull(extent('The least length engaged')),
  pilotRoomMm: orNull(extent('The depth of the crank’s bore')),
  sideWallHeightMm: within('The side wall’s height'),
  overallHeightMm: within('The overall height'),
  endPlayMm: within('The end play'),
}) satisfies z.ZodType<KnockOn>;

const PAIRS = [
  ['leastPullForwardMm', 'mostPullForwardMm', 'The pull-forward gap'],
  ['leastSideWallHeightMm', 'mostSideWallHeightMm', 'The side wall’s height'],
  ['leastOverallHeightMm', 'mostOverallHeightMm', 'The overall height'],
  ['leastEndPlayMm', 'mostEndPlayMm', 'The end play'],
] as const;

/** A family's figures for the lengths round the face. */
export const fitLimitsSchema = strict('The figures', {
  leastPadThicknessMm: orNull(size('The least pad thickness')),
  padsCoplanarWithinMm: orNull(extent('What the pads may differ by')),
  leastPullForwardMm: orNull(extent('The least pull-forward gap')),
  mostPullForwardMm: orNull(extent('The most pull-forward gap')),
  leastHubEngagementMm: orNull(extent('The least hub engagement')),
  mostPilotClearanceMm: orNull(extent('The most pilot clearance')),
  leastPilotEngagedMm: orNull(extent('The least length engaged')),
  leastSideWallHeightMm: orNull(size('The least side wall height')),
  mostSideWallHeightMm: orNull(size('The most side wall height')),
  leastOverallHeightMm: orNull(size('The least overall height')),
  mostOverallHeightMm: orNull(size('The most overall height')),
  leastEndPlayMm: orNull(extent('The least end play')),
  mostEndPlayMm: orNull(extent('The most end play')),
  source: text('The source of the figures', { least: 1, most: 200 }),
}).superRefine(
  across<FitLimits>((limits, refuse) => {
    for (const [least, most, what] of PAIRS) {
      const [from, to] = [limits[least], limits[most]];
      if (from === null || to === null || from <= to) continue;
      refuse([least], `${what} is at least ${from} mm and at most ${to} mm; one of the two is wrong.`);
    }
  }),
) satisfies z.ZodType<FitLimits>;
