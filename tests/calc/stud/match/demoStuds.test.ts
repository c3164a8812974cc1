import { describe, expect, it } from 'vitest';
import { demoFamilies } from '../../../../data/demo/families.ts';
import { demoStacks } from '../../../../data/demo/stacks.ts';
import { demoStuds } from '../../../../data/demo/studs.ts';
import { catalogueStackSchema, catalogueStudSchema } from '../../../../shared/schemas/catalogue.ts';
import { matchStuds } from '../../../../src/calc/stud/match/matchStuds.ts';

const CRITERIA = { protrusionThreads: 1, startThreads: 2 };

function matches(id: string) {
  const { entry } = demoStacks.find((one) => one.id === id)!;
  return matchStuds({
    studs: demoStuds.map((one) => ({ id: one.id, stud: one.entry.stud })),
    stack: entry.stack,
    nut: entry.nut,
    pullForwardMm: entry.pullForwardMm,
    criteria: CRITERIA,
    joint: null,
    coverStudCount: entry.stack.holeCount,
    coverStudCircleDiameterMm: entry.stack.holeCircleDiameterMm,
  });
}
/** The pair whose thread the stack's nut has. */
function pairOf(id: string) {
  const slug = id.split('-').slice(3).join('-');
  const found = matches(id);
  return {
    first: found[0]!,
    short: found.find((match) => match.id === `short-${slug}`)!,
    long: found.find((match) => match.id === `long-${slug}`)!,
    yeses: found.filter((match) => match.fits !== 'no').map((match) => match.id),
  };
}
const ids = (style: string) =>
  demoStacks.filter((one) => one.entry.stack.style === style).map((one) => one.id);

describe('the demonstration’s studs and stacks', () => {
  it('the demo has enough studs and stacks, each with a name of its own', () => {
    expect(demoStuds.length).toBeGreaterThanOrEqual(14);
    expect(demoStacks.length).toBeGreaterThanOrEqual(8);
    for (const list of [demoStuds, demoStacks]) {
      expect(new Set(list.map((one) => one.id)).size).toBe(list.length);
      expect(new Set(list.map((one) => one.entry.name)).size).toBe(list.length);
    }
  });
  it('the demo’s studs and stacks are taken by the catalog as they are', () => {
    for (const { entry } of demoStuds) expect(catalogueStudSchema.parse(entry)).toMatchObject(entry);
    for (const { entry } of demoStacks) expect(catalogueStackSchema.parse(entry)).toEqual(entry);
  });
  it('the demo’s studs and stacks say that they are invented, and none looks like a part number', () => {
    for (const { entry } of [...demoStuds, ...demoStacks]) {
      expect(entry.note).toContain('Invented');
      expect(entry.name).not.toMatch(/[A-Z]{2,}[-\s]?\d{3,}|\d{5,}/);
    }
  });
  it('a demo pair of studs differs only by 6.35 mm of pilot', () => {
    for (const long of demoStuds.filter((one) => one.id.startsWith('long-'))) {
      const short = demoStuds.find((one) => one.id === long.id.replace('long-', 'short-'))!;
      expect(long.entry.stud.projectionMm - short.entry.stud.projectionMm).toBeCloseTo(6.35, 9);
      expect({ ...long.entry.stud, projectionMm: 0 }).toEqual({ ...short.entry.stud, projectionMm: 0 });
    }
  });
  it('each demo stack has the holes of an invented cover family', () => {
    const circles = demoFamilies.map(({ family }) => `${family.studCount} on ${family.studCircleDiameterMm}`);
    for (const { entry } of demoStacks) {
      expect(circles).toContain(`${entry.stack.holeCount} on ${entry.stack.holeCircleDiameterMm}`);
    }
  });
});

describe('common practice, no source: which stud for which flexplate', () => {
  it.each(ids('one-piece'))('for the %s flexplate the short stud suits and comes first', (id) => {
    const { first, short, long } = pairOf(id);
    expect(first).toBe(short);
    expect([short.fits, short.check.headline]).toEqual(['yes', 'Fits: the nut starts by hand.']);
    expect([long.fits, long.decidedBy]).toEqual(['no', 'tipRoomMm']);
  });
  it.each(ids('two-piece'))(
    'for the %s flexplate the long stud comes first and fits; the short one is with care, for its pilot',
    (id) => {
      const { first, short, long, yeses } = pairOf(id);
      expect(first).toBe(long);
      expect([long.fits, long.check.reach.grade]).toEqual(['yes', 'starts-by-hand']);
      expect(long.check.findings.filter((one) => one.status !== 'pass').map((one) => one.id)).toEqual([
        'joint',
      ]);
      const cautions = short.check.findings.filter((one) => one.status === 'caution').map((one) => one.id);
      expect([short.fits, short.decidedBy, cautions]).toEqual([
        'with-care',
        'projectionMm',
        ['pilot-lines-up'],
      ]);
      expect(yeses).toEqual([long.id, short.id]);
      const gapMm = demoStacks.find((one) => one.id === id)!.entry.pullForwardMm!;
      expect([gapMm >= 25.4 / 8 - 1e-9, gapMm <= (25.4 * 3) / 16 + 1e-9]).toEqual([true, true]);
    },
  );
});
