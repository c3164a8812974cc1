import type { Chosen, Entry, EntryBodies, Family } from '../../../shared/words/catalogue.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { type CatalogueKind, ENTRY_WORD } from '../../../shared/words/terms.ts';
import { listEntries } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { key } from '../../records/database/writing.ts';
import type { TypedForm } from '../request/typed.ts';

/** What a cover type names of the catalog, each whole with its revision. */
const NAMED_KINDS = ['steel', 'lining'] as const;
export type NamedKind = (typeof NAMED_KINDS)[number];
/** With what a cut plan names. */
type ChosenKind = NamedKind | 'lathe';

/** Those in use, as they are now: what a cover type may name. */
export type AtHand = { readonly [K in NamedKind]: readonly Entry<K>[] };

/** Nothing but a cover type asks. */
export async function atHandFor(db: Db, kind: CatalogueKind): Promise<AtHand> {
  const listed = async <K extends NamedKind>(of: K) => (kind === 'family' ? listEntries(db, of) : []);
  return { steel: await listed('steel'), lining: await listed('lining') };
}

/** What a cover type or a plan names of a kind, as it stands in a box or a list: "Pressing steel, revision 2". */
export function namedText<K extends ChosenKind>(
  kind: K,
  body: { readonly [Kind in K]?: Chosen<Kind> | null },
): string {
  const chosen = body[kind];
  return chosen ? chosenText(kind, chosen) : '';
}

function chosenText<K extends ChosenKind>(kind: K, chosen: Chosen<K>): string {
  return `${chosen[kind].name}, revision ${chosen.revision}`;
}

function chosenOf<K extends ChosenKind>(kind: K, { id, revision, body }: Entry<K>): Chosen<K> {
  const named: { readonly [Kind in K]: EntryBodies[Kind] } = { [kind]: body } as Chosen<K>;
  return { id, revision, ...named };
}

/** What is named in its box, by its name alone or with the revision; null where nothing is, or nothing can be. */
export function readChosen<K extends ChosenKind>(
  form: TypedForm,
  box: string,
  kind: K,
  atHand: readonly Entry<K>[],
  /** What is there: it may stay at an earlier revision. */
  standing: Chosen<K> | null | undefined,
): Chosen<K> | null {
  const typed = form.text(box);
  if (typed === '') return null;
  if (standing && typed === chosenText(kind, standing)) return standing;
  const found = atHand.find(
    (entry) => key(entry.name) === key(typed) || key(chosenText(kind, chosenOf(kind, entry))) === key(typed),
  );
  if (found !== undefined) return chosenOf(kind, found);
  const [, name = typed] = /^(.*), revision \d+$/s.exec(typed) ?? [];
  const now = atHand.find((entry) => key(entry.name) === key(name));
  const word = ENTRY_WORD[kind].one;
  form.fault(
    box,
    now === undefined
      ? `The catalog has no ${word} named "${name.slice(0, 80)}" in use. Add it there first, or choose another.`
      : `The ${word} "${now.name}" is now at revision ${now.revision}. Choose it again.`,
  );
  return null;
}

/** Entries as a box may name them. */
export function namesAtHand<K extends ChosenKind>(kind: K, entries: readonly Entry<K>[]): readonly string[] {
  return entries.map((entry) => chosenText(kind, chosenOf(kind, entry)));
}

/** What a cover type’s boxes may be filled with, by kind. */
export function namesOf(atHand: AtHand): Readonly<Record<NamedKind, readonly string[]>> {
  return { steel: namesAtHand('steel', atHand.steel), lining: namesAtHand('lining', atHand.lining) };
}

/** The boxes of what a cover type names, as its form would have them typed. */
export function chosenAsTyped(body: Family): Readonly<Record<string, string>> {
  return Object.fromEntries(NAMED_KINDS.map((kind) => [FAMILY[kind].box, namedText(kind, body)]));
}
