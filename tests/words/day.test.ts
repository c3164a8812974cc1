import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import {
  dayIn,
  instantIn,
  isTimeZone,
  lastInstantIn,
  printDay,
  printInstant,
  printTime,
} from '../../shared/words/day.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const CHICAGO = 'America/Chicago';
const AUCKLAND = 'Pacific/Auckland';

// Offsets and changes of clock: IANA time zone database, rules for the United States since 2007 and New Zealand since 2007.
describe('the day in a time zone', () => {
  test.each([
    ['west of Greenwich the evening is still today', CHICAGO, '2026-11-25T05:30:00Z', '2026-11-24'],
    ['west of Greenwich midnight begins the next day', CHICAGO, '2026-11-25T06:00:00Z', '2026-11-25'],
    ['east of Greenwich the morning is already today', AUCKLAND, '2026-11-23T19:30:00Z', '2026-11-24'],
    ['east of Greenwich the evening is still today', AUCKLAND, '2026-11-24T10:30:00Z', '2026-11-24'],
    ['at Greenwich it is the day of UTC', 'UTC', '2026-11-24T23:59:59.999Z', '2026-11-24'],
    ['the evening before clocks go forward', CHICAGO, '2026-03-08T05:30:00Z', '2026-03-07'],
    ['the evening of the day clocks went forward', CHICAGO, '2026-03-09T04:30:00Z', '2026-03-08'],
    ['the evening of the day clocks went back', CHICAGO, '2026-11-02T05:30:00Z', '2026-11-01'],
    ['half an hour off the full hour', 'Asia/Kolkata', '2026-11-24T18:29:00Z', '2026-11-24'],
    ['half an hour off the full hour, a minute later', 'Asia/Kolkata', '2026-11-24T18:30:00Z', '2026-11-25'],
  ])('%s', (_what, zone, at, day) => {
    expect(dayIn(zone, at)).toBe(day);
    expect(dayIn(zone, new Date(at))).toBe(day);
  });
});

test('a day and a time are printed the way a US shop writes them', () => {
  expect(printDay('2026-10-08')).toBe('Oct 8, 2026');
  expect([0, 4, 12, 23].map((hour) => printTime({ hour, minute: 5 }))).toEqual([
    '12:05 AM',
    '4:05 AM',
    '12:05 PM',
    '11:05 PM',
  ]);
  expect(printInstant(CHICAGO, '2026-11-25T05:30:00Z')).toBe('Nov 24, 2026, 11:30 PM');
  expect(printInstant(AUCKLAND, '2026-11-24T10:30:00Z')).toBe('Nov 24, 2026, 11:30 PM');
});

describe('the instant at which a clock shows a time', () => {
  test.each([
    ['an ordinary night', CHICAGO, '2026-11-24', 3, 30, '2026-11-24T09:30:00.000Z'],
    [
      'east of Greenwich it is a day earlier in UTC',
      AUCKLAND,
      '2026-11-24',
      3,
      30,
      '2026-11-23T14:30:00.000Z',
    ],
    ['after clocks went forward that night', CHICAGO, '2026-03-08', 3, 30, '2026-03-08T08:30:00.000Z'],
    ['a time that clocks skip comes an hour later', CHICAGO, '2026-03-08', 2, 30, '2026-03-08T08:30:00.000Z'],
    ['a time that clocks show twice is the first', CHICAGO, '2026-11-01', 1, 30, '2026-11-01T06:30:00.000Z'],
    ['after clocks went back that night', CHICAGO, '2026-11-01', 3, 30, '2026-11-01T09:30:00.000Z'],
  ])('%s', (_what, zone, day, hour, minute, at) => {
    expect(instantIn(zone, day, { hour, minute }).toISOString()).toBe(at);
  });

  test('the last one up to now is of today, or of yesterday before it has come', () => {
    const due = (now: string) => lastInstantIn(CHICAGO, { hour: 3, minute: 30 }, new Date(now)).toISOString();
    expect(due('2026-11-24T09:29:59Z')).toBe('2026-11-23T09:30:00.000Z');
    expect(due('2026-11-24T09:30:00Z')).toBe('2026-11-24T09:30:00.000Z');
    // In UTC it is the 25th by then.
    expect(due('2026-11-25T05:30:00Z')).toBe('2026-11-24T09:30:00.000Z');
    expect(due('2026-03-08T20:00:00Z')).toBe('2026-03-08T08:30:00.000Z');
  });
});

test('a name that is no time zone is told from one that is', () => {
  expect(['America/Chicago', 'UTC', 'Mars/Base', ''].map(isTimeZone)).toEqual([true, true, false, false]);
});

test('no page, record or rule cuts a day out of an instant of UTC', () => {
  const files = ['src', 'shared', 'views'].flatMap((room) =>
    readdirSync(join(ROOT, room), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => join(room, name)),
  );
  expect(files.length).toBeGreaterThan(300);
  const cutting = files.filter((file) => /\.slice\(0, ?10\)/.test(readFileSync(join(ROOT, file), 'utf8')));
  expect(cutting).toEqual([join('shared', 'words', 'day.ts')]);
});
