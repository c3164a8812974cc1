import * as z from 'zod';
import { readThread } from '../quantity/readThread.ts';
import type {
  CatalogueNut,
  CatalogueStack,
  CatalogueStud,
  CatalogueWasher,
  Family,
  ShopCriteria,
} from '../words/catalogue.ts';
import { isTimeZone } from '../words/day.ts';
import { CRITERIA } from '../words/fields/criteria.ts';
import { FAMILY, RING } from '../words/fields/family.ts';
import { lowerFirst, subjectOf } from '../words/fields/field.ts';
import { CATALOGUE_NUT, CATALOGUE_STACK, CATALOGUE_STUD, CATALOGUE_WASHER } from '../words/fields/stud.ts';
import type { ThreadSpec } from '../words/stud/thread.ts';
import { refuseUnbelievable } from './believable.ts';
import { liningChosenSchema, refuseRange, steelChosenSchema } from './chosen.ts';
import { orNull, quantity, strict } from './fields.ts';
import { shapeOf } from './fromFields.ts';
import { fitLimitsSchema } from './knockOn.ts';
import {
  across,
  nutFields,
  type Refuse,
  refuseNut,
  refuseStud,
  stackSchema,
  studFields,
} from './studParts.ts';

const above = (what: string, most: number) => quantity(what, 'MPa', { least: 0, open: true, most });

/** A cover family as the catalog takes it. */
export const familySchema = strict(
  'The cover type',
  shapeOf(FAMILY, {
    steel: orNull(steelChosenSchema),
    lining: orNull(liningChosenSchema),
    limits: orNull(fitLimitsSchema),
  }),
).superRefine(
  across<Family>((family, refuse) => {
    let misplaced = false;
    refuseFamily(family, (path, message) => {
      misplaced = true;
      refuse(path, message);
    });
    if (!misplaced) refuseUnbelievable(family, refuse);
  }),
) satisfies z.ZodType<Required<Family>>;

/** A family as a job keeps it: one that the catalog took before it asked whether its numbers can be believed too. */
export const keptFamilySchema = strict(
  'The cover type',
  shapeOf(FAMILY, {
    steel: orNull(steelChosenSchema),
    lining: orNull(liningChosenSchema),
    limits: orNull(fitLimitsSchema),
    lockUpPressureMPa: orNull(above(subjectOf(FAMILY.lockUpPressureMPa), 100)),
    yieldMPa: orNull(above(subjectOf(FAMILY.yieldMPa), 10_000)),
  }),
).superRefine(across<Family>(refuseFamily)) satisfies z.ZodType<Required<Family>>;

function refuseFamily(family: Family, refuse: Refuse): void {
  refuseDiameters(family, refuse);
  refuseMinimum(family, 'maker', refuse);
  refuseMinimum(family, 'shop', refuse);
}

/** What lies within what, from the middle out: a diameter, the one round it, and whether they may be equal. */
const WITHIN = [
  ['trackInnerDiameterMm', 'trackOuterDiameterMm', false],
  ['bossDiameterMm', 'trackInnerDiameterMm', true],
  ['pistonSealDiameterMm', 'trackInnerDiameterMm', true],
  ['hubDiameterMm', 'rimDiameterMm', false],
  ['trackOuterDiameterMm', 'rimDiameterMm', true],
  ['studCircleDiameterMm', 'rimDiameterMm', false],
] as const satisfies readonly (readonly [keyof Family, keyof Family, boolean])[];

function refuseDiameters(family: Family, refuse: Refuse): void {
  const within = (path: string, inner: Measured, outer: Measured, equal: boolean) => {
    if (inner.mm == null || outer.mm == null) return;
    if (inner.mm < outer.mm || (equal && inner.mm === outer.mm)) return;
    refuse(
      path.split('.'),
      `${subjectOf(inner.field)} is ${inner.mm} mm; it must be ${equal ? 'no more' : 'less'} than the ${lowerFirst(outer.field.label)}, ${outer.mm} mm.`,
    );
  };
  const of = (key: (typeof WITHIN)[number][0 | 1]): Measured => ({ field: FAMILY[key], mm: family[key] });
  for (const [inner, outer, equal] of WITHIN) within(inner, of(inner), of(outer), equal);
  const { ring } = family;
  if (ring == null) return;
  // A ring lies on the flat, between the center of the cover and its rim.
  const inner = { field: RING.innerDiameterMm, mm: ring.innerDiameterMm };
  const outer = { field: RING.outerDiameterMm, mm: ring.outerDiameterMm };
  within('ring.innerDiameterMm', inner, outer, false);
  within('ring.outerDiameterMm', outer, of('rimDiameterMm'), true);
  within('ring.innerDiameterMm', of('bossDiameterMm'), inner, true);
}

interface Measured {
  readonly field: { readonly label: string };
  readonly mm: number | null | undefined;
}

/** A minimum comes with its source, and a new cover must pass it. */
function refuseMinimum(family: Family, whose: 'maker' | 'shop', refuse: Refuse): void {
  const mm = family[`${whose}MinimumWallMm`];
  const person = whose === 'shop' ? (family.shopMinimumWallBy ?? null) : null;
  const day = whose === 'shop' ? (family.shopMinimumWallOn ?? null) : null;
  const from = family[`${whose}MinimumWallSource`] ?? person ?? day;
  if (mm !== null && whose === 'shop') refuseUnsetMinimum(mm, { person, day, from }, refuse);
  if (mm !== null && from === null && whose === 'maker') {
    refuse(
      ['makerMinimumWallSource'],
      `The maker’s minimum wall of ${mm} mm needs its source; say the document it is in.`,
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

/** A limit of the shop is set by a person on a day; older records have a text instead. */
function refuseUnsetMinimum(
  mm: number,
  {
    person,
    day,
    from,
  }: { readonly person: string | null; readonly day: string | null; readonly from: string | null },
  refuse: Refuse,
): void {
  if (person === null && (from === null || day !== null)) {
    refuse(['shopMinimumWallBy'], `The shop’s minimum wall of ${mm} mm needs a person: enter who set it.`);
  }
  if (day === null && (from === null || person !== null)) {
    refuse(['shopMinimumWallOn'], `The shop’s minimum wall of ${mm} mm needs a day: enter when it was set.`);
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

/** A stud as the catalog keeps it. Its thread is read from `threadTyped`. */
export const catalogueStudSchema = strict(
  'The stud',
  shapeOf(CATALOGUE_STUD, {
    stud: strict('The stud', studFields(threadAlready)).superRefine(across(refuseStud)),
  }),
).transform((sent, ctx): CatalogueStud => {
  const refuse: Refuse = (path, message) => ctx.addIssue({ code: 'custom', path, message });
  const thread = threadFrom(sent.threadTyped, sent.stud.thread, 'external', 'stud', refuse);
  return thread === null ? z.NEVER : { ...sent, stud: { ...sent.stud, thread } };
}) satisfies z.ZodType<CatalogueStud>;

const { washerMm: _, ...nutAlone } = nutFields(threadAlready);

/** A nut as the catalog keeps it. Its thread is read from `threadTyped`. */
export const catalogueNutSchema = strict(
  'The nut',
  shapeOf(CATALOGUE_NUT, {
    nut: strict('The nut', nutAlone).superRefine(across(refuseNut)),
  }),
).transform((sent, ctx): CatalogueNut => {
  const refuse: Refuse = (path, message) => ctx.addIssue({ code: 'custom', path, message });
  const thread = threadFrom(sent.threadTyped, sent.nut.thread, 'internal', 'nut', refuse);
  return thread === null ? z.NEVER : { ...sent, nut: { ...sent.nut, thread } };
}) satisfies z.ZodType<CatalogueNut>;

/** A washer or shim as the catalog keeps it. */
export const catalogueWasherSchema = strict('The washer or shim', shapeOf(CATALOGUE_WASHER)).superRefine(
  across<CatalogueWasher>(({ innerDiameterMm, outerDiameterMm, thicknessMm, toleranceMm }, refuse) => {
    if (innerDiameterMm >= outerDiameterMm)
      refuse(
        ['innerDiameterMm'],
        `The inner diameter is ${innerDiameterMm} mm; it must be less than the outer diameter, ${outerDiameterMm} mm.`,
      );
    if (toleranceMm >= thicknessMm)
      refuse(
        ['toleranceMm'],
        `The thickness tolerance is ${toleranceMm} mm; it must be less than the thickness, ${thicknessMm} mm.`,
      );
  }),
) satisfies z.ZodType<CatalogueWasher>;

/** A flexplate stack as the catalog keeps it. Its nut's thread is read from `nutThreadTyped`. */
export const stackNutSchema = strict('The nut', nutFields(threadAlready)).superRefine(across(refuseNut));

export const catalogueStackSchema = strict(
  'The stack',
  shapeOf(CATALOGUE_STACK, {
    stack: stackSchema,
    nut: orNull(stackNutSchema),
  }),
).transform((sent, ctx): CatalogueStack => {
  const refuse: Refuse = (path, message) => ctx.addIssue({ code: 'custom', path, message });
  const { nut, nutThreadTyped: typed } = sent;
  refuseMakerTorque(sent, refuse);
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

/** A vehicle maker's torque is read to callers only with the document it stands in. */
function refuseMakerTorque(
  {
    makerTorqueNm: torque,
    makerTorqueSource: source,
  }: Pick<CatalogueStack, 'makerTorqueNm' | 'makerTorqueSource'>,
  refuse: Refuse,
): void {
  if (torque != null && source == null)
    refuse(['makerTorqueSource'], 'The vehicle maker’s torque needs its source; say the document it is in.');
  if (torque == null && source != null)
    refuse(['makerTorqueNm'], 'A source of the vehicle maker’s torque is given, but no torque; give it too.');
}

/** One minimum wall is enough: a figure, or a formula. */
export function refuseBoth(
  limits: Pick<ShopCriteria, 'minimumWallMm' | 'minimumWallFormula'> | null,
  refuse: (message: string) => void,
): void {
  if (limits === null || limits.minimumWallMm === null || limits.minimumWallFormula == null) return;
  refuse(
    `The minimum wall is given as a figure, ${limits.minimumWallMm} mm, and as a formula. Keep one, and leave the other blank.`,
  );
}

/** The shop's own limits and habits. */
export const shopCriteriaSchema = strict('The shop limits', shapeOf(CRITERIA)).superRefine(
  across<ShopCriteria>(({ lathe, timeZone, ...limits }, refuse) => {
    refuseBoth(limits, (message) => refuse(['minimumWallFormula'], message));
    if (timeZone != null && !isTimeZone(timeZone))
      refuse(
        ['timeZone'],
        `The time zone "${timeZone}" is not known. Take one from the list, such as America/Chicago, or leave it blank.`,
      );
    if (lathe != null) refuseRange(lathe, (key, message) => refuse(['lathe', key], message));
  }),
) satisfies z.ZodType<Required<ShopCriteria>>;
