import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoStacks } from '../../../../data/demo/stacks.ts';
import { demoStuds } from '../../../../data/demo/studs.ts';
import { checkStud } from '../../../../src/calc/stud/checkStud.ts';
import { studWanted } from '../../../../src/calc/stud/match/studWanted.ts';
import { whatWouldMend } from '../../../../src/calc/stud/match/whatWouldMend.ts';
import { EXAMPLE, layer, unified, withNut, withStack, withStud } from '../example.ts';

const sentences = (...args: Parameters<typeof whatWouldMend>) =>
  whatWouldMend(...args).map((mend) => mend.sentence);

describe('the stud a stack wants (the checks turned round)', () => {
  it('the stud a stack wants is what a hand calculation gives', () => {
    const P = 25.4 / 24;
    const wanted = studWanted(EXAMPLE);
    expect(wanted.threadStartMostMm).toBeCloseTo(3.2 - P - 0.35, 9);
    expect(wanted.threadEndLeastMm).toBeCloseTo(11.5 + P + 0.55, 9);
    expect(wanted.projectionMostMm).toBeCloseTo(39.75, 9);
    expect(wanted.pilotDiameterBelowMm).toBeCloseTo(8.382, 9);
  });
  it('a stud just within the wanted figures passes every length check, and one just outside does not', () => {
    const wanted = studWanted(EXAMPLE);
    const edge = {
      threadStartMm: wanted.threadStartMostMm,
      threadEndMm: wanted.threadEndLeastMm!,
      projectionMm: 20,
    };
    expect(checkStud(withStud(edge)).fits).toBe('yes');
    expect(checkStud(withStud({ ...edge, threadStartMm: edge.threadStartMm + 0.001 })).fits).not.toBe('yes');
    expect(checkStud(withStud({ ...edge, threadEndMm: edge.threadEndMm - 0.001 })).fits).not.toBe('yes');
  });
});

describe('what would mend it', () => {
  it('a stud that fits is offered no change', () => expect(whatWouldMend(EXAMPLE)).toEqual([]));
  it('a thread too short is offered one that reaches farther', () => {
    expect(sentences(withStud({ threadEndMm: 10 }))).toEqual([
      'A stud with the same thread, its last full thread at least 13.20 mm from the pad would fit.',
    ]);
  });
  it('a nut that stops before it clamps is offered a washer, or a thread that begins nearer', () => {
    expect(sentences(withStud({ threadStartMm: 2.5 }))).toEqual([
      'With a 1.00 mm washer under the nut, this stud would fit.',
      'With a 1.00 mm shim under every pad, this stud would fit.',
      'A stud with the same thread, its first full thread at most 1.70 mm from the pad would fit.',
    ]);
  });
  it('a nut of another thread is offered the right nut', () => {
    expect(sentences(withNut({ thread: unified(0.375, 16, '2B', 'UNC') }))[0]).toBe(
      'With a 0.375-24 UNF nut, this stud would fit.',
    );
  });
  it('a nut that strips is offered a taller one', () => {
    expect(sentences(withNut({ heightMm: 5 }))).toContain(
      'With a nut at least 8.20 mm high, this stud would fit.',
    );
  });
  // End wanted 3.2 + 12 + P + 0.55 = 16.81, there is 15: 1.81 less nut, 10.19, down to 10.1 (first principles).
  it('a thread that does not stand out of its nut is offered a thinner nut', () => {
    expect(sentences(withStud({ threadEndMm: 15 }, withNut({ heightMm: 12 })))).toContain(
      'With a nut at most 10.10 mm high, of the same strength, this stud would fit.',
    );
  });
  it('a stud that strikes is offered a shorter one, in inches', () => {
    expect(sentences(withStack({ tipRoomMm: 22 }), 'in')).toEqual([
      'A stud with the same thread, at most 0.855 in length from pad would fit.',
    ]);
  });
  // 1.9 − P of 1.5875 − 0.35 of tolerances is −0.04: the thread would have to begin behind the pad's face.
  it('a stud whose thread would begin behind the pad’s face is never offered where a washer helps', () => {
    const thread = unified(0.375, 16, '2A', 'UNC');
    const input = withStud(
      { thread, threadStartMm: 1, pilotDiameterMm: 7 },
      withNut({ thread: unified(0.375, 16, '2B', 'UNC') }, withStack({ layers: [layer(1.9)] })),
    );
    expect(sentences(input)).toEqual([
      'With a 1.50 mm washer under the nut, this stud would fit.',
      'With a 1.50 mm shim under every pad, this stud would fit.',
    ]);
  });
  it('a length that cannot exist is never offered, whatever the stud and the stack', () => {
    fc.assert(
      fc.property(
        fc.record({
          start: fc.double({ min: 0, max: 4, noNaN: true }),
          reach: fc.double({ min: 1, max: 25, noNaN: true }),
          plate: fc.double({ min: 0.8, max: 6, noNaN: true }),
          height: fc.double({ min: 0.6, max: 12, noNaN: true }),
          room: fc.double({ min: 1, max: 40, noNaN: true }),
          gap: fc.double({ min: 0, max: 6, noNaN: true }),
        }),
        ({ start, reach, plate, height, room, gap }) => {
          const stack = withStack({ layers: [layer(plate)], tipRoomMm: room });
          const lengths = {
            threadStartMm: start,
            threadEndMm: start + reach,
            projectionMm: start + reach + 1,
          };
          const input = { ...withStud(lengths, withNut({ heightMm: height }, stack)), pullForwardMm: gap };
          for (const said of sentences(input))
            expect(said).not.toMatch(/−|(?<!first full thread at )0\.00 mm/);
        },
      ),
      { numRuns: 100 },
    );
  });
  it('another hole circle is offered no change of the stud', () => {
    expect(whatWouldMend(withStack({ holeCircleDiameterMm: 300 }))).toEqual([]);
  });
  it('each short demo stud in its two-piece stack is offered a longer one', () => {
    const { entry } = demoStacks.find((one) => one.id === 'two-piece-four-3-8-24')!;
    const { stud } = demoStuds.find((one) => one.id === 'short-3-8-24')!.entry;
    const mends = whatWouldMend({ ...EXAMPLE, joint: null, ...entry, stud });
    expect(mends.map((mend) => [mend.fits, mend.sentence])).toContainEqual([
      'yes',
      'A stud with the same thread and at least 27.80 mm length from pad would fit.',
    ]);
  });
});
