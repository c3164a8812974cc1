import type { CatalogueNut, CatalogueWasher } from '../../../shared/words/catalogue.ts';
import { type LengthUnit, printAs, printLength, STRESS } from '../../../shared/words/print.ts';
import type { Kit, KitPart, KitTold, NutChoice } from '../../../shared/words/stud/kit.ts';
import type { Fits, Nut, StudCheck, StudCheckInput } from '../../../shared/words/stud/stud.ts';
import { checkStud } from '../../calc/stud/checkStud.ts';
import { kindOf } from '../../calc/stud/holes/pilotLinesUp.ts';
import { stackFaults } from '../../calc/stud/refuseStud.ts';
import { threadGeometry } from '../../calc/stud/thread/threadGeometry.ts';
import type { NamedEntry } from '../studChoices.ts';
import { nutClassOf } from './markings.ts';

/** What lies on the shelf beside the studs. */
export interface KitShelf {
  readonly nuts: readonly NamedEntry<CatalogueNut>[];
  readonly washers: readonly NamedEntry<CatalogueWasher>[];
}

/** Stresses that print alike are the same; so are washer faces and shims a caliper cannot tell apart. */
const SAME_MPA = 1.5;
const SAME_FACE_MM = 0.25;
const SAME_WASHER_MM = 0.15;
const SAME_SHIM_MM = 0.03;
/** A hole in a washer much wider than the thread lets it lie off center: common practice, no source. */
const MOST_PLAY_MM = 2;

const FIT_ORDER: readonly Fits[] = ['yes', 'with-care', 'no'];
const worse = (a: Fits, b: Fits): boolean => FIT_ORDER.indexOf(a) > FIT_ORDER.indexOf(b);

/**
 * The nut, washer and shims on the shelf that go with a stud in its stack. A nut suits that has the stud's thread and
 * is no less than the stack's nut in class, height and washer face, and locks where that locks (common practice, no
 * source); and the stud has to fit with it as well as with the stack's own.
 */
export function kitFor(
  input: StudCheckInput,
  check: StudCheck,
  { nuts, washers }: KitShelf,
  unit: LengthUnit,
): Kit {
  const count = input.joint?.studCount ?? input.stack.holeCount;
  // A nut with a figure that cannot be is no choice; it does not keep the others from being one.
  const sound = nuts.filter(
    ({ body }) => stackFaults(input.stack, withNut(input, body).nut, unit).length === 0,
  );
  const choices = sound.map((nut) => nutChoice(nut, input, check, unit)).sort(bestFirst(input.nut));
  const nut = choices.find(({ fits }) => fits !== 'no') ?? null;
  const under = washerFor(input, nut, washers, unit);
  const shims = shimsFor(input, washers, unit);
  return {
    count,
    nut,
    nuts: choices,
    washer: under.part,
    shims: shims.flatMap(({ part }) => (part ? [part] : [])),
    missing: [
      ...(nut === null ? [noNut(choices, input)] : []),
      ...[under, ...shims].flatMap(({ missing }) => (missing === null ? [] : [missing])),
    ],
    input: nut === null ? input : withNut(input, nut.entry),
  };
}

/** A kit by the names of its parts. */
export function kitTold({ count, nut, nuts, washer, shims, missing }: Kit): KitTold {
  const named = ({ id, entry: { name } }: { id: string; entry: { name: string } }) => ({ id, name });
  return {
    count,
    nut: nut && named(nut),
    nuts: nuts.map((one) => ({ ...named(one), fits: one.fits, because: one.because })),
    washer: washer && named(washer),
    shims: shims.map((one) => ({ ...named(one), thicknessMm: one.entry.thicknessMm })),
    missing,
  };
}

function noNut(choices: readonly NutChoice[], { stud }: StudCheckInput): string {
  return choices.length === 0
    ? 'The nut is not chosen from the shelf: the catalog has no nuts.'
    : choices.every(({ otherThread }) => otherThread)
      ? `No nut in the catalog has the thread ${stud.thread.designation}.`
      : 'No nut in the catalog suits.';
}

/** The question asked with a nut of the shelf; the washer stays the stack's. */
function withNut(input: StudCheckInput, { nut }: CatalogueNut): StudCheckInput {
  return { ...input, nut: { ...nut, washerMm: input.nut?.washerMm ?? 0 } };
}

function nutChoice(
  { id, body }: NamedEntry<CatalogueNut>,
  input: StudCheckInput,
  check: StudCheck,
  unit: LengthUnit,
): NutChoice {
  const withIt = checkStud(withNut(input, body), unit);
  const thread = withIt.findings.find((finding) => finding.id === 'nut-thread');
  const said = (fits: Fits, because: string, otherThread = false): NutChoice => ({
    id,
    entry: body,
    fits,
    because,
    otherThread,
  });
  if (thread?.status === 'fail') return said('no', thread.sentence, true);
  const less = input.nut && lessThanWanted(body.nut, input.nut, unit);
  if (less?.fits === 'no') return said('no', less.because);
  if (worse(withIt.fits, check.fits)) return said(withIt.fits, `With this nut: ${withIt.because}`);
  if (check.holds === 'yes' && withIt.holds === 'no')
    return said('no', 'With this nut the joint does not hold.');
  if (less) return said(less.fits, less.because);
  if (input.nut === null && withIt.fits !== 'yes') return said('with-care', withIt.because);
  return said('yes', asWanted(body.nut, input.nut, unit));
}

function asWanted(nut: CatalogueNut['nut'], wanted: Nut | null, unit: LengthUnit): string {
  const goesOn = `${nut.thread?.designation ?? ''}, ${printLength(nut.heightMm, unit, 'coarse')} high`;
  const off = wanted === null ? 0 : nut.heightMm - wanted.heightMm;
  if (wanted === null || off <= wanted.toleranceMm + 1e-9) return `${goesOn}.`;
  return `${goesOn}: ${printLength(off, unit, 'coarse')} taller than the stack’s nut, and checked at that height.`;
}

/** What a nut has less of than the stack's own; null where it has as much of everything. */
function lessThanWanted(
  nut: CatalogueNut['nut'],
  wanted: Nut,
  unit: LengthUnit,
): { readonly fits: Fits; readonly because: string } | null {
  const mm = (x: number) => printLength(x, unit, 'coarse');
  if (wanted.prevailing && !nut.prevailing)
    return { fits: 'no', because: 'It does not lock; the stack takes a locking nut.' };
  const weaker = weakerThan(nut, wanted, unit);
  if (weaker?.fits === 'no') return weaker;
  const [face, faceWanted] = [nut.bearingOuterDiameterMm, wanted.bearingOuterDiameterMm];
  if (face !== null && faceWanted !== null && face < faceWanted - SAME_FACE_MM)
    return {
      fits: 'no',
      because: `Its washer face is ${mm(face)} across; the stack’s nut has ${mm(faceWanted)}.`,
    };
  if (nut.heightMm < wanted.heightMm - wanted.toleranceMm - nut.toleranceMm)
    return {
      fits: 'with-care',
      because: `It is ${mm(wanted.heightMm - nut.heightMm)} thinner than the stack’s nut: a thin nut holds less.`,
    };
  if (face === null && faceWanted !== null)
    return { fits: 'with-care', because: 'Its washer face is not known. Measure it.' };
  if (nut.prevailing && !wanted.prevailing)
    return { fits: 'with-care', because: 'It is a locking nut; the stack’s nut is plain.' };
  return weaker;
}

function weakerThan(
  nut: CatalogueNut['nut'],
  wanted: Nut,
  unit: LengthUnit,
): { readonly fits: Fits; readonly because: string } | null {
  for (const [name, has, wants] of [
    ['proof stress', nut.proofMPa, wanted.proofMPa],
    ['tensile strength', nut.tensileMPa, wanted.tensileMPa],
  ] as const) {
    if (wants === null) continue;
    if (has === null)
      return { fits: 'with-care', because: `Its ${name} is not known; read the mark of its class.` };
    if (has >= wants - SAME_MPA) continue;
    const classes = [nutClassOf({ ...nut, washerMm: 0 }), nutClassOf(wanted)];
    const marks = classes.every((one) => one !== null) ? ` (${classes[0]}, not ${classes[1]})` : '';
    return {
      fits: 'no',
      because: `Its ${name} is ${printAs(has, STRESS[unit])}; the stack’s nut has ${printAs(wants, STRESS[unit])}${marks}.`,
    };
  }
  return null;
}

/** By how well they suit, those that are there first, then the height nearest the stack's nut. */
function bestFirst(wanted: Nut | null): (a: NutChoice, b: NutChoice) => number {
  const off = ({ entry }: NutChoice) =>
    wanted === null ? 0 : Math.abs(entry.nut.heightMm - wanted.heightMm);
  const order = (one: NutChoice) => [
    FIT_ORDER.indexOf(one.fits),
    one.otherThread ? 1 : 0,
    one.entry.stock === 0 ? 1 : 0,
    Math.round(off(one) * 1000),
  ];
  return (a, b) => {
    const [left, right] = [order(a), order(b)];
    const i = left.findIndex((value, at) => value !== right[at]);
    return i === -1 ? (a.entry.name < b.entry.name ? -1 : 1) : left[i]! - right[i]!;
  };
}

interface Found {
  readonly part: KitPart<CatalogueWasher> | null;
  readonly missing: string | null;
}

function washerFor(
  input: StudCheckInput,
  nut: NutChoice | null,
  washers: KitShelf['washers'],
  unit: LengthUnit,
): Found {
  const wantedMm = input.nut?.washerMm ?? 0;
  if (wantedMm === 0) return { part: null, missing: null };
  const face = nut?.entry.nut.bearingOuterDiameterMm ?? input.nut?.bearingOuterDiameterMm ?? 0;
  const covers = ({ body }: NamedEntry<CatalogueWasher>) => body.outerDiameterMm >= face - SAME_FACE_MM;
  return found(input, 'washer', { wantedMm, withinMm: SAME_WASHER_MM, among: washers.filter(covers) }, unit);
}

/** One of each shim of the stack: the same at every pad. */
function shimsFor(input: StudCheckInput, washers: KitShelf['washers'], unit: LengthUnit): Found[] {
  return input.stack.layers
    .filter((layer) => kindOf(layer) === 'shim')
    .map(({ thicknessMm }) =>
      found(input, 'shim', { wantedMm: thicknessMm, withinMm: SAME_SHIM_MM, among: washers }, unit),
    );
}

/** The one nearest in thickness whose hole the stud goes through. */
function found(
  { stud }: StudCheckInput,
  use: CatalogueWasher['use'],
  wanted: { readonly wantedMm: number; readonly withinMm: number; readonly among: KitShelf['washers'] },
  unit: LengthUnit,
): Found {
  const studMm = threadGeometry(stud.thread).majorMm.basic;
  const offMm = ({ body }: NamedEntry<CatalogueWasher>) => Math.abs(body.thicknessMm - wanted.wantedMm);
  const [best] = wanted.among
    .filter((one) => one.body.use === use && offMm(one) <= wanted.withinMm + 1e-9)
    .filter(({ body }) => body.innerDiameterMm > studMm && body.innerDiameterMm <= studMm + MOST_PLAY_MM)
    .sort((a, b) => (a.body.stock === 0 ? 1 : 0) - (b.body.stock === 0 ? 1 : 0) || offMm(a) - offMm(b));
  if (best) return { part: { id: best.id, entry: best.body }, missing: null };
  return {
    part: null,
    missing: `No ${use} of ${printLength(wanted.wantedMm, unit, 'coarse')} for ${stud.thread.designation} is in the catalog.`,
  };
}
