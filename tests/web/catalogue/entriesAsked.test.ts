import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoNuts, demoWashers } from '../../../data/demo/nuts.ts';
import { demoStacks } from '../../../data/demo/stacks.ts';
import { demoStuds } from '../../../data/demo/studs.ts';
import { asTyped } from '../../../shared/quantity/fieldText.ts';
import { CATALOGUE_NUT, CATALOGUE_STUD, CATALOGUE_WASHER } from '../../../shared/words/fields/stud.ts';
import { listEntries } from '../../../src/records/catalogue.ts';
import { stackAsTyped } from '../../../src/web/stud/stackForm.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const STUD = { name: 'Bench stud', thread: '3/8-24', threadStart: '1', threadEnd: '23', projection: '24' };
const STACK = {
  name: 'Bench stack',
  'ln.0': 'plate',
  'lt.0': '3.2',
  'lh.0': '10.3',
  nutThread: '3/8-24',
  nutHeight: '8.3',
};
const ENTRIES: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  stud: { ...STUD, threadStart: '0.5' },
  stack: STACK,
  nut: { name: 'Bench nut', nutThread: '3/8-24', nutHeight: '8.3' },
  washer: { name: 'Bench washer', use: 'washer', inner: '10.5', outer: '20', thickness: '2' },
};
const SIGNED = { unit: 'mm', who: 'AB', why: 'new' };
const send = (kind: string, fields: Record<string, string>, id = '') =>
  program.post(`/catalogue/${kind}${id}`, { ...SIGNED, ...fields });
const button = (html: string, name: string) =>
  new RegExp(`<button[^>]*name="set\\.${name.replace('.', '\\.')}" value="([^"]*)"`).exec(html)?.[1];

describe('a figure in the catalog that looks like a slip', () => {
  it.each([
    ['stud', 'threadEnd', '.9', '0.9 in'],
    ['stud', 'projection', '240', '24 mm'],
    ['stud', 'projection', '0.95', '0.95 in'],
    ['stud', 'pilot', '80', '8 mm'],
    ['stud', 'pitchDiameter', '.345', '0.345 in'],
    ['stud', 'tolerance', '.01', '0.01 in'],
    ['stud', 'fillet', '.12', '0.12 in'],
    ['stack', 'nutHeight', '.328', '0.328 in'],
    ['stack', 'nutBearing', '.528', '0.528 in'],
    ['stack', 'nutTolerance', '.0085', '0.0085 in'],
    ['stack', 'washer', '.08', '0.08 in'],
    ['stack', 'lt.0', '.126', '0.126 in'],
    ['stack', 'lh.0', '.406', '0.406 in'],
    ['stack', 'lh.0', '103', '10.3 mm'],
    ['stack', 'lo.0', '.005', '0.005 in'],
    ['stack', 'lc.0', '.03', '0.03 in'],
    ['stack', 'holeCircle', '28.6', '286 mm'],
    ['stack', 'tipRoom', '1.5', '1.5 in'],
    ['stack', 'pull', '.16', '0.16 in'],
    ['stack', 'leastPull', '.125', '0.125 in'],
    ['stack', 'nutThread', '3/8-25', '3/8-24 UNF'],
    ['stack', 'nutThread', '9.45', '3/8-16 UNC'],
    ['stud', 'thread', '3/8-25', '3/8-24 UNF'],
    ['nut', 'nutHeight', '.328', '0.328 in'],
    ['nut', 'nutBearing', '.528', '0.528 in'],
    ['nut', 'nutThread', '3/8', '3/8-16 UNC'],
    ['washer', 'inner', '.406', '0.406 in'],
    ['washer', 'thickness', '.0625', '0.0625 in'],
  ])('of a %s, %s %s, is asked about, with a button that has %s', async (kind, box, typed, meant) => {
    const fields: Record<string, string> = { ...ENTRIES[kind], [box]: typed };
    if (box === 'projection' && typed === '0.95') fields.threadEnd = '.9';
    if (box === 'threadEnd') fields.projection = '24';
    const before = (await listEntries(program.shop.db, kind as 'stud')).length;
    const asked = await send(kind, fields);
    expect(asked.status).toBe(422);
    expect(button(asked.html, box)).toBe(meant);
    expect((await listEntries(program.shop.db, kind as 'stud')).length).toBe(before);
    expect(asked.text).toMatch(/Did you mean|It may be|usual are/);
  });

  const COVER = {
    name: 'Bench cover',
    studCount: '4',
    circle: '286',
    trackInner: '214',
    trackOuter: '264',
    nominal: '5',
    shopBy: 'AB',
    shopOn: '2026-11-24',
    makerSource: 'its sheet',
  };

  it.each([
    ['shopMinimum', '0.43', '4.3 mm'],
    ['makerMinimum', '0.43', '4.3 mm'],
    ['shopMinimum', '43', '4.3 mm'],
  ])('of a cover type, %s %s on a wall of 5 mm, is asked about', async (box, typed, meant) => {
    const { makerSource, ...shop } = COVER;
    const sent = { ...(box === 'makerMinimum' ? { ...shop, makerSource } : shop), [box]: typed };
    const asked = await send('family', sent);
    expect(asked.status).toBe(422);
    expect(button(asked.html, box)).toBe(meant);
  });

  it('of a cover type is kept as confirmed, and not asked about again', async () => {
    const { makerSource: _, ...sent } = { ...COVER, shopMinimum: '0.43', 'ok.shopMinimum': '0.43' };
    expect((await send('family', sent)).status).toBe(303);
    const entry = (await listEntries(program.shop.db, 'family')).find(({ name }) => name === 'Bench cover')!;
    expect(entry.body).toMatchObject({
      shopMinimumWallMm: 0.43,
      shopMinimumWallBy: 'AB',
      shopMinimumWallOn: '2026-11-24',
      shopMinimumWallSource: null,
    });
    const { 'ok.shopMinimum': _ok, ...again } = sent;
    expect((await send('family', { ...again, note: 'x', from: '1' }, `/${entry.id}`)).status).toBe(303);
  });

  it.each([
    ['2036-11-24', 'more than 5 years away'],
    ['2016-11-24', 'It is overdue'],
  ])('of a gauge, a calibration due %s, is asked about and kept once confirmed', async (due, says) => {
    const gauge = { name: `Gauge due ${due}`, gaugeKind: 'caliper', due };
    const asked = await send('gauge', gauge);
    expect([asked.status, asked.text.includes(says)]).toEqual([422, true]);
    expect(asked.html).toContain(`name="ok.due" value="${due}"`);
    expect((await send('gauge', { ...gauge, 'ok.due': due })).status).toBe(303);
  });

  it('is kept as confirmed, or as the button says', async () => {
    const confirmed = await send('stack', { ...STACK, nutHeight: '.328', 'ok.nutHeight': '.328' });
    expect(confirmed.status).toBe(303);
    const put = await send('stack', {
      ...STACK,
      name: 'Other',
      nutHeight: '.328',
      'set.nutHeight': '0.328 in',
    });
    expect(put.status).toBe(303);
    const [odd, right] = (await listEntries(program.shop.db, 'stack')).flatMap(({ body }) =>
      ['Bench stack', 'Other'].includes(body.name) ? [body.nut?.heightMm] : [],
    );
    expect([odd, right]).toEqual([0.328, 8.3312]);
  });

  it('is not asked about again where it stands as it was saved', async () => {
    const [kept] = (await listEntries(program.shop.db, 'stack')).filter(
      ({ body }) => body.nut?.heightMm === 0.328,
    );
    const again = await send(
      'stack',
      { ...STACK, nutHeight: '0.328', note: 'Measured twice', from: String(kept!.revision) },
      `/${kept!.id}`,
    );
    expect(again.status).toBe(303);
    const changed = await send(
      'stack',
      { ...STACK, nutHeight: '0.33', from: String(kept!.revision + 1) },
      `/${kept!.id}`,
    );
    expect([changed.status, button(changed.html, 'nutHeight')]).toEqual([422, '0.33 in']);
  });

  it.each(['mm', 'in'] as const)('is none in the whole demo shop, typed anew in %s', async (unit) => {
    const writing = { lengthUnit: unit, decimalSign: 'point' } as const;
    for (const { entry } of demoStacks) {
      const fields = { ...stackAsTyped(entry, writing), name: `${entry.name} ${unit}` };
      expect((await send('stack', { ...fields, unit })).status, entry.name).toBe(303);
    }
    for (const { entry } of demoStuds) {
      const fields = { ...asTyped(CATALOGUE_STUD, entry, writing), name: `${entry.name} ${unit}` };
      expect((await send('stud', { ...fields, unit })).status, entry.name).toBe(303);
    }
    for (const { entry } of demoNuts) {
      const fields = { ...asTyped(CATALOGUE_NUT, entry, writing), name: `${entry.name} ${unit}` };
      expect((await send('nut', { ...fields, unit })).status, entry.name).toBe(303);
    }
    for (const { entry } of demoWashers) {
      const fields = { ...asTyped(CATALOGUE_WASHER, entry, writing), name: `${entry.name} ${unit}` };
      expect((await send('washer', { ...fields, unit })).status, entry.name).toBe(303);
    }
  });
});
