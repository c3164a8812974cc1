import { describe, expect, test } from 'vitest';
import { barLine, barOn, leftInWords, type Step, Stopped, withBar } from '../src/progress.ts';

const part = (done: number, of: number, forMs: number) => ({ what: 'Copying photos', done, of, forMs });

describe('how far long work is', () => {
  test('the time left is told by the part that is done', () => {
    expect(leftInWords(part(10, 40, 5_000))).toBe('about 20 s left');
    expect(leftInWords(part(10, 11, 10_000))).toBe('a few seconds left');
    expect(leftInWords(part(10, 400, 10_000))).toBe('about 7 min left');
    expect(leftInWords(part(1, 901, 10_000))).toBe('about 2.5 h left');
  });

  test('before anything is done, in the first moments and at the end no time is told', () => {
    for (const none of [part(0, 40, 60_000), part(3, 40, 1_000), part(40, 40, 60_000)]) {
      expect(leftInWords(none)).toBeNull();
    }
  });

  test('the line has a bar with the count, and fits the terminal', () => {
    expect(barLine(part(20, 40, 0), 80)).toBe('[##########----------] Copying photos: 20 of 40');
    expect(barLine(part(0, 1, 0), 80)).toBe('Copying photos');
    expect(barLine(part(20, 40, 0), 40)).toHaveLength(39);
  });

  test('a terminal has one line that is drawn again and left empty', () => {
    const { out, written, clock } = terminal(true);
    const bar = barOn(out, clock.now);
    bar.step('Copying photos', 0, 40);
    clock.ms = 50;
    bar.step('Copying photos', 1, 40);
    clock.ms = 10_000;
    bar.step('Copying photos', 10, 40);
    bar.end();
    expect(written).toEqual([
      '\r\u001b[K[--------------------] Copying photos: 0 of 40',
      '\r\u001b[K[#####---------------] Copying photos: 10 of 40, about 30 s left',
      '\r\u001b[K',
    ]);
  });

  test('the time of one part is not that of the next', () => {
    const { out, written, clock } = terminal(true);
    const bar = barOn(out, clock.now);
    bar.step('Checking files', 1, 2);
    clock.ms = 60_000;
    bar.step('Copying files', 1, 2);
    expect(written.at(-1)).not.toContain('left');
  });

  test('where nobody looks at a terminal nothing is drawn', () => {
    const { out, written, clock } = terminal(false);
    const bar = barOn(out, clock.now);
    bar.step('Copying photos', 1, 40);
    bar.end();
    expect(written).toEqual([]);
  });

  test('Ctrl-C ends the work at its next step and says what was left', async () => {
    const listening = process.listenerCount('SIGINT');
    let steps = 0;
    const work = async (step: Step) => {
      for (; steps < 10; steps++) {
        if (steps === 3) process.emit('SIGINT', 'SIGINT');
        step('Copying photos', steps, 10);
      }
    };
    await expect(withBar('Nothing was copied.', work)).rejects.toEqual(new Stopped('Nothing was copied.'));
    expect(steps).toBe(3);
    expect(process.listenerCount('SIGINT')).toBe(listening);
  });
});

function terminal(isTTY: boolean) {
  const written: string[] = [];
  const clock = { ms: 0, now: () => clock.ms };
  return { out: { isTTY, columns: 80, write: (text: string) => written.push(text) }, written, clock };
}
