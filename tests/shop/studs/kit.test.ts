import { describe, expect, it } from 'vitest';
import { demoNuts, demoWashers } from '../../../data/demo/nuts.ts';
import { demoStacks } from '../../../data/demo/stacks.ts';
import { demoStuds } from '../../../data/demo/studs.ts';
import { catalogueNutSchema, catalogueWasherSchema } from '../../../shared/schemas/catalogue.ts';
import type { CatalogueNut } from '../../../shared/words/catalogue.ts';
import type { Layer, StudCheckInput } from '../../../shared/words/stud/stud.ts';
import { checkStud } from '../../../src/calc/stud/checkStud.ts';
import { type KitShelf, kitFor } from '../../../src/shop/studs/kit.ts';

const SHELF: KitShelf = {
  nuts: demoNuts.map(({ id, entry }) => ({ id, body: entry })),
  washers: demoWashers.map(({ id, entry }) => ({ id, body: entry })),
};
const entryOf = <T extends { id: string }>(all: readonly T[], id: string) =>
  all.find((one) => one.id === id)!;
const HEX = entryOf(demoNuts, 'hex-nut-3-8-24').entry;

function question(stackId = 'two-piece-four-3-8-24', studId = 'long-3-8-24'): StudCheckInput {
  const { entry } = entryOf(demoStacks, stackId);
  return {
    stud: entryOf(demoStuds, studId).entry.stud,
    stack: entry.stack,
    nut: entry.nut,
    pullForwardMm: entry.pullForwardMm,
    criteria: { protrusionThreads: 1, startThreads: 2 },
    joint: null,
    coverStudCount: null,
    coverStudCircleDiameterMm: null,
  };
}
const kit = (input: StudCheckInput, shelf: KitShelf = SHELF) =>
  kitFor(input, checkStud(input, 'in'), shelf, 'in');
const nut = (change: Partial<CatalogueNut['nut']>): CatalogueNut => ({
  ...HEX,
  nut: { ...HEX.nut, ...change },
});
/** What is said of one nut alone on the shelf. */
const said = (body: CatalogueNut, input = question()) =>
  kit(input, { nuts: [{ id: 'it', body }], washers: [] }).nuts[0]!;

describe('the kit of a stud', () => {
  it('has the count of the stack’s holes and the nut of its thread; the others say why not', () => {
    const found = kit(question());
    expect(found).toMatchObject({ count: 4, nut: { id: 'hex-nut-3-8-24', fits: 'yes' }, missing: [] });
    expect(found.nuts).toHaveLength(demoNuts.length);
    expect(found.nuts.find(({ id }) => id === 'hex-nut-3-8-16')).toMatchObject({
      fits: 'no',
      otherThread: true,
      because: expect.stringContaining('does not go on a 3/8-24'),
    });
    expect(found.nuts.find(({ id }) => id === 'thin-nut-3-8-24')).toMatchObject({
      fits: 'no',
      because: 'Its tensile strength is 90.0 ksi; the stack’s nut has 130.0 ksi.',
    });
  });

  it('finds a nut for every stack of the demo', () => {
    for (const { id, entry } of demoStacks) {
      const slug = id.split('-').slice(3).join('-');
      expect(kit(question(id, `long-${slug}`)).nut?.entry.threadTyped, id).toBe(entry.nutThreadTyped);
    }
  });

  it('leaves the answer as it is where the catalog has no nuts, and says so', () => {
    const input = question();
    expect(kit(input, { nuts: [], washers: [] })).toMatchObject({
      nut: null,
      missing: ['The nut is not chosen from the shelf: the catalog has no nuts.'],
      input,
    });
  });

  it.each([
    ['a nut that does not lock', {}, { prevailing: true }, 'no', 'It does not lock'],
    ['one of lower proof stress', { proofMPa: 600 }, { proofMPa: 827 }, 'no', 'Its proof stress is 87.0 ksi'],
    [
      'one of no known class',
      { proofMPa: null },
      { proofMPa: 827 },
      'with-care',
      'Its proof stress is not known',
    ],
    ['a small washer face', { bearingOuterDiameterMm: 12.5 }, {}, 'no', 'Its washer face is 0.492 in across'],
    [
      'a face nobody measured',
      { bearingOuterDiameterMm: null },
      {},
      'with-care',
      'Its washer face is not known',
    ],
    ['a locking nut for a plain one', { prevailing: true }, {}, 'with-care', 'can’t be run on by hand'],
    ['a thin nut of soft steel', { heightMm: 7 }, {}, 'no', 'A thread would strip first'],
    [
      'a higher nut that is still held',
      { heightMm: 8.6, toleranceMm: 0.05 },
      {},
      'yes',
      '0.010 in taller than the stack’s nut',
    ],
    ['one so high that the thread does not come through', { heightMm: 16 }, {}, 'no', 'With this nut:'],
  ] as const)('%s', (_what, own, ofStack, fits, because) => {
    const input = question();
    const asked = { ...input, nut: { ...input.nut!, ...ofStack } };
    expect(said(nut(own), asked)).toMatchObject({ fits, because: expect.stringContaining(because) });
  });

  it('takes a thin nut with care that holds by the figures', () => {
    const because = expect.stringContaining('0.016 in thinner than the stack’s nut');
    expect(said(nut({ heightMm: 7.95, toleranceMm: 0.02 }))).toMatchObject({ fits: 'with-care', because });
  });

  it('takes what lies on the shelf before what is out of stock', () => {
    const nuts = [
      { id: 'gone', body: { ...HEX, name: 'A nut', stock: 0 } },
      { id: 'there', body: { ...HEX, name: 'B nut', stock: 4 } },
    ];
    expect(kit(question(), { nuts, washers: [] }).nut?.id).toBe('there');
  });

  it('brings washer and shims of the stack’s thickness whose hole the stud goes through, or says what is missing', () => {
    const input = question();
    const shim: Layer = {
      ...input.stack.layers[0]!,
      name: 'shim',
      kind: 'shim',
      thicknessMm: 0.76,
      toleranceMm: 0,
    };
    const asked = {
      ...input,
      nut: { ...input.nut!, washerMm: 1.6 },
      stack: { ...input.stack, layers: [shim, ...input.stack.layers] },
    };
    const found = kit(asked);
    expect(found.washer?.id).toBe('washer-3-8');
    expect(found.shims.map(({ id }) => id)).toEqual(['shim-3-8-or-m10-0.030-in']);
    const thick = { ...asked, stack: { ...asked.stack, layers: [{ ...shim, thicknessMm: 2 }] } };
    expect(kit(thick).missing.join(' ')).toContain('No shim of 0.079 in for 3/8-24');
  });

  it('passes over a nut with a figure that cannot be', () => {
    expect(kit(question(), { nuts: [{ id: 'it', body: nut({ heightMm: -1 }) }], washers: [] }).nuts).toEqual(
      [],
    );
  });
});

it('the demo’s nuts, washers and shims are as the catalog takes them', () => {
  for (const { entry } of demoNuts) expect(catalogueNutSchema.parse(entry)).toEqual(entry);
  for (const { entry } of demoWashers) expect(catalogueWasherSchema.parse(entry)).toEqual(entry);
});
