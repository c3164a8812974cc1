import { describe, expect, it } from 'vitest';
import { demoStacks } from '../../../data/demo/stacks.ts';
import { demoStuds } from '../../../data/demo/studs.ts';
import type { Entry } from '../../../shared/words/catalogue.ts';
import type { ShelfAsked, ShelfFacts } from '../../../shared/words/shelf.ts';
import type { OnShelf } from '../../../src/records/shelf/shelfChanges.ts';
import { shelfRanked } from '../../../src/shop/shelf/shelfRanked.ts';
import { alder, criteria } from '../../records/samples.ts';

const studs = demoStuds.find(({ id }) => id === 'short-3-8-24')!;
const facts: ShelfFacts = {
  jobRevision: 1,
  allowanceMm: 0.05,
  family: alder, // its own minimum, 4.3 mm
  wallsAre: 'measured',
  wallsMm: [4.6, 4.55],
  errors: { commonMm: 0.01, ownMm: [0, 0] },
  signed: true,
  studs: null,
  resurfacedMm: 0,
  crankPilotMm: 45,
  against: null,
};
const cover = (jobNumber: string, more: Partial<ShelfFacts> = {}, forJob: string | null = null): OnShelf => ({
  jobId: Number(jobNumber),
  jobNumber,
  jobRevision: 1,
  familyId: 'alder',
  place: 1,
  what: 'put',
  at: '2026-11-24T12:00:00.000Z',
  who: 'AB',
  why: '',
  lies: 'rack B',
  forJob,
  facts: { ...facts, ...more },
});
const ASKED: ShelfAsked = {
  familyId: null,
  stackId: null,
  crankPilotMm: null,
  leastWallMm: null,
  sure: null,
};
const ranked = (
  covers: readonly OnShelf[],
  asked: Partial<ShelfAsked> = {},
  stack: Entry<'stack'> | null = null,
) => shelfRanked(covers, { ...ASKED, ...asked }, { criteria, stack, unit: 'mm' });
const stackNamed = (id: string): Entry<'stack'> => {
  const { entry } = demoStacks.find((one) => one.id === id)!;
  return {
    kind: 'stack',
    id,
    revision: 1,
    at: '',
    who: '',
    why: '',
    name: entry.name,
    retired: false,
    body: entry,
  };
};

// Plain comparison with the shop's figures (first principles): minimum 4.3, usual cut 0.25, 95 % required.
describe('the shelf held against an order', () => {
  it('takes the thinnest station, the cuts left above the minimum, and how sure that is', async () => {
    const [one] = await ranked([cover('1')]);
    // (4.55 − 4.30)/0.25 is one more cut.
    expect(one).toMatchObject({ wallLeftMm: 4.55, wantedMm: 4.3, cutsLeft: 1, will: 'yes' });
    expect(one!.sure).toBeCloseTo(1, 6);
    expect(one!.reasons).toEqual(['4.550 mm of wall left; 4.300 mm is the minimum.']);
  });

  it('says best first: what will do before what is to be checked, free before reserved, signed, then thickest', async () => {
    const found = await ranked([
      cover('1', {}, '9'),
      cover('2', { signed: false }),
      cover('3', { wallsMm: [4.5], errors: { commonMm: 0.01, ownMm: [0] } }),
      cover('4'),
      cover('5', { wallsMm: [4.2], errors: null }),
      cover('6', { wallsAre: 'to-cut' }),
      cover('7', { against: 'crack' }),
    ]);
    expect(found.map(({ jobNumber, will }) => `${jobNumber} ${will}`)).toEqual([
      '4 yes',
      '3 yes',
      '2 yes',
      '6 with-care',
      '1 with-care',
      '7 no',
      '5 no',
    ]);
  });

  it('an order for more wall, or for more confidence, is what each is held against', async () => {
    const [thin] = await ranked([cover('1')], { leastWallMm: 4.6 });
    expect(thin).toMatchObject({ will: 'no', wantedMm: 4.6 });
    expect(thin!.reasons[0]).toBe('4.550 mm of wall left; 4.600 mm is asked for.');
    // Less than the minimum is never enough.
    expect((await ranked([cover('1')], { leastWallMm: 4 }))[0]!.wantedMm).toBe(4.3);
    // One error common to both, 0.03: Φ(0.05/0.03) = 0.9522 (standard normal table, 1.67 → 0.9525).
    const doubt = { errors: { commonMm: 0.03, ownMm: [0, 0] } };
    const [enough] = await ranked([cover('1', doubt)], { leastWallMm: 4.5 });
    expect(enough!.sure).toBeCloseTo(0.9522, 3);
    expect(enough!.will).toBe('yes');
    const [unsure] = await ranked([cover('1', doubt)], { leastWallMm: 4.5, sure: 0.99 });
    expect(unsure!.reasons[0]).toBe('Only 95.2 % sure of it; 99 % is required.');
    expect(unsure!.will).toBe('no');
  });

  it('what nobody knows is to be checked: no gauge figures, no crank pilot measured', async () => {
    const [unknown] = await ranked([cover('1', { errors: null, crankPilotMm: null })], { crankPilotMm: 45 });
    expect(unknown!.will).toBe('with-care');
    expect(unknown!.reasons.join(' ')).toContain('no gauge figures are entered');
    expect(unknown!.reasons.join(' ')).toContain('crank pilot is not measured');
    expect((await ranked([cover('1')], { crankPilotMm: 45.08 }))[0]!.will).toBe('yes');
    expect((await ranked([cover('1')], { crankPilotMm: 45.2 }))[0]!.will).toBe('no');
  });

  it('its studs are held against the stack; without studs only their number and circle are', async () => {
    const with4 = { family: { ...alder, studCircleDiameterMm: 285.75 } };
    const stack = stackNamed('one-piece-four-3-8-24');
    const short = { ...with4, studs: { id: studs.id, stud: studs.entry } };
    expect((await ranked([cover('1', short)], {}, stack))[0]!.will).toBe('yes');
    expect((await ranked([cover('1', with4)], {}, stack))[0]!.will).toBe('with-care');
    const six = await ranked([cover('1', { family: { ...alder, studCount: 6 } })], {}, stack);
    expect(six[0]!.reasons[0]).toContain('has 4 holes; the cover has 6 studs');
  });

  it('only covers of the type that is asked for are listed', async () => {
    expect(await ranked([cover('1')], { familyId: 'other' })).toEqual([]);
    expect(await ranked([])).toEqual([]);
  });
});
