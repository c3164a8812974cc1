import type { LengthUnit } from './print.ts';

/** What an answer is given in: lengths in this unit, days of this time zone. */
export interface UnitAndZone {
  readonly lengthUnit: LengthUnit;
  /** As in America/Chicago. */
  readonly timeZone: string;
}

/** A time on the clock on the wall. */
export interface DayTime {
  readonly hour: number;
  readonly minute: number;
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const DAY_MS = 24 * 3600 * 1000;

/** Whether this names a time zone that the machine knows. */
export function isTimeZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat('en-US', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}

/** The day it is in a time zone at an instant: `2026-11-24`. */
export function dayIn(zone: string, at: Date | string): string {
  return new Date(clockIn(zone, new Date(at))).toISOString().slice(0, 10);
}

/** Whether a text is written as days are kept, `2026-11-24`. */
export function isDay(text: string): boolean {
  return /^\d{4}-\d\d-\d\d$/.test(text);
}

/** `2026-11-24` as "Nov 24, 2026". */
export function printDay(day: string): string {
  const [year, month, date] = day.split('-');
  return `${MONTHS[Number(month) - 1] ?? month} ${Number(date)}, ${year}`;
}

/** "2:05 PM". */
export function printTime({ hour, minute }: DayTime): string {
  return `${hour % 12 === 0 ? 12 : hour % 12}:${String(minute).padStart(2, '0')} ${hour < 12 ? 'AM' : 'PM'}`;
}

/** An instant by the calendar and the clock of a time zone: "Nov 24, 2026, 2:05 PM". */
export function printInstant(zone: string, at: Date | string): string {
  const clock = new Date(clockIn(zone, new Date(at)));
  return `${printDay(dayIn(zone, at))}, ${printTime({ hour: clock.getUTCHours(), minute: clock.getUTCMinutes() })}`;
}

/**
 * The instant at which the clock of a time zone shows a time of a day. Where the clock shows it twice, the first; where
 * it never does because the clock is put forward past it, as long after as if the clock had been put forward later.
 */
export function instantIn(zone: string, day: string, { hour, minute }: DayTime): Date {
  const shown = Date.parse(`${day}T00:00:00Z`) + (60 * hour + minute) * 60_000;
  const offset = (at: number) => clockIn(zone, new Date(at)) - at;
  const before = shown - offset(shown - DAY_MS);
  const after = shown - offset(shown + DAY_MS);
  const there = [before, after].filter((at) => at + offset(at) === shown);
  return new Date(there.length === 0 ? before : Math.min(...there));
}

/** The last instant up to now at which the clock of a time zone showed a time of day. */
export function lastInstantIn(zone: string, time: DayTime, now: Date): Date {
  const today = dayIn(zone, now);
  const due = instantIn(zone, today, time);
  if (due <= now) return due;
  return instantIn(zone, daysAfter(today, -1), time);
}

/** The day so many days after another, or before it where the number is negative; days as `2026-11-24`. */
export function daysAfter(day: string, days: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * DAY_MS).toISOString().slice(0, 10);
}

/** What calendar and clock of a time zone show, in milliseconds as though they were those of UTC. */
function clockIn(zone: string, at: Date): number {
  const parts = Object.fromEntries(
    formatOf(zone)
      .formatToParts(at)
      .map(({ type, value }) => [type, value]),
  );
  const { year, month, day, hour, minute, second } = parts;
  const seconds = Date.UTC(
    Number(year),
    Number(month) - 1,
    Number(day),
    Number(hour),
    Number(minute),
    Number(second),
  );
  return seconds + (((at.getTime() % 1000) + 1000) % 1000);
}

const formats = new Map<string, Intl.DateTimeFormat>();

/** Making one takes long beside using it. */
function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known) return known;
  const made = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    calendar: 'gregory',
    numberingSystem: 'latn',
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  formats.set(zone, made);
  return made;
}
