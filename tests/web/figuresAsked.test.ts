import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listEntries } from '../../src/records/catalogue.ts';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { currentCriteria } from '../../src/records/shopCriteria.ts';
import { type Served, serve } from './program.ts';
import { saveLimits } from './steps.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const button = (html: string, name: string) =>
  new RegExp(`<button[^>]*name="set\\.${name.replaceAll('.', '\\.')}" value="([^"]*)"`).exec(html)?.[1];

const COVER = {
  name: 'Bench cover',
  make: 'stamped',
  sideWall: 'plain',
  studCount: '4',
  circle: '286',
  trackInner: '214',
  trackOuter: '264',
  nominal: '5',
};
const GAUGE = { name: 'Bench micrometer', gaugeKind: 'micrometer', coverage: '2' };

describe('a figure of a cover type or a gauge that looks like a slip', () => {
  it.each([
    ['family', 'circle', '11.25', '11.25 in'],
    ['family', 'circle', '28.6', '286 mm'],
    ['family', 'trackInner', '8.5', '8.5 in'],
    ['family', 'trackOuter', '2640', '264 mm'],
    ['family', 'nominal', '.197', '0.197 in'],
    ['family', 'boss', '3.5', '3.5 in'],
    ['family', 'padThickness', '0.4', '0.4 in'],
    ['family', 'yield', '2500', '250 MPa'],
    ['family', 'ringThickness', '.25', '0.25 in'],
    ['family', 'lim.leastOverallHeightMm', '5.84', '5.84 in'],
    ['family', 'lim.mostPilotClearanceMm', '0.006', '0.006 in'],
    ['gauge', 'resolution', '0.1', '0.01 mm'],
    ['gauge', 'calibration', '0.00015', '0.00015 in'],
    ['gauge', 'repeatability', '0.02', '0.002 mm'],
  ] as const)(
    'of a %s, %s %s mm, is asked about, with a button that has %s, until it is confirmed',
    async (kind, box, typed, meant) => {
      const more: Record<string, string> = box.startsWith('lim.') ? { 'lim.source': 'bench drawing' } : {};
      if (box === 'ringThickness') Object.assign(more, { ringInner: '236', ringOuter: '296' });
      const fields = {
        ...(kind === 'family' ? COVER : GAUGE),
        name: `Bench ${box}`,
        ...more,
        unit: 'mm',
        who: 'AB',
        why: 'new',
        [box]: typed,
      };
      const before = (await listEntries(program.shop.db, kind)).length;
      const asked = await program.post(`/catalogue/${kind}`, fields);
      expect(asked.status).toBe(422);
      expect(button(asked.html, box)).toBe(meant);
      expect((await listEntries(program.shop.db, kind)).length).toBe(before);
      // As typed it is no longer asked about; a cover that cannot be so is refused all the same.
      const sure = await program.post(`/catalogue/${kind}`, { ...fields, [`ok.${box}`]: typed });
      expect(button(sure.html, box)).toBeUndefined();
      if (kind === 'gauge') expect(sure.status).toBe(303);
    },
  );

  it('as it stands is not asked about again, and asked about once it is typed anew', async () => {
    const fields = { ...GAUGE, name: 'Old micrometer', resolution: '0.1', unit: 'mm', who: 'AB', why: 'new' };
    await program.post('/catalogue/gauge', { ...fields, 'ok.resolution': '0.1' });
    const kept = (await listEntries(program.shop.db, 'gauge')).find(({ name }) => name === fields.name)!;
    const again = { ...fields, from: String(kept.revision), note: 'lent out' };
    expect((await program.post(`/catalogue/gauge/${kept.id}`, again)).status).toBe(303);
    const anew = { ...again, from: String(kept.revision + 1), resolution: '0.2' };
    expect((await program.post(`/catalogue/gauge/${kept.id}`, anew)).status).toBe(422);
  });
});

describe('a figure of the shop’s limits that looks like a slip', () => {
  const LATHE = {
    leastRpm: '30',
    mostRpm: '800',
    cuttingSpeedMPerMin: '120',
    noseRadiusMm: '0.8',
    roughingLimitMm: '0.25',
    finishingCutMm: '0.1',
    roughingFeedMm: '0.15',
    finishingFeedMm: '0.1',
  };
  const HEAT = {
    heatShare: '50',
    slipTorque: '300',
    slipSpeed: '1000',
    slipTime: '0.6',
    conductivity: '51.9',
    density: '7870',
    specificHeat: '486',
  };
  it.each([
    ['protrusion', '15', {}, '1.5'],
    ['pilotLead', '.1', {}, '0.1 in'],
    ['noseRadiusMm', '8', LATHE, '0.8 mm'],
    ['roughingLimitMm', '.01', LATHE, '0.01 in'],
    ['finishingFeedMm', '1', LATHE, '0.1 mm'],
    ['massKg', '110', { gradeMmPerS: '6.3', speedRpm: '3000' }, '11 kg'],
    ['gradeMmPerS', '63', { massKg: '11', speedRpm: '3000' }, '6.3'],
    ['cuttingSpeedMPerMin', '460', LATHE, '460 ft/min'],
    ['density', '0.284', HEAT, '0.284 lb/in³'],
    ['density', '7.87', HEAT, '7.87 g/cm³'],
    ['specificHeat', '0.116', HEAT, '0.116 Btu/(lb·°F)'],
    ['conductivity', '30', HEAT, '30 Btu/(h·ft·°F)'],
    ['startTemperature', '200', HEAT, '200 °F'],
    ['minimum', '0.17', {}, '0.17 in'],
    ['runout', '0.004', {}, '0.004 in'],
  ] as const)('%s %s is asked about, and saved once confirmed', async (box, typed, more, meant) => {
    const { revision } = await currentCriteria(program.shop.db);
    const form: Record<string, string> = {
      shopName: 'Demo shop',
      allowance: '0.05',
      confidence: '95',
      protrusion: '1',
      start: '2',
      lengthUnit: 'mm',
      ...more,
      from: String(revision),
      who: 'TO',
      why: 'tried',
      [box]: typed,
    };
    const asked = await saveLimits(program, form);
    expect(asked.status).toBe(422);
    expect(button(asked.html, box)).toBe(meant);
    expect((await currentCriteria(program.shop.db)).revision).toBe(revision);
    const sure = await saveLimits(program, { ...form, [`ok.${box}`]: typed });
    expect([sure.status, (await currentCriteria(program.shop.db)).revision]).toEqual([303, revision + 1]);
  });
});

it('a limit that is refused has the button of the value meant, and nothing to confirm it with', async () => {
  const { revision } = await currentCriteria(program.shop.db);
  const asked = await saveLimits(program, {
    shopName: 'Demo shop',
    allowance: '0.05',
    confidence: '95',
    protrusion: '1',
    start: '2',
    lengthUnit: 'mm',
    young: '206',
    poisson: '0.29',
    liningModulus: '60',
    from: String(revision),
    who: 'TO',
    why: 'tried',
  });
  expect(asked.status).toBe(422);
  expect(asked.text).toContain('Young’s modulus is 206 MPa; it must be at least');
  expect(button(asked.html, 'young')).toBe('206000 MPa');
  expect(asked.text).toContain('Young’s modulus: 206 MPa? Did you mean 206000 MPa?');
  expect(asked.html).not.toContain('name="ok.young"');
});

describe('a figure of how a job is measured that looks like a slip', () => {
  const setUp = async (fields: Record<string, string>, section = 'setup') => {
    const job = (await getJob(program.shop.db, '1005'))!;
    const sent = { unit: 'mm', who: 'AK', why: 'set up', from: String(job.revision), ...fields };
    const answer = await program.post(`/jobs/1005/${section}`, sent);
    return { ...answer, moved: (await getJob(program.shop.db, '1005'))!.revision - job.revision };
  };

  it.each([
    ['gaugeStep', '0.2', '0.02 mm'],
    ['residual', '0.001', '0.001 in'],
    ['release', '0.03', '0.03 in'],
    ['k.padThicknessMm', '0.4', '0.4 in'],
    ['k.padsResurfacedMm', '0.02', '0.02 in'],
    ['k.crankPilotMm', '1.75', '1.75 in'],
    ['k.overallHeightMm', '5.86', '5.86 in'],
    ['k.padHeightsMm', '30.02; 3.001; 30.03; 30.01', '30.02; 30.01 mm; 30.03; 30.01'],
  ])('%s %s is asked about, and kept once confirmed', async (box, typed, meant) => {
    const asked = await setUp({ [box]: typed });
    expect([asked.status, asked.moved]).toEqual([422, 0]);
    expect(button(asked.html, box)).toBe(meant);
    const sure = await setUp({ [box]: typed, [`ok.${box}`]: typed });
    expect([sure.status, sure.moved]).toEqual([303, 1]);
    // What stands is not asked about at the next save of the form.
    expect((await setUp({ [box]: typed, gauge: `after ${box}` })).status).toBe(303);
  });

  it('a cut to try is held against the least cut that cleans up', async () => {
    const asked = await setUp({ cut: '3.1' }, 'plan');
    expect([asked.status, asked.moved]).toEqual([422, 0]);
    expect(asked.text).toContain('3.1 mm? Did you mean 0.31 mm?');
    expect((await setUp({ cut: '0.31' }, 'plan')).status).toBe(303);
  });
});

describe('a figure on the quick page that looks like a slip', () => {
  const WALLS = Object.fromEntries(Array.from({ length: 12 }, (_, i) => [`w.${i}`, '4.9']));
  const ask = (fields: Record<string, string>) =>
    program.get(
      `/cover?${new URLSearchParams({ unit: 'mm', family: '1125-4-plain', crack: 'none-found', ...WALLS, ...fields })}`,
    );

  it.each([
    ['gaugeStep', '0.2', '0.02 mm'],
    ['release', '.03', '0.03 in'],
    ['k.hubEngagementMm', '.3', '0.3 in'],
    ['cut', '.6', '0.06 mm'],
  ])('%s %s waits for an answer: the value meant, or as typed', async (box, typed, meant) => {
    const asked = await ask({ [box]: typed });
    expect(asked.html).toContain(`value="${box}=${meant}"`);
    expect(asked.text).toContain('Is that right?');
    expect(asked.text).not.toContain('at the thinnest station');
    const fixed = await ask({ [box]: typed, fix: `${box}=${meant}` });
    expect(fixed.text).not.toContain('Is that right?');
    const sure = await ask({ [box]: typed, [`ok.${box}`]: typed });
    expect(sure.text).not.toContain('Is that right?');
    expect(sure.html).toContain(`name="ok.${box}"`);
  });

  it('a cover of no type is asked about too', async () => {
    const own = {
      family: 'own',
      studs: '4',
      circle: '11.25',
      trackInner: '214',
      trackOuter: '264',
      nominal: '5',
    };
    const asked = await ask(own);
    expect(asked.html).toContain('value="circle=11.25 in"');
    const bent = await ask({ ...own, circle: '286', 'bend.pad': '0.94' });
    expect(bent.html).toContain('value="bend.pad=0.94 in"');
    expect(bent.text).toContain('Is that right?');
  });
});
