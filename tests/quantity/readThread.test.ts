import { describe, expect, test } from 'vitest';
import { readThread, type ThreadRole } from '../../shared/quantity/readThread.ts';
import { threadDoubt } from '../../shared/quantity/threadDoubt.ts';

function designation(typed: string, role?: ThreadRole): string {
  const read = readThread(typed, role);
  return read.ok ? read.thread.designation : read.message;
}

// Series and pitches: ASME B1.1 and ISO 261, from memory of the standards; the 1/4 to 1/2 in rows and the coarse
// metric ones stand on the check-values page, tables 1.1 and 1.4.
describe('callouts as people write them', () => {
  test.each<[string, string]>([
    ['3/8-24', '3/8-24 UNF-2A'],
    ['7/16-20 UNF-2A', '7/16-20 UNF-2A'],
    ['7/16-20UNF-2A', '7/16-20 UNF-2A'],
    ['7/16-20 unf 2a', '7/16-20 UNF-2A'],
    ['7/16"-20', '7/16-20 UNF-2A'],
    ['7/16 - 20', '7/16-20 UNF-2A'],
    ['3/8-24-3A', '3/8-24 UNF-3A'],
    ['3/8-24 UNF-2B', '3/8-24 UNF-2B'],
    ['.375-24', '3/8-24 UNF-2A'],
    ['0.4375-20', '7/16-20 UNF-2A'],
    ['0.438-20', '7/16-20 UNF-2A'],
    ['#10-32', '#10-32 UNF-2A'],
    ['10-32', '#10-32 UNF-2A'],
    ['No. 10-24', '#10-24 UNC-2A'],
    ['0.190-32', '#10-32 UNF-2A'],
    ['#8-32', '#8-32 UNC-2A'],
    ['1-8', '1-8 UNC-2A'],
    ['1-64', '#1-64 UNC-2A'],
    ['1 1/8-12', '1-1/8-12 UNF-2A'],
    ['1-1/8-7', '1-1/8-7 UNC-2A'],
    ['1/4-20', '1/4-20 UNC-2A'],
    ['1/4-28', '1/4-28 UNF-2A'],
    ['5/16-18', '5/16-18 UNC-2A'],
    ['5/16-24', '5/16-24 UNF-2A'],
    ['3/8-16', '3/8-16 UNC-2A'],
    ['7/16-14', '7/16-14 UNC-2A'],
    ['1/2-13', '1/2-13 UNC-2A'],
    ['1/2-20', '1/2-20 UNF-2A'],
    ['3/8-32', '3/8-32 UNEF-2A'],
    ['3/8-20', '3/8-20 UN-2A'],
    ['3/8-18', '3/8-18 UNS-2A'],
    ['M10', 'M10×1.5-6g'],
    ['m10', 'M10×1.5-6g'],
    ['M10x1.25', 'M10×1.25-6g'],
    ['M10X1.25', 'M10×1.25-6g'],
    ['M10×1.5-6g', 'M10×1.5-6g'],
    ['M10 x 1.5 - 6g', 'M10×1.5-6g'],
    ['M10×1,25', 'M10×1.25-6g'],
    ['M10-1.25', 'M10×1.25-6g'],
    ['M10-6H', 'M10×1.5-6H'],
    ['M10 6H', 'M10×1.5-6H'],
    ['3/8-24 2B', '3/8-24 UNF-2B'],
    ['3/8-24 UNF2B', '3/8-24 UNF-2B'],
    ['M10x1.0', 'M10×1-6g'],
    ['M6', 'M6×1-6g'],
    ['M8', 'M8×1.25-6g'],
    ['M12', 'M12×1.75-6g'],
    ['M14', 'M14×2-6g'],
    ['M16', 'M16×2-6g'],
    ['M3', 'M3×0.5-6g'],
    ['M30', 'M30×3.5-6g'],
  ])('the callout %s is %s', (typed, written) => {
    expect(designation(typed)).toBe(written);
  });

  test('a callout is read in full in both systems', () => {
    expect(readThread('7/16-20')).toEqual({
      ok: true,
      thread: {
        system: 'unified',
        designation: '7/16-20 UNF-2A',
        majorInch: 0.4375,
        threadsPerInch: 20,
        series: 'UNF',
        class: '2A',
      },
    });
    expect(readThread('M10x1.25', 'internal')).toEqual({
      ok: true,
      thread: { system: 'metric', designation: 'M10×1.25-6H', majorMm: 10, pitchMm: 1.25, class: '6H' },
    });
  });

  test('a class that is not written follows from where the thread is', () => {
    expect(designation('3/8-24', 'external')).toBe('3/8-24 UNF-2A');
    expect(designation('3/8-24', 'internal')).toBe('3/8-24 UNF-2B');
    expect(designation('M10', 'external')).toBe('M10×1.5-6g');
    expect(designation('M10', 'internal')).toBe('M10×1.5-6H');
  });

  test('a designation written out in full reads back to the same', () => {
    for (const typed of ['#10-32', '1-1/8-7', '1-8', '#1-64', '3/8-20', 'M10', 'M12x1.25', '3/8-24 UNF-3B']) {
      const first = readThread(typed);
      expect(first.ok && readThread(first.thread.designation)).toEqual(first);
    }
  });
});

describe('half a callout', () => {
  test.each<[string, readonly string[]]>([
    ['3/8', ['3/8-16 UNC', '3/8-24 UNF', '3/8-32 UNEF']],
    ['.375', ['3/8-16 UNC', '3/8-24 UNF', '3/8-32 UNEF']],
    ['9.45', ['3/8-16 UNC', '3/8-24 UNF']],
    ['9,45 mm', ['3/8-16 UNC', '3/8-24 UNF']],
    ['.372 in', ['3/8-16 UNC', '3/8-24 UNF']],
    ['7.85', ['5/16-18 UNC', '5/16-24 UNF', 'M8x1.25', 'M8x1']],
    ['9.8', ['M10x1.5', 'M10x1.25']],
  ])('%s offers the callouts it may be, each of which can be read', (typed, choices) => {
    const read = readThread(typed, 'internal');
    expect(read.ok ? [] : read.choices).toEqual(choices);
    for (const choice of choices) expect(readThread(choice, 'internal').ok).toBe(true);
  });

  test('a size with a word is that thread', () => {
    expect(designation('3/8 fine')).toBe('3/8-24 UNF-2A');
    expect(designation('3/8 coarse', 'internal')).toBe('3/8-16 UNC-2B');
    expect(designation('9.45')).toBe(
      'Thread: "9.45" is a diameter without a pitch. It may be 3/8-16 UNC, 3/8-24 UNF. Count the threads, or measure over ten.',
    );
  });

  test.each([
    ['3/8-25', '3/8-25 is in no standard series. Did you mean 3/8-24 UNF?', '3/8-24 UNF'],
    ['3/8-18', '3/8-18 is in no standard series. Did you mean 3/8-16 UNC?', '3/8-16 UNC'],
    ['3/8-24', undefined, undefined],
    ['3/8-20', undefined, undefined],
    ['M10', undefined, undefined],
  ])('%s is asked about only where no series has it', (typed, question, meant) => {
    const read = readThread(typed);
    const doubt = read.ok ? threadDoubt(read.thread) : null;
    expect([doubt?.question, doubt?.meant]).toEqual([question, meant]);
  });
});

describe('what is no thread, or contradicts itself, is refused', () => {
  test.each<[string, string]>([
    [
      '',
      'Thread: nothing was typed. Type a callout such as 3/8-24, 7/16-20 UNF-2A, #10-32, M10x1.25 or M10.',
    ],
    [
      'bolt',
      'Thread: "bolt" is not a thread callout; write 3/8-24, 7/16-20 UNF-2A, #10-32, M10x1.25 or M10.',
    ],
    ['3/8', 'Thread: "3/8" needs its threads per inch; usual are 3/8-16 UNC, 3/8-24 UNF, 3/8-32 UNEF.'],
    [
      '3/8-24 UNC',
      'Thread: "3/8-24 UNC" is named UNC, but 3/8-24 is UNF, and 3/8 UNC has 16 threads per inch. Did you mean 3/8-24 UNF-2A?',
    ],
    [
      '3/8-18 UNF',
      'Thread: "3/8-18 UNF" is named UNF, but 3/8-18 is UNS, and 3/8 UNF has 24 threads per inch. Did you mean 3/8-18 UNS-2A?',
    ],
    ['3/8-24 UNX', 'Thread: "3/8-24 UNX" is named UNX, but 3/8-24 is UNF. Did you mean 3/8-24 UNF-2A?'],
    [
      '3/8-24 UNF-5A',
      'Thread: "3/8-24 UNF-5A" has class 5A; the classes known are 2A and 3A for a stud, 2B and 3B for a nut.',
    ],
    [
      '3/8-4',
      'Thread: "3/8-4" has 4 threads per inch, which no 3/8 thread has; usual are 3/8-16 UNC, 3/8-24 UNF, 3/8-32 UNEF.',
    ],
    [
      '3/8-240',
      'Thread: "3/8-240" has 240 threads per inch, which no 3/8 thread has; usual are 3/8-16 UNC, 3/8-24 UNF, 3/8-32 UNEF.',
    ],
    ['3/7-24', 'Thread: "3/7-24" has no size of ASME B1.1 up to 1-1/2 in; write it as in 3/8-24 or #10-32.'],
    ['3/0-24', 'Thread: "3/0-24" has no size of ASME B1.1 up to 1-1/2 in; write it as in 3/8-24 or #10-32.'],
    ['#7-32', 'Thread: "#7-32" has no size of ASME B1.1 up to 1-1/2 in; write it as in 3/8-24 or #10-32.'],
    ['M10x1.2', 'Thread: "M10x1.2" has a pitch of 1.2 mm; ISO 261 has 1.5, 1.25, 1 and 0.75 mm for M10.'],
    ['M10x125', 'Thread: "M10x125" has a pitch of 125 mm; ISO 261 has 1.5, 1.25, 1 and 0.75 mm for M10.'],
    ['M13', 'Thread: "M13" has no size of ISO 261 between M3 and M30; the nearest are M12 and M14.'],
    ['M100', 'Thread: "M100" has no size of ISO 261 between M3 and M30; the nearest are M27 and M30.'],
    [
      'M10-6G',
      'Thread: "M10-6G" has class 6G; the classes known are 6g for a stud and 6H for a nut, with that capital or small letter.',
    ],
    [
      '3/8-242A',
      'Thread: "3/8-242A" is not a thread callout; write 3/8-24, 7/16-20 UNF-2A, #10-32, M10x1.25 or M10.',
    ],
    [
      'M10x',
      'Thread: "M10x" is not a thread callout; write M10x1.25, M10x1.5-6g, or M10 for the coarse pitch.',
    ],
    [
      'M10.5x1.5',
      'Thread: "M10.5x1.5" has no size of ISO 261 between M3 and M30; the nearest are M10 and M11.',
    ],
  ])('the text %j is refused as a thread', (typed, message) => {
    expect(designation(typed)).toBe(message);
  });

  // Marked LH: ASME B1.1 and ISO 965-1, from memory.
  test.each([
    '3/8-24 LH',
    '3/8-24LH',
    '3/8-24 UNF LH',
    '3/8-24 UNF-2A LH',
    '3/8-24 UNF-2A-LH',
    '3/8-24 l.h.',
    '3/8-24 left hand',
    'LH 3/8-24',
    'M10 LH',
    'M10x1.5-LH',
    'M10×1.25-6g-LH',
    'M10x1.5 left-hand',
  ])('a left-hand thread, %s, is refused', (typed) => {
    for (const role of ['external', 'internal', 'either'] as const)
      expect(readThread(typed, role)).toEqual({
        ok: false,
        message: `Thread: "${typed}" is a left-hand thread, which can’t be checked here. If the thread is right-hand, leave out the LH.`,
      });
  });

  test('a nut’s class on a stud and a stud’s in a nut are refused', () => {
    expect(designation('3/8-24 UNF-2B', 'external')).toBe(
      'Thread: "3/8-24 UNF-2B" has class 2B, which is a nut’s; a stud’s is 2A or 3A.',
    );
    expect(designation('3/8-24 UNF-2A', 'internal')).toBe(
      'Thread: "3/8-24 UNF-2A" has class 2A, which is a stud’s; a nut’s is 2B or 3B.',
    );
    expect(designation('M10-6H', 'external')).toBe(
      'Thread: "M10-6H" has class 6H, which is a nut’s; a stud’s is 6g.',
    );
    expect(designation('M10-6g', 'internal')).toBe(
      'Thread: "M10-6g" has class 6g, which is a stud’s; a nut’s is 6H.',
    );
  });

  test('a text of 100,000 characters is answered, and cut short in the sentence', () => {
    for (const typed of ['1-'.repeat(50_000), `3/8-24${' '.repeat(50_000)}x`, `M${'1'.repeat(50_000)}`]) {
      expect(designation(typed).length).toBeLessThan(200);
    }
  });
});

test.each([
  ['3/8 fine', '3/8-24 UNF-2A'],
  ['3/8 coarse', '3/8-16 UNC-2A'],
  ['5/16 UNF', '5/16-24 UNF-2A'],
  ['.375 fine', '3/8-24 UNF-2A'],
  ['3/8 extra-fine', '3/8-32 UNEF-2A'],
])('a size with a word for its pitch, %s, is %s (ASME B1.1)', (typed, designation) => {
  const read = readThread(typed, 'external');
  expect(read.ok && read.thread.designation).toBe(designation);
});
