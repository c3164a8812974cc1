import { z } from 'zod';
import { readThread } from '../quantity/readThread.ts';
import type {
  CatalogueStack,
  CatalogueStud,
  Family,
  LatheSettings,
  ShopCriteria,
} from '../words/catalogue.ts';
import type { ThreadSpec } from '../words/thread.ts';
import {
  LINING_MODULUS_MPA_PER_MM,
  LOCK_UP_PRESSURE_MPA,
  POISSON,
  refuseUnbelievable,
  YIELD_MPA,
  YOUNG_MPA,
} from './believable.ts';
import { balanceSchema, confidence } from './coverCheck.ts';
import {
  choice,
  count,
  extent,
  list,
  orElse,
  orNull,
  quantity,
  size,
  strict,
  text,
  yesNo,
} from './fields.ts';
import { fitLimitsSchema } from './knockOn.ts';
import {
  across,
  nutFields,
  pullForward,
  type Refuse,
  refuseNut,
  refuseStud,
  stackSchema,
  studFields,
} from './studParts.ts';

const name = text('The name', { least: 1, most: 80 });
const note = text('The note', { most: 2000, lines: true });
const source = (what: string) => text(what, { least: 1, most: 200 });
const lockUpPressure = quantity(
  'The lock-up pressure',
  'MPa',
  LOCK_UP_PRESSURE_MPA,
  'Give it with its unit, as in 0.7 MPa, 7 bar or 100 psi.',
);
const yieldStress = quantity('The yield', 'MPa', YIELD_MPA, 'Give it in MPa; mild steel has about 250.');
const above = (what: string, most: number) => quantity(what, 'MPa', { least: 0, open: true, most });
const callout = text('The thread', { least: 1, most: 40 });

const FAMILY = {
  name,
  make: choice('The make of the cover', ['stamped', 'from-solid']),
  sideWall: choice('The side wall', ['plain', 'ribbed']),
  studCount: count('The number of studs', 2, 24),
  studCircleDiameterMm: size('The stud circle’s diameter'),
  trackInnerDiameterMm: size('The track’s inner diameter'),
  trackOuterDiameterMm: size('The track’s outer diameter'),
  nominalWallMm: size('The nominal wall'),
  bossDiameterMm: orNull(size('The boss’s diameter')),
  rimDiameterMm: orNull(size('The rim’s diameter')),
  padDiameterMm: orNull(size('The pads’ diameter')),
  padThicknessMm: orNull(size('The pads’ thickness')),
  sideWallMm: orNull(size('The side wall’s thickness')),
  pistonSealDiameterMm: orNull(size('The piston seal’s diameter')),
  hubDiameterMm: orNull(size('The hub’s diameter')),
  lockUpPressureMPa: orNull(lockUpPressure),
  yieldMPa: orNull(yieldStress),
  ring: orNull(
    strict('The ring', {
      innerDiameterMm: size('The ring’s inner diameter'),
      outerDiameterMm: size('The ring’s outer diameter'),
      thicknessMm: size('The ring’s thickness'),
      joinedToPads: yesNo('Whether the ring is welded to the pads all round').nullish(),
    }),
  ),
  limits: orNull(fitLimitsSchema),
  makerMinimumWallMm: orNull(size('The maker’s minimum wall')),
  makerMinimumWallSource: orNull(source('The source of the maker’s minimum wall')),
  shopMinimumWallMm: orNull(size('The shop’s minimum wall')),
  shopMinimumWallSource: orNull(source('Who set the shop’s minimum wall, and when')),
  ringAllowed: yesNo('Whether a ring may be welded on'),
  note,
};

/** A cover family as the catalogue takes it. */
export const familySchema = strict('The family', FAMILY).superRefine(
  across<Family>((family, refuse) => {
    let misplaced = false;
    refuseFamily(family, (path, message) => {
      misplaced = true;
      refuse(path, message);
    });
    if (!misplaced) refuseUnbelievable(family, refuse);
  }),
) satisfies z.ZodType<Family>;

/** A family as a job keeps it: one that the catalogue took before it asked whether its numbers can be believed too. */
export const keptFamilySchema = strict('The family', {
  ...FAMILY,
  lockUpPressureMPa: orNull(above('The lock-up pressure', 100)),
  yieldMPa: orNull(above('The yield', 10_000)),
}).superRefine(across<Family>(refuseFamily)) satisfies z.ZodType<Family>;

function refuseFamily(family: Family, refuse: Refuse): void {
  refuseDiameters(family, refuse);
  refuseMinimum(family, 'maker', refuse);
  refuseMinimum(family, 'shop', refuse);
}

/** From the middle out: boss, track, stud circle, rim. */
function refuseDiameters(family: Family, refuse: Refuse): void {
  const { bossDiameterMm, rimDiameterMm, trackInnerDiameterMm, trackOuterDiameterMm, studCircleDiameterMm } =
    family;
  const within = (path: string, what: string, mm: number, limit: string, limitMm: number, equal: boolean) => {
    if (mm < limitMm || (equal && mm === limitMm)) return;
    refuse(
      [path],
      `${what} is ${mm} mm; it must be ${equal ? 'no more' : 'less'} than ${limit}, ${limitMm} mm.`,
    );
  };
  within(
    'trackInnerDiameterMm',
    'The track’s inner diameter',
    trackInnerDiameterMm,
    'its outer diameter',
    trackOuterDiameterMm,
    false,
  );
  if (bossDiameterMm !== null) {
    const inner = 'the track’s inner diameter';
    within('bossDiameterMm', 'The boss’s diameter', bossDiameterMm, inner, trackInnerDiameterMm, true);
  }
  if (family.pistonSealDiameterMm != null) {
    const inner = 'the track’s inner diameter';
    within(
      'pistonSealDiameterMm',
      'The piston seal',
      family.pistonSealDiameterMm,
      inner,
      trackInnerDiameterMm,
      true,
    );
  }
  refuseRing(family, within);
  if (rimDiameterMm !== null) {
    if (family.hubDiameterMm != null) {
      within('hubDiameterMm', 'The hub’s diameter', family.hubDiameterMm, 'the rim’s', rimDiameterMm, false);
    }
    const outer = 'The track’s outer diameter';
    within('trackOuterDiameterMm', outer, trackOuterDiameterMm, 'the rim’s', rimDiameterMm, true);
    within(
      'studCircleDiameterMm',
      'The stud circle',
      studCircleDiameterMm,
      'the rim’s diameter',
      rimDiameterMm,
      false,
    );
  }
}

/** A ring lies on the flat, between boss and rim. */
function refuseRing(
  { ring, bossDiameterMm, rimDiameterMm }: Family,
  within: (path: string, what: string, mm: number, limit: string, limitMm: number, equal: boolean) => void,
): void {
  if (ring == null) return;
  const { innerDiameterMm: inner, outerDiameterMm: outer } = ring;
  within('ring.innerDiameterMm', 'The ring’s inner diameter', inner, 'its outer diameter', outer, false);
  if (rimDiameterMm !== null) {
    within('ring.outerDiameterMm', 'The ring’s outer diameter', outer, 'the rim’s', rimDiameterMm, true);
  }
  if (bossDiameterMm !== null) {
    within(
      'ring.innerDiameterMm',
      'The boss’s diameter',
      bossDiameterMm,
      'the ring’s inner diameter',
      inner,
      true,
    );
  }
}

/** A minimum comes with its source, and a new cover must pass it. */
function refuseMinimum(family: Family, whose: 'maker' | 'shop', refuse: Refuse): void {
  const mm = family[`${whose}MinimumWallMm`];
  const from = family[`${whose}MinimumWallSource`];
  if (mm !== null && from === null) {
    const needed = whose === 'maker' ? 'the document it stands in' : 'who set it and when';
    refuse(
      [`${whose}MinimumWallSource`],
      `The ${whose}’s minimum wall of ${mm} mm needs its source; say ${needed}.`,
    );
  }
  if (mm === null && from !== null) {
    refuse(
      [`${whose}MinimumWallMm`],
      `The ${whose}’s minimum wall has a source but no figure; give it in mm.`,
    );
  }
  if (mm !== null && mm > family.nominalWallMm) {
    refuse(
      [`${whose}MinimumWallMm`],
      `The ${whose}’s minimum wall is ${mm} mm; a new cover, ${family.nominalWallMm} mm, would not pass it.`,
    );
  }
}

/** The thread as already read, or nothing: what was typed counts, and the two must agree. */
const threadAlready = z
  .custom<ThreadSpec>((sent) => typeof sent === 'object' && sent !== null && 'designation' in sent, {
    error: 'The thread must be left out here, or as it was read; it is taken from what was typed.',
  })
  .nullish();

function threadFrom(
  typed: string,
  already: ThreadSpec | null | undefined,
  role: 'external' | 'internal',
  path: string,
  refuse: Refuse,
): ThreadSpec | null {
  const read = readThread(typed, role);
  if (!read.ok) {
    refuse([path, 'thread'], read.message);
    return null;
  }
  if (already && already.designation !== read.thread.designation) {
    refuse(
      [path, 'thread'],
      `The thread is ${already.designation}, but "${typed}" was typed, which is ${read.thread.designation}; type it again.`,
    );
  }
  return read.thread;
}

/** A stud as the catalogue keeps it. Its thread is read from `threadTyped`. */
export const catalogueStudSchema = strict('The stud', {
  name,
  stud: strict('The stud', studFields(threadAlready)).superRefine(across(refuseStud)),
  threadTyped: callout,
  stock: count('The number in stock', 0, 1_000_000).nullish(),
  shelf: text('The shelf place', { most: 40 }).optional(),
  note,
}).transform((sent, ctx): CatalogueStud => {
  const refuse: Refuse = (path, message) => ctx.addIssue({ code: 'custom', path, message });
  const thread = threadFrom(sent.threadTyped, sent.stud.thread, 'external', 'stud', refuse);
  return thread === null ? z.NEVER : { ...sent, stud: { ...sent.stud, thread } };
}) satisfies z.ZodType<CatalogueStud>;

/** A flexplate stack as the catalogue keeps it. Its nut's thread is read from `nutThreadTyped`. */
export const catalogueStackSchema = strict('The stack', {
  name,
  stack: stackSchema,
  nut: orNull(strict('The nut', nutFields(threadAlready)).superRefine(across(refuseNut))),
  nutThreadTyped: orNull(callout),
  pullForwardMm: pullForward,
  note,
}).transform((sent, ctx): CatalogueStack => {
  const refuse: Refuse = (path, message) => ctx.addIssue({ code: 'custom', path, message });
  const { nut, nutThreadTyped: typed } = sent;
  if (nut === null) {
    if (typed !== null)
      refuse(['nut'], `The nut’s thread is ${typed}, but its height is missing; give it in mm.`);
    return { ...sent, nut };
  }
  if (typed === null) {
    if (nut.thread)
      refuse(
        ['nut', 'thread'],
        `The nut’s thread is ${nut.thread.designation}, but nothing was typed; type it again.`,
      );
    return { ...sent, nut: { ...nut, thread: null } };
  }
  return { ...sent, nut: { ...nut, thread: threadFrom(typed, nut.thread, 'internal', 'nut', refuse) } };
}) satisfies z.ZodType<CatalogueStack>;

const threads = (what: string) => quantity(what, 'threads', { least: 0, most: 20 });

/** Less than the new cover’s no cover can keep. */
const TIMES_NEW = { least: 1, most: 100 };
const MOST_SHIMS = 40;
const SPEED = { least: 0, open: true, most: 20_000 };

/** The shop's own limits and habits. */
export const shopCriteriaSchema = strict('The criteria', {
  shopName: text('The shop’s name', { most: 80 }),
  minimumWallMm: orNull(size('The minimum wall')),
  cleanUpAllowanceMm: extent('The clean-up allowance'),
  faceRunoutLimitMm: orNull(extent('The runout allowed after the cut')),
  confidence,
  typicalCutMm: orNull(size('The typical cut')),
  protrusionThreads: threads('The protrusion wanted'),
  startThreads: threads('The start wanted'),
  lengthUnit: choice('The unit of length', ['mm', 'in']),
  decimalSign: choice('The decimal sign', ['point', 'comma']),
  lathe: orNull(
    strict('The lathe', {
      leastRpm: quantity('The lathe’s least speed', 'rpm', SPEED),
      mostRpm: quantity('The lathe’s most speed', 'rpm', SPEED),
      cuttingSpeedMPerMin: quantity('The cutting speed', 'm/min', { least: 0, open: true, most: 2000 }),
      noseRadiusMm: size('The nose radius'),
      roughingLimitMm: size('The deepest roughing pass'),
      finishingCutMm: extent('The finishing pass'),
      roughingFeedMm: size('The roughing feed'),
      finishingFeedMm: size('The finishing feed'),
    }).superRefine(
      across<LatheSettings>(({ leastRpm, mostRpm }, refuse) => {
        if (leastRpm <= mostRpm) return;
        refuse(
          ['leastRpm'],
          `The lathe’s least speed is ${leastRpm} rpm; it must be no more than its most, ${mostRpm} rpm.`,
        );
      }),
    ),
  ),
  balance: orNull(balanceSchema),
  studSetting: orNull(
    strict('The limits of a stud set anew', {
      leanAt25Mm: orNull(extent('The lean allowed at 25 mm')),
      offMm: orNull(extent('The distance allowed out of place')),
      proofNm: orNull(quantity('The proof torque', 'N·m', { least: 0, open: true, most: 5000 })),
    }),
  ),
  shimsMm: orElse(list('The shims', size('The shim'), { most: MOST_SHIMS }), []),
  bending: orNull(
    strict('How covers bend', {
      liningModulusMPaPerMm: quantity(
        'The lining’s modulus',
        'MPa/mm',
        LINING_MODULUS_MPA_PER_MM,
        'Give the pressure in MPa for each mm it is squeezed.',
      ),
      youngMPa: quantity(
        'Young’s modulus',
        'MPa',
        YOUNG_MPA,
        'Give it in MPa, a thousand times the figure in GPa; steel has about 206000.',
      ),
      poisson: quantity('Poisson’s ratio', '', POISSON, 'Steel has about 0.29.'),
      lockUpPressureMPa: orNull(lockUpPressure),
      yieldMPa: orNull(yieldStress),
      speedRpm: orNull(quantity('The speed', 'rpm', SPEED)),
      ringRunoutMm: orNull(extent('The runout allowed of a ring')),
      peakOverNew: orNull(quantity('The limit on the pressure peak', 'times new', TIMES_NEW)),
      rippleOverNew: orNull(quantity('The limit on the ripple', 'times new', TIMES_NEW)),
    }),
  ),
  heat: orNull(
    strict('The heat of an engagement', {
      share: quantity('The share of the heat', '', { least: 0, open: true, most: 1 }),
      torqueNm: quantity('The torque', 'N·m', { least: 0, open: true, most: 100_000 }),
      slipRpm: quantity('The slip speed', 'rpm', SPEED),
      slipTimeS: quantity('The slip time', 's', { least: 0, open: true, most: 3600 }),
      conductivityWPerMK: quantity('The conductivity', 'W/(m·K)', { least: 0, open: true, most: 10_000 }),
      densityKgPerM3: quantity('The density', 'kg/m³', { least: 0, open: true, most: 30_000 }),
      specificHeatJPerKgK: quantity('The specific heat', 'J/(kg·K)', { least: 0, open: true, most: 20_000 }),
      startTemperatureC: orNull(quantity('The start temperature', '°C', { least: -100, most: 2000 })),
    }),
  ),
}) satisfies z.ZodType<ShopCriteria>;
