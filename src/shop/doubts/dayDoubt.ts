import { daysAfter, printDay } from '../../../shared/words/day.ts';

/**
 * Asks about a day that is later than tomorrow, as both are written, `2026-11-24`: nothing came in, was welded or was
 * tightened that late. Tomorrow is let pass, because the clock of another machine may be a few hours ahead. `what` names
 * the day, as in "The day received". null when there is nothing to ask.
 */
export function dayDoubt(what: string, day: string, today: string): string | null {
  if (day <= daysAfter(today, 1)) return null;
  return `${what} is ${printDay(day)}, and today is ${printDay(today)}. Check the year, or confirm it.`;
}

/** A gauge is calibrated at least this often, in days (common practice, no source): five years. */
const LONGEST_DUE_DAYS = 1827;

/** Asks about a calibration due more than five years after today, or due before it. null where there is nothing to ask. */
export function dueDoubt(what: string, day: string, today: string): string | null {
  const said = `${what} is ${printDay(day)}, and today is ${printDay(today)}.`;
  if (day < today) return `${said} It is overdue. Check the year, or confirm it.`;
  if (day <= daysAfter(today, LONGEST_DUE_DAYS)) return null;
  return `${said} That is more than 5 years away. Check the year, or confirm it.`;
}
