import { afterAll, beforeAll, expect, it } from 'vitest';
import { listEntries, typedIn } from '../../../src/records/catalogue.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: false });
});
afterAll(() => program.close());

const FAMILY = {
  name: 'Dunlin, four studs',
  studCount: '4',
  circle: '285.75',
  trackInner: '214',
  trackOuter: '264',
  nominal: '3/16 in',
  shopMinimum: '4.1',
  shopSource: 'AK, 12 May',
  who: 'AK',
};

/** A revision of the history, in words. */
async function told(page: string, revision: number): Promise<string> {
  const { html } = await program.get(page);
  const part = html.split(`id="revision-${revision}"`)[1]!.split('</li>')[0]!;
  return part
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll(/(&nbsp;|\s)+/g, ' ')
    .replaceAll(' ', ' ');
}

it('a wall typed as 3/16 in stays in the history beside 4.7625 mm, through changes of other things, and in the records', async () => {
  expect((await program.post('/catalogue/family', FAMILY)).status).toBe(303);
  const page = `/catalogue/family/${(await listEntries(program.shop.db, 'family'))[0]!.id}`;
  expect(await told(page, 1)).toContain('New wall — 4.7625 mm (typed 3/16 in)');
  expect(await told(page, 1)).not.toContain('(typed 4.1');

  // As the form shows it, but for the minimum: nobody typed the wall anew.
  const shown = { ...FAMILY, nominal: '4.7625', unit: 'mm' };
  await program.post(page, { ...shown, shopMinimum: '4.2', from: '1', why: 'two came back' });
  expect(await told(page, 2)).toContain('Shop’s minimum wall 4.1 mm 4.2 mm');
  expect(await told(page, 2)).not.toContain('New wall');

  // On a tablet set to inches: all others as its form shows them.
  const inches = { ...shown, circle: '11.25', trackInner: '214 mm', trackOuter: '264 mm' };
  const third = {
    ...inches,
    nominal: '0.187',
    shopMinimum: '4.2 mm',
    unit: 'in',
    from: '2',
    why: 'measured',
  };
  expect((await program.post(page, third)).status).toBe(303);
  expect(await told(page, 3)).toContain('New wall 4.7625 mm (typed 3/16 in) 4.7498 mm (typed 0.187 in)');
  expect(await told(page, 3)).toContain('1 field');
  const [entry] = await listEntries(program.shop.db, 'family');
  expect([...(await typedIn(program.shop.db, 'family', entry!.id))]).toEqual([
    [1, { nominalWallMm: { text: '3/16 in', bareUnit: null } }],
    [3, { nominalWallMm: { text: '0.187', bareUnit: 'in' } }],
  ]);
  expect(JSON.stringify(entry)).not.toContain('0.187');
});

it('a figure that looked like a slip and was confirmed says so in the history, for as long as it stands', async () => {
  const gauge = { name: 'Old caliper', gaugeKind: 'caliper', resolution: '0.1', coverage: '2', who: 'AK' };
  expect((await program.post('/catalogue/gauge', gauge)).status).toBe(422);
  expect((await program.post('/catalogue/gauge', { ...gauge, 'ok.resolution': '0.1' })).status).toBe(303);
  const { id } = (await listEntries(program.shop.db, 'gauge'))[0]!;
  const page = `/catalogue/gauge/${id}`;
  expect(await told(page, 1)).toContain('Resolution — 0.1 mm, asked about and confirmed');
  await program.post(page, { ...gauge, note: 'lent out', from: '1', why: 'lent' });
  expect(await told(page, 2)).not.toContain('Resolution');
  await program.post(page, { ...gauge, resolution: '0.02', from: '2', why: 'another' });
  expect(await told(page, 3)).toContain('Resolution 0.1 mm, asked about and confirmed 0.02 mm');
  expect([...(await typedIn(program.shop.db, 'gauge', id))]).toEqual([
    [1, { resolutionMm: { text: '', bareUnit: null, confirmed: true } }],
  ]);

  // In another unit than it is told in, it says both.
  const inches = { ...gauge, name: 'Old one', unit: 'in', resolution: '0.005', 'ok.resolution': '0.005' };
  expect((await program.post('/catalogue/gauge', inches)).status).toBe(303);
  const other = (await listEntries(program.shop.db, 'gauge')).find(({ name }) => name === 'Old one')!;
  expect(await told(`/catalogue/gauge/${other.id}`, 1)).toContain(
    '0.127 mm (typed 0.005 in), asked about and confirmed',
  );
});

const ALL: readonly (readonly [string, Record<string, string>, Record<string, string>])[] = [
  [
    'family',
    { name: 'Knot', studCount: '4', 'lim.source': 'the sheet', makerSource: 'the sheet', shopSource: 'AK' },
    {
      circle: '11 in',
      trackInner: '8 in',
      trackOuter: '10 in',
      nominal: '0.2 in',
      boss: '2 in',
      rim: '11.5 in',
      pad: '1.1 in',
      padThickness: '0.3 in',
      sideWallThickness: '0.19 in',
      seal: '2.5 in',
      hub: '1.9 in',
      lockUpPressure: '101 psi',
      ringInner: '8.1 in',
      ringOuter: '10.1 in',
      ringThickness: '0.25 in',
      'lim.leastPadThicknessMm': '0.22 in',
      'lim.padsCoplanarWithinMm': '0.004 in',
      'lim.leastPullForwardMm': '0.12 in',
      'lim.mostSideWallHeightMm': '1.2 in',
      makerMinimum: '0.16 in',
      shopMinimum: '0.17 in',
    },
  ],
  [
    'stud',
    { name: 'Knot stud', thread: '3/8-24 UNF-2A' },
    {
      threadStart: '0.04 in',
      threadEnd: '0.8 in',
      projection: '0.9 in',
      tolerance: '0.01 in',
      pilot: '0.31 in',
      tensile: '120 ksi',
      proof: '85 ksi',
      fillet: '0.03 in',
      pitchDiameter: '0.34 in',
    },
  ],
  [
    'stack',
    {
      name: 'Knot stack',
      'ln.0': 'plate',
      'ln.2': 'ring',
      nutThread: '3/8-24',
      makerTorqueSource: 'the book',
    },
    {
      'lt.0': '1/8 in',
      'lo.0': '0.005 in',
      'lh.0': '0.41 in',
      'lc.0': '0.02 in',
      'lt.2': '3/32 in',
      'lo.2': '0.006 in',
      holeCircle: '11 in',
      tipRoom: '1.6 in',
      nutHeight: '0.33 in',
      nutTolerance: '0.007 in',
      nutCountersink: '0.008 in',
      nutBearing: '0.55 in',
      nutProof: '90 ksi',
      nutTensile: '121 ksi',
      washer: '1/16 in',
      pull: '0.15 in',
      makerTorque: '25 lb-ft',
    },
  ],
  [
    'nut',
    { name: 'Knot nut', nutThread: '3/8-24 UNF-2B' },
    {
      nutHeight: '0.33 in',
      nutTolerance: '0.007 in',
      nutCountersink: '0.008 in',
      nutBearing: '0.55 in',
      nutProof: '90 ksi',
      nutTensile: '121 ksi',
    },
  ],
  [
    'washer',
    { name: 'Knot shim', use: 'shim' },
    { inner: '0.41 in', outer: '0.8 in', thickness: '1/16 in', tolerance: '0.002 in' },
  ],
  [
    'gauge',
    { name: 'Knot gauge' },
    { resolution: '0.0001 in', calibration: '0.0002 in', repeatability: '0.00015 in' },
  ],
  [
    'steel',
    { name: 'Knot steel', source: 'its certificate', poisson: '0.29' },
    {
      young: '29700 ksi',
      yield: '46 ksi',
      conductivity: '26 Btu/(h·ft·°F)',
      density: '0.283 lb/in³',
      specificHeat: '0.116 Btu/(lb·°F)',
    },
  ],
  ['lining', { name: 'Knot lining', source: 'its data sheet' }, { liningModulus: '221000 psi/in' }],
  [
    'lathe',
    { name: 'Knot lathe', source: 'its manual', leastRpm: '45', mostRpm: '1150' },
    {
      cuttingSpeedMPerMin: '480 ft/min',
      noseRadiusMm: '0.031 in',
      roughingLimitMm: '0.009 in',
      finishingCutMm: '0.004 in',
      roughingFeedMm: '0.0075 in',
      finishingFeedMm: '0.0035 in',
    },
  ],
  [
    'criteria',
    {
      from: '0',
      shopName: 'Mill Row',
      confidence: '95',
      protrusion: '1',
      start: '2',
      why: 'to begin with',
      leastRpm: '30',
      mostRpm: '400',
      cuttingSpeedMPerMin: '60',
      liningModulus: '60',
      young: '206000',
      poisson: '0.29',
      heatShare: '50',
      slipSpeed: '1000',
      slipTime: '0.6',
      conductivity: '51.9',
      density: '7870',
      specificHeat: '486',
    },
    {
      minimum: '0.169 in',
      allowance: '0.002 in',
      runout: '0.003 in',
      typical: '0.01 in',
      studLean: '0.011 in',
      studOff: '0.012 in',
      studProof: '30 lb-ft',
      noseRadiusMm: '1/32 in',
      roughingLimitMm: '0.021 in',
      finishingCutMm: '0.0045 in',
      roughingFeedMm: '0.0075 in',
      finishingFeedMm: '0.0035 in',
      lockUpPressure: '102 psi',
      ringRunout: '0.0055 in',
      slipTorque: '221 lb-ft',
    },
  ],
];

it.each(ALL)(
  'every length, torque and pressure typed for a %s is in its history',
  async (kind, plain, typed) => {
    const more: Record<string, string> = kind === 'criteria' ? { shims: '0.4; 0.0065 in; 0.0095 in' } : {};
    const path = kind === 'criteria' ? '/criteria' : `/catalogue/${kind}`;
    const sent = await program.post(path, { ...plain, ...typed, ...more, who: 'AK' });
    expect(sent.status).toBe(303);
    const entry = (await listEntries(program.shop.db, kind as 'stud')).find(
      ({ name }) => name === (plain.name ?? plain.shopName),
    )!;
    const history = await told(kind === 'criteria' ? path : `${path}/${entry.id}`, 1);
    const missing = Object.values(typed).filter((text) => !history.includes(`(typed ${text})`));
    expect(missing).toEqual([]);
    expect(history.split('(typed ').length - 1).toBe(
      Object.keys(typed).length + (kind === 'criteria' ? 2 : 0),
    );
    if (kind === 'criteria')
      expect(history).toContain('0.1651 mm (typed 0.0065 in); 0.2413 mm (typed 0.0095 in); 0.4 mm');
  },
);
