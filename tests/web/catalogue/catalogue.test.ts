import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getEntry, listEntries } from '../../../src/records/catalogue.ts';
import { currentCriteria } from '../../../src/records/shopCriteria.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: false });
});
afterAll(() => program.close());

const FAMILY = {
  name: 'Plover, four studs',
  make: 'stamped',
  sideWall: 'plain',
  studCount: '4',
  circle: '11 1/4 in',
  trackInner: '214',
  trackOuter: '264',
  nominal: '3/16 in',
  shopMinimum: '4.0',
  shopSource: 'AK, 12 May',
  who: 'AK',
};

describe('the catalog, by form', () => {
  it('adds a family in mixed units, then a revision of it; jobs and the first revision stay as they were', async () => {
    const added = await program.post('/catalogue/family', FAMILY);
    expect([added.status, added.location]).toEqual([303, '/catalogue?shelf=family']);
    const [entry] = await listEntries(program.shop.db, 'family');
    expect(entry?.body).toMatchObject({
      studCircleDiameterMm: 285.75,
      nominalWallMm: 4.7625,
      shopMinimumWallMm: 4,
    });

    const page = await program.get(`/catalogue/family/${entry!.id}`);
    expect(page.html).toMatch(/name="nominal"[^>]*value="4.7625"/);
    const changed = await program.post(`/catalogue/family/${entry!.id}`, {
      ...FAMILY,
      shopMinimum: '4.1',
      from: '1',
      why: 'two came back',
    });
    expect(changed.status).toBe(303);
    expect((await getEntry(program.shop.db, 'family', entry!.id, 1))?.body.shopMinimumWallMm).toBe(4);
    expect((await getEntry(program.shop.db, 'family', entry!.id))?.body.shopMinimumWallMm).toBe(4.1);
  });

  it('keeps what its bending needs in any unit, and the ring whole or not at all', async () => {
    const bending = {
      sideWallThickness: '4',
      seal: '64',
      hub: '48',
      lockUpPressure: '100 psi',
      yield: '320',
    };
    const named = { ...FAMILY, name: 'Widgeon, bent' };
    const half = await program.post('/catalogue/family', { ...named, ...bending, ringInner: '236' });
    expect(half.status).toBe(422);
    expect(half.text).toContain('Ring outer diameter is empty');
    const ring = { ringInner: '236', ringOuter: '296', ringThickness: '1/4 in' };
    expect((await program.post('/catalogue/family', { ...named, ...bending, ...ring })).status).toBe(303);
    const entry = (await listEntries(program.shop.db, 'family')).find(({ name }) => name === named.name)!;
    expect(entry.body).toMatchObject({
      sideWallMm: 4,
      pistonSealDiameterMm: 64,
      hubDiameterMm: 48,
      yieldMPa: 320,
      ring: { innerDiameterMm: 236, outerDiameterMm: 296, thicknessMm: 6.35 },
    });
    expect(entry.body.lockUpPressureMPa).toBeCloseTo(0.6895, 4);
    const page = await program.get(`/catalogue/family/${entry.id}`);
    expect(page.html).toMatch(/name="ringThickness"[^>]*value="6.35"/);
    expect(page.html).toMatch(/name="seal"[^>]*value="64"/);
    expect((await program.get('/catalogue/family.csv')).html).toContain('piston seal diameter (mm)');
    const slipped = await program.post('/catalogue/family', {
      ...named,
      ...bending,
      name: 'Slipped',
      sideWallThickness: '0.157',
      seal: '2.5',
      lockUpPressure: '1 bar',
    });
    expect(slipped.status).toBe(422);
    expect(slipped.text).toContain('Side wall thickness: 0.157 mm? Did you mean 0.157 in?');
    expect(slipped.text).toContain('Piston seal diameter: 2.5 mm? Did you mean 2.5 in?');
    expect(slipped.html).toMatch(/name="sideWallThickness"[^>]*aria-invalid="true"/);
    expect(slipped.html).toMatch(/name="seal"[^>]*aria-invalid="true"/);
    const psi = { ...named, ...bending, name: 'Slipped', lockUpPressure: '100' };
    expect((await program.post('/catalogue/family', psi)).text).toContain(
      'Lock-up pressure: 100 MPa? Did you mean 100 psi?',
    );
    const sure = { ...psi, 'ok.lockUpPressure': '100' };
    expect((await program.post('/catalogue/family', sure)).text).toContain('The lock-up pressure is 100 MPa');
    const past = await program.post('/catalogue/family', {
      ...named,
      name: 'Past',
      ringThickness: '6',
      ringInner: '236',
      ringOuter: '310',
      rim: '300',
    });
    expect(past.text).toContain('The ring outer diameter is 310 mm');
    expect(past.html).toMatch(/name="ringOuter"[^>]*aria-invalid="true"/);
  });

  it('answers a stale change with 409, keeps what was typed, and loses neither', async () => {
    const id = (await listEntries(program.shop.db, 'family'))[0]!.id;
    const stale = await program.post(`/catalogue/family/${id}`, {
      ...FAMILY,
      shopMinimum: '4.2',
      from: '1',
      why: 'mine',
    });
    expect(stale.status).toBe(409);
    expect(stale.html).toMatch(/name="shopMinimum"[^>]*value="4.2"/);
    expect((await getEntry(program.shop.db, 'family', id))?.body.shopMinimumWallMm).toBe(4.1);
  });

  it.each([
    ['no name', { name: '' }, 'Name is empty.'],
    ['no initials', { name: 'Other', who: '' }, 'Enter your initials'],
    [
      'a track turned inside out',
      { name: 'Other', trackInner: '264', trackOuter: '214' },
      'friction surface',
    ],
    ['a minimum without who set it', { name: 'Other', shopSource: '' }, 'The shop’s minimum wall of'],
    [
      'a maker’s figure without its source',
      { name: 'Other', makerMinimum: '4' },
      'The maker’s minimum wall of',
    ],
    ['zero studs', { name: 'Other', studCount: '0' }, 'stud'],
    ['words', { name: 'Other', nominal: 'thick' }, '"thick" is not a plain number'],
  ])('refuses a family with %s, and adds nothing', async (_what, change, sentence) => {
    const before = (await listEntries(program.shop.db, 'family')).length;
    const page = await program.post('/catalogue/family', { ...FAMILY, ...change });
    expect(page.status).toBe(422);
    expect(page.text).toContain(sentence);
    expect((await listEntries(program.shop.db, 'family')).length).toBe(before);
  });

  it('adds a stud and a stack, and finds the one for the other', async () => {
    const stud = await program.post('/catalogue/stud', {
      name: 'Plain 3/8',
      thread: '3/8-24 UNF-2A',
      threadStart: '1',
      threadEnd: '20',
      projection: '23',
      tolerance: '0.25',
      pilot: '8',
      tensile: '120 ksi',
      proof: '85 ksi',
      who: 'AK',
    });
    expect(stud.status).toBe(303);
    const stack = await program.post('/catalogue/stack', {
      name: 'Thin plate',
      'ln.0': 'plate',
      'lt.0': '1/8 in',
      'lo.0': '0.1',
      'lh.0': '10.3',
      nutThread: '3/8-24',
      nutHeight: '8.3',
      nutTolerance: '0.2',
      nutCountersink: '0.1',
      nutTensile: '827',
      tipRoom: '40',
      pull: '4',
      who: 'AK',
    });
    expect(stack.status).toBe(303);
    const [entry] = await listEntries(program.shop.db, 'stud');
    expect(entry?.body.stud.tensileMPa).toBeCloseTo(827.371, 2);
    const page = await program.get('/stud?stack=thin-plate');
    expect(page.text).toContain('Plain 3/8 fits');
  });

  it('retires an entry, with a reason, and puts it back', async () => {
    const id = (await listEntries(program.shop.db, 'stud'))[0]!.id;
    const retired = await program.post(`/catalogue/stud/${id}/retire`, {
      from: '1',
      who: 'AK',
      why: 'sold out',
    });
    expect(retired.status).toBe(303);
    expect(await listEntries(program.shop.db, 'stud')).toEqual([]);
    await program.post(`/catalogue/stud/${id}/reinstate`, { from: '2', who: 'AK', why: 'in again' });
    expect((await listEntries(program.shop.db, 'stud')).length).toBe(1);
  });

  it('has no page for another kind, and says what there is', async () => {
    const page = await program.get('/catalogue/gasket/new');
    expect(page.status).toBe(404);
    expect(page.text).toContain(
      'cover types, studs, flexplate stacks, nuts, washers, shims, gauges, steels, linings and lathes',
    );
  });
});

describe('the criteria', () => {
  const CRITERIA = {
    from: '0',
    shopName: 'Mill Row',
    minimum: '',
    allowance: '0.05',
    runout: '0.1',
    confidence: '95',
    typical: '0.25',
    protrusion: '1',
    start: '2',
    lengthUnit: 'mm',
    decimalSign: 'point',
    why: 'to begin with',
    who: 'BL',
  };

  it('are saved with who and why, refused when stale or nonsense, and shown on every page', async () => {
    expect((await program.post('/criteria', CRITERIA)).status).toBe(303);
    expect((await currentCriteria(program.shop.db)).body.confidence).toBe(0.95);
    expect((await program.get('/')).text).toContain('Mill Row');
    const stale = await program.post('/criteria', { ...CRITERIA, allowance: '0.08' });
    expect(stale.status).toBe(409);
    const nonsense = await program.post('/criteria', { ...CRITERIA, from: '1', confidence: '140' });
    expect(nonsense.status).toBe(422);
    expect((await currentCriteria(program.shop.db)).body.cleanUpAllowanceMm).toBe(0.05);
  });

  it('take a decimal comma, and refuse a point, once the shop writes so', async () => {
    expect(
      (await program.post('/criteria', { ...CRITERIA, from: '1', decimalSign: 'comma', why: 'as we write' }))
        .status,
    ).toBe(303);
    const page = await program.get(
      '/cover?family=own&studs=4&circle=286&trackInner=214&trackOuter=264&nominal=5&w.0=4,92&minimum=4.3',
    );
    expect(page.text).toContain('Did you mean 4,3?');
    expect(page.text).not.toContain('Did you mean 4.92?');
  });

  it('give back as typed what the shop takes for bending and heat, and refuse half of it', async () => {
    const begun = {
      ...CRITERIA,
      from: '2',
      decimalSign: 'comma',
      allowance: '0,05',
      runout: '0,1',
      typical: '0,25',
    };
    const half = await program.post('/criteria', { ...begun, liningModulus: '60', rippleOverNew: '0,9' });
    expect(half.status).toBe(422);
    expect(half.text).toContain('Young’s modulus is empty');
    const bending = { liningModulus: '60', young: '206000', poisson: '0,29', lockUpPressure: '7 bar' };
    const below = await program.post('/criteria', { ...begun, ...bending, rippleOverNew: '0,9' });
    expect(below.html).toMatch(/name="rippleOverNew"[^>]*aria-invalid="true"/);
    const inGPa = await program.post('/criteria', { ...begun, ...bending, young: '206' });
    expect(inGPa.status).toBe(422);
    expect(inGPa.text).toContain('Young’s modulus is 206 MPa; it must be at least 50000 MPa');
    expect(inGPa.html).toMatch(/name="young"[^>]*aria-invalid="true"/);
    const heat = {
      heatShare: '50',
      slipTorque: '300',
      slipSpeed: '1000',
      slipTime: '0,6',
      conductivity: '51,9',
      density: '7870',
      specificHeat: '486',
    };
    const saved = await program.post('/criteria', {
      ...begun,
      ...bending,
      ...heat,
      rippleOverNew: '1,25',
      why: 'bends',
    });
    expect(saved.status).toBe(303);
    const { body } = await currentCriteria(program.shop.db);
    expect(body.bending).toMatchObject({ poisson: 0.29, rippleOverNew: 1.25, peakOverNew: null });
    expect(body.bending?.lockUpPressureMPa).toBeCloseTo(0.7, 12);
    expect(body.heat).toMatchObject({ share: 0.5, slipTimeS: 0.6, startTemperatureC: null });
    const page = await program.get('/criteria');
    expect(page.html).toMatch(/name="heatShare"[^>]*value="50"/);
    expect(page.html).toMatch(/name="rippleOverNew"[^>]*value="1,25"/);
    expect(page.text).toContain('Maximum friction-surface waviness');
  });
});
