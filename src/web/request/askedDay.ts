import { isDay } from '../../../shared/words/day.ts';
import { dayDoubt } from '../../shop/doubts/dayDoubt.ts';
import type { TypedForm } from './typed.ts';

/** Asks about a day later than tomorrow, at the box that confirms it; one that stands already is not asked about again. */
export function askDay(
  form: TypedForm,
  box: string,
  what: string,
  { today, standing }: { readonly today: string; readonly standing?: string | undefined },
): void {
  const day = form.text(box);
  if (!isDay(day) || day === standing || form.text(`ok.${box}`) === day) return;
  const question = dayDoubt(what, day, today);
  if (question !== null) form.fault(`ok.${box}`, question);
}
