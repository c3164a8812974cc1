import { day as daySchema } from '../../../shared/schemas/fields.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { Fits } from '../../../shared/words/stud/stud.ts';
import { FIT_WORD } from '../../../shared/words/verdicts.ts';
import { SLIP_SORTS, type SlipQuestion, type SlipSort } from '../../records/slips/slips.ts';
import type { Fields } from '../request/typed.ts';

const aDay = daySchema('The day');

/** Which slips are asked for; what cannot be used is refused, never left out in silence. */
export function slipQuestion(fields: Fields, limit: number): SlipQuestion {
  const faults: Fault[] = [];
  const given = (name: string) => (fields[name] ?? '').trim() || undefined;
  const checked = (name: string, sound: (text: string) => boolean, sentence: string) => {
    const text = given(name);
    if (text === undefined || sound(text)) return text;
    faults.push({ path: name, message: `"${text.slice(0, 40)}" ${sentence}` });
    return undefined;
  };
  const day = (name: string) =>
    checked(name, (text) => aDay.safeParse(text).success, 'is not a day; enter one as in 2026-11-24.');
  const counted = checked('counted', (text) => ['yes', 'no'].includes(text), 'is neither yes nor no.');
  const before = checked('before', (text) => /^\d{1,9}$/.test(text), 'is not a place in the list.');
  const sort = checked('sort', (text) => SLIP_SORTS.some((one) => one === text), 'is no sorting of slips.');
  const question: SlipQuestion = {
    text: given('text'),
    fits: checked(
      'fits',
      (text) => Object.hasOwn(FIT_WORD, text),
      'is not one of the answers; choose one.',
    ) as Fits | undefined,
    who: given('who'),
    from: day('from'),
    to: day('to'),
    counted: counted === undefined ? undefined : counted === 'yes',
    ...(sort !== undefined && {
      sort: { by: sort.replace('-', '') as SlipSort['by'], down: sort.startsWith('-') },
    }),
    before: before === undefined ? undefined : Number(before),
    limit,
  };
  if (faults.length > 0) throw new Refusal('wrong-values', faults);
  return question;
}
