import type { Entry, SteelChosen } from '../../../shared/words/catalogue.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { key } from '../../records/database/writing.ts';
import type { TypedForm } from '../request/typed.ts';

/** A steel as it is named in a box or a list: "Pressing steel, revision 2". */
export function steelText(chosen: SteelChosen | null | undefined): string {
  return chosen ? `${chosen.steel.name}, revision ${chosen.revision}` : '';
}

export function steelOfEntry({ id, revision, body }: Entry<'steel'>): SteelChosen {
  return { id, revision, steel: body };
}

export interface SteelsAtHand {
  /** Those in use, as they are now. */
  readonly steels: readonly Entry<'steel'>[];
  /** What the cover type has: it may stay at an earlier revision. */
  readonly standing: SteelChosen | null;
}

/** The steel named in its box, by its name alone or with the revision; null where none is, or none can be. */
export function readSteelChosen(form: TypedForm, { steels, standing }: SteelsAtHand): SteelChosen | null {
  const { box } = FAMILY.steel;
  const typed = form.text(box);
  if (typed === '' || typed === steelText(standing)) return typed === '' ? null : standing;
  const found = steels.find(
    (entry) => key(entry.name) === key(typed) || key(steelText(steelOfEntry(entry))) === key(typed),
  );
  if (found !== undefined) return steelOfEntry(found);
  const [, name = typed] = /^(.*), revision \d+$/s.exec(typed) ?? [];
  const now = steels.find((entry) => key(entry.name) === key(name));
  form.fault(
    box,
    now === undefined
      ? `The catalog has no steel named "${name.slice(0, 80)}" in use. Add it there first, or choose another.`
      : `The steel "${now.name}" is now at revision ${now.revision}. Choose it again.`,
  );
  return null;
}
