import type { CatalogueStack, CatalogueStud, ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { Skipped, StudChoice, Substitute } from '../../../shared/words/stud/choices.ts';
import type { Fits, Joint, StudCheckInput } from '../../../shared/words/stud/stud.ts';
import { sameBut } from '../../calc/stud/match/sameBut.ts';
import { type ToleranceTable, toleranceRows } from '../../calc/stud/match/toleranceRows.ts';
import { whatWouldMend } from '../../calc/stud/match/whatWouldMend.ts';
import { Remembered } from '../remembered.ts';
import { type NamedEntry, type StudsRanked, studChoicesFor, studInput } from '../studChoices.ts';

/** The studs on the shelf, held against one stack. */
export interface StudsHeld {
  /** Best first. */
  readonly choices: readonly StudChoice[];
  /** The one looked at closer: the one asked for, else the best. */
  readonly shown: StudChoice | null;
  /** By stud: what would make something better of it. */
  readonly mends: Readonly<Record<string, readonly string[]>>;
  readonly substitutes: readonly Substitute[];
  readonly tolerances: ToleranceTable | null;
  /** Entries with a figure that cannot be. */
  readonly skipped: readonly Skipped[];
  /** How many of a large catalog are not among the choices. */
  readonly leftOut: number;
  readonly faults: readonly Fault[];
}

/** What a stack is asked with. */
export interface StackAsked {
  readonly stack: CatalogueStack | null;
  readonly pullForwardMm: number | null;
  readonly joint: Joint | null;
  readonly criteria: ShopCriteria;
  readonly unit: LengthUnit;
}

const held = new Remembered<StudsHeld>(20);
/** Of a shelf with more of them the answers would fill the memory. */
const MOST_STUDS_REMEMBERED = 100;

/** Every stud held against the stack, and all there is to say of the one that is looked at. */
export function studsHeld(
  studs: readonly NamedEntry<CatalogueStud>[],
  asked: StackAsked,
  studId: string | undefined,
): StudsHeld {
  if (studs.length > MOST_STUDS_REMEMBERED) return studsAgainst(studs, asked, studId);
  const bare = studs.map(({ id, body }) => [id, body]);
  return held.once([bare, asked, studId], () => studsAgainst(studs, asked, studId));
}

function studsAgainst(
  studs: readonly NamedEntry<CatalogueStud>[],
  asked: StackAsked,
  studId: string | undefined,
): StudsHeld {
  const { stack, pullForwardMm, criteria, unit } = asked;
  const { choices, skipped, leftOut, faults } = ranked(studs, asked, studId ?? null);
  const shown = choices.find(({ match }) => match.id === studId) ?? choices[0] ?? null;
  return {
    choices,
    shown,
    mends: stack ? mendsOf(choices, stack, pullForwardMm, criteria, unit) : {},
    substitutes: shown ? substitutesOf(shown, choices) : [],
    tolerances:
      stack && shown ? tolerancesOf(studInput(shown.entry, stack, pullForwardMm, criteria, null)) : null,
    skipped,
    leftOut,
    faults,
  };
}

const drawn = new Remembered<ToleranceTable>(200);

/** A hundred thousand draws take longer than all the rest of a page. */
function tolerancesOf(input: StudCheckInput): ToleranceTable {
  return drawn.once(input, () => toleranceRows(input));
}

/** The studs by how well they suit; none, and why, where the question cannot be used. */
function ranked(
  studs: readonly NamedEntry<CatalogueStud>[],
  { stack, pullForwardMm, joint, criteria, unit }: StackAsked,
  studId: string | null,
): StudsRanked & { readonly faults: readonly Fault[] } {
  if (stack === null) return { choices: [], skipped: [], leftOut: 0, faults: [] };
  try {
    const held = studChoicesFor(studs, stack, pullForwardMm, criteria, null, unit, joint, studId);
    return { ...held, faults: [] };
  } catch (error) {
    if (error instanceof Refusal) return { choices: [], skipped: [], leftOut: 0, faults: error.faults };
    throw error;
  }
}

const FIT_ORDER = ['yes', 'with-care', 'no'] as const satisfies readonly Fits[];

/** One of the others with the same thread that fits less well: what not to take by mistake. */
export function notToTake(choice: StudChoice, choices: readonly StudChoice[]): StudChoice | null {
  const thread = ({ entry }: StudChoice) => entry.stud.thread.designation;
  const other = choices.find((one) => thread(one) === thread(choice) && worse(one, choice));
  return other ?? null;
}

function worse(one: StudChoice, than: StudChoice): boolean {
  return FIT_ORDER.indexOf(one.match.fits) > FIT_ORDER.indexOf(than.match.fits);
}

/** The studs that a person wants to see: of one thread, or only those that are there. */
export function narrowed(
  studs: readonly NamedEntry<CatalogueStud>[],
  { thread, inStock }: { readonly thread: string; readonly inStock: boolean },
): NamedEntry<CatalogueStud>[] {
  return studs.filter(
    ({ body }) =>
      (thread === '' || body.stud.thread.designation === thread) && (!inStock || (body.stock ?? 0) > 0),
  );
}

/** The stacks that a person wants to see in the list; the one chosen stays in it. */
export function stacksListed(
  stacks: readonly NamedEntry<CatalogueStack>[],
  by: { readonly style: string; readonly count: string; readonly thread: string },
  chosenId: string,
): NamedEntry<CatalogueStack>[] {
  return stacks.filter(
    ({ id, body: { stack, nut } }) =>
      id === chosenId ||
      ((by.style === '' || stack.style === by.style) &&
        (by.count === '' || String(stack.holeCount) === by.count) &&
        (by.thread === '' || nut?.thread?.designation === by.thread)),
  );
}

/** What the list can be narrowed by, as the stacks have it. */
export function stackFilters(stacks: readonly NamedEntry<CatalogueStack>[]) {
  const each = (of: (body: CatalogueStack) => string | null) =>
    [...new Set(stacks.flatMap(({ body }) => of(body) ?? []))].sort();
  return {
    counts: each(({ stack }) => (stack.holeCount === null ? null : String(stack.holeCount))),
    nutThreads: each(({ nut }) => nut?.thread?.designation ?? null),
  };
}

/** Every thread there is a stud of, for the list to choose from. */
export function threadsOf(studs: readonly NamedEntry<CatalogueStud>[]): string[] {
  return [...new Set(studs.map(({ body }) => body.stud.thread.designation))].sort();
}

/** What would make something better of each that is not a plain yes; of those whose thread goes on the nut. */
function mendsOf(
  choices: readonly StudChoice[],
  stack: CatalogueStack,
  pullForwardMm: number | null,
  criteria: ShopCriteria,
  unit: LengthUnit,
): Record<string, readonly string[]> {
  return Object.fromEntries(
    choices
      .filter(({ match }) => match.fits !== 'yes' && match.decidedBy !== 'thread')
      .map(({ match, entry }) => {
        const input = studInput(entry, stack, pullForwardMm, criteria, null);
        return [match.id, whatWouldMend(input, unit).map(({ sentence }) => sentence)];
      }),
  );
}

/** The same stud but longer or shorter, with what it would do in this stack. */
function substitutesOf(shown: StudChoice, choices: readonly StudChoice[]): Substitute[] {
  const others = choices.map(({ match, entry }) => ({ id: match.id, stud: entry.stud }));
  return sameBut(shown.entry.stud, others).flatMap(({ id, longerMm }) => {
    const choice = choices.find(({ match }) => match.id === id);
    return choice ? [{ id, name: choice.entry.name, longerMm, fits: choice.match.fits }] : [];
  });
}
