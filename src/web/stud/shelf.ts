import type { CatalogueStack, CatalogueStud, ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { StudChoice } from '../../../shared/words/choices.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Substitute } from '../../../views/pages/stud/shelfParts.tsx';
import { sameBut } from '../../calc/stud/match/sameBut.ts';
import { whatWouldMend } from '../../calc/stud/match/whatWouldMend.ts';
import { type NamedEntry, studInput } from '../../shop/studChoices.ts';
import type { Fields } from '../request/typed.ts';

/** The studs that a person wants to see: of one thread, or only those that are there. */
export function narrowed(
  studs: readonly NamedEntry<CatalogueStud>[],
  fields: Fields,
): NamedEntry<CatalogueStud>[] {
  const { onlyThread = '', inStock } = fields;
  return studs.filter(
    ({ body }) =>
      (onlyThread === '' || body.stud.thread.designation === onlyThread) &&
      (inStock !== '1' || (body.stock ?? 0) > 0),
  );
}

/** Every thread there is a stud of, for the list to choose from. */
export function threadsOf(studs: readonly NamedEntry<CatalogueStud>[]): string[] {
  return [...new Set(studs.map(({ body }) => body.stud.thread.designation))].sort();
}

/** What would make something better of each that is not a plain yes; of those whose thread goes on the nut. */
export function mendsOf(
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
export function substitutesOf(shown: StudChoice, choices: readonly StudChoice[]): Substitute[] {
  const others = choices.map(({ match, entry }) => ({ id: match.id, stud: entry.stud }));
  return sameBut(shown.entry.stud, others).flatMap(({ id, longerMm }) => {
    const choice = choices.find(({ match }) => match.id === id);
    return choice ? [{ id, name: choice.entry.name, longerMm, fits: choice.match.fits }] : [];
  });
}
