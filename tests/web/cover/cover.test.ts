import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findJobs } from '../../../src/records/jobs/findJobs.ts';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import { goMetric } from '../metric.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
  await goMetric(program.shop.db);
});
afterAll(() => program.close());

const ask = (fields: Record<string, string>) =>
  program.get(`/cover?${new URLSearchParams({ family: 'metric-4', ...fields })}`);

/** Design page 6, 10.2, first set, as typed: computed by an independent second implementation, not published. */
const FIRST_SET: Record<string, string> = Object.fromEntries(
  [
    ['4.92', '0.06', '0.20'],
    ['4.90', '0.05', ''],
    ['4.86', '0.01', '0.12'],
    ['4.83', '-0.02', ''],
    ['4.80', '-0.05', '0.25'],
    ['4.81', '-0.04', ''],
    ['4.85', '0', '0.10'],
    ['4.90', '0.04', ''],
    ['4.93', '0.07', '0.10'],
    ['4.86', '0.01', '0.05'],
    ['4.79', '-0.06', '0.15'],
    ['4.85', '0', '0.05'],
  ].flatMap(([wall, face, mark], i) => [
    [`w.${i}`, wall!],
    [`f.${i}`, face!],
    [`d.${i}`, mark!],
  ]),
);

describe('a cover, quickly', () => {
  it('answers the first set as the design does: dial 0.42, 4.50 left', async () => {
    const page = await ask({ ...FIRST_SET, crack: 'none-found' });
    expect(page.status).toBe(200);
    expect(page.text).toContain('Face it: 0.42 mm.');
    expect(page.text).toContain('leaves 4.500 mm at the thinnest station');
    expect(page.text).toContain('Before the cut the face tilts 0.132 mm across the friction surface');
  });

  it('says how the heat marks lie, as advice, and nothing where none was read', async () => {
    const says =
      'Heat marks are deepest behind the studs on the inner row: 100 % above the mean of 0.084 mm.';
    expect((await ask(FIRST_SET)).text).toContain(says);
    const unmarked = Object.fromEntries(Object.entries(FIRST_SET).filter(([name]) => !name.startsWith('d.')));
    expect((await ask(unmarked)).text).not.toContain('Heat marks are');
  });

  it('gives the same answer in inches, printed in inches', async () => {
    const inches = Object.fromEntries(
      Object.entries(FIRST_SET).map(([name, mm]) => [name, mm === '' ? '' : `${mm} mm`]),
    );
    const page = await ask({ ...inches, unit: 'in', crack: 'none-found' });
    expect(page.text).toContain('leaves 0.1772 in at the thinnest station');
  });

  it.each([
    ['words', { 'w.0': 'about five' }, 'Wall at station 1: "about five" is not a plain number.'],
    ['a wrong unit', { 'w.0': '4.9 psi' }, 'psi is a unit of pressure or stress, and this is a length'],
    [
      'a negative wall',
      { 'w.0': '-4.9' },
      'The wall at station 1, reading 1, is −4.9 mm; it must be more than 0 mm',
    ],
    ['no wall left to speak of', { 'w.0': '0' }, 'The wall at station 1, reading 1, is 0 mm'],
    ['a decimal comma', { 'w.0': '4,92' }, 'Did you mean 4.92?'],
    [
      'a mark deeper than the wall',
      { 'w.0': '4.9', 'd.0': '5' },
      'The heat mark at station 1 is 5 mm deep, but the wall there is only 4.9 mm',
    ],
    [
      'heights at some stations',
      { 'w.0': '4.9', 'f.0': '0.1', 'w.1': '4.9' },
      'The indicator reading at station 2 is missing',
    ],
    ['a mark where no wall was read', { 'd.0': '0.1' }, 'Wall at station 1 is empty.'],
    [
      'a place given twice',
      { 'w.0': '4.9', 'a.12': '0', 'r.12': '110', 'w.12': '4.9' },
      'Station 2 is at the same place as station 1',
    ],
    ['a cut below nothing', { 'w.0': '4.9', cut: '-1' }, 'The planned cut is −1 mm'],
    ['markup', { 'w.0': '<script>alert(1)</script>' }, 'is not a plain number'],
  ])(
    'refuses %s in one sentence, keeps what was typed and saves nothing',
    async (_what, fields, sentence) => {
      const before = (await findJobs(program.shop.db, { limit: 200 })).jobs.length;
      const page = await ask(fields);
      expect(page.status).toBe(422);
      expect(page.text).toContain(sentence);
      for (const [name, typed] of Object.entries(fields)) {
        const escaped = typed.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
        expect(page.html).toMatch(
          new RegExp(`name="${name.replace('.', '\\.')}"[^>]*value="${escaped.replace(/[()]/g, '\\$&')}"`),
        );
      }
      expect(page.html).not.toContain('<script>alert');
      expect((await findJobs(program.shop.db, { limit: 200 })).jobs.length).toBe(before);
    },
  );

  it('takes at most 400 stations, and says so', async () => {
    const many: Record<string, string> = {};
    for (let i = 0; i < 500; i++)
      Object.assign(many, { [`a.${i}`]: String(i * 0.7), [`r.${i}`]: '110', [`w.${i}`]: '4.9' });
    const page = await ask(many);
    expect(page.status).toBe(422);
    expect(page.text).toContain('500 were sent; at most 400 can be taken at once');
  });

  it('asks about a slipped decimal, does not count it, and takes the confirmation', async () => {
    const asked = await ask({ ...FIRST_SET, 'w.3': '0.483' });
    expect(asked.text).toContain('0.483 mm? Did you mean 4.83 mm?');
    expect(asked.text).toContain('Is that right?');
    expect(asked.text).not.toContain('Replace it.');
    const mended = await ask({ ...FIRST_SET, 'w.3': '0.483', fix: 'w.3=4.83 mm', crack: 'none-found' });
    expect(mended.text).toContain('Face it: 0.42 mm.');
    const confirmed = await ask({ ...FIRST_SET, 'w.3': '0.483', 'ok.w.3': '0.483' });
    expect(confirmed.text).not.toContain('Did you mean');
    expect(confirmed.text).toContain('Replace it.');
  });

  it.each([
    ['an indicator reading of 0.6 for 0.06', { 'f.0': '0.6' }, 'Indicator reading at station 1:', '0.06 mm'],
    ['a heat mark of 2 for 0.2', { 'd.0': '2' }, 'Heat mark depth at station 1:', '0.2 mm'],
    [
      'repeats of 4.968 and 4.698',
      { 'w.0': '4.968; 4.698', gaugeSpread: '0.003' },
      'Wall at station 1:',
      '4.968; 4.968 mm',
    ],
    ['a minimum wall of 0.43', { minimum: '0.43' }, 'Minimum wall:', '4.3 mm'],
    ['a runout limit of 1.3', { runout: '1.3' }, 'Runout allowed after the cut:', '0.13 mm'],
  ])(
    'asks about %s, offers what was probably meant, and takes either answer',
    async (_, slip, label, meant) => {
      const asked = await ask({ ...FIRST_SET, ...slip });
      expect(asked.text).toContain(label);
      expect(asked.text).toContain('Is that right?');
      expect(asked.html).toContain(`>Use ${meant}<`);
      const [name, typed] = Object.entries(slip)[0]!;
      const used = await ask({ ...FIRST_SET, ...slip, fix: `${name}=${meant}` });
      expect(used.text).not.toContain('Did you mean');
      const confirmed = await ask({ ...FIRST_SET, ...slip, [`ok.${name}`]: typed });
      expect(confirmed.text).not.toContain('Did you mean');
    },
  );

  it('fixes no field but the one the question was about', async () => {
    const page = await ask({ ...FIRST_SET, fix: 'minimum=0' });
    expect(page.text).toContain('the shop’s minimum of 4.300 mm');
  });

  it('keeps a check as a job once, with readings as typed, however often it is sent', async () => {
    const fields = {
      family: 'metric-4',
      unit: 'mm',
      ...FIRST_SET,
      cut: '0.45',
      crack: 'none-found',
      initials: 'AK',
      jobNumber: 'Q-1',
    };
    const first = await program.post('/cover/keep', fields);
    expect([first.status, first.location]).toEqual([303, '/jobs/Q-1']);
    const again = await program.post('/cover/keep', fields);
    expect([again.status, again.location]).toEqual([303, '/jobs/Q-1']);
    const job = await getJob(program.shop.db, 'Q-1');
    expect(job?.readings.filter((one) => one.kind === 'wall').map((one) => one.typed)).toEqual(
      Array.from({ length: 12 }, (_, i) => FIRST_SET[`w.${i}`]),
    );
    expect(job?.readings.filter((one) => one.kind === 'mark').length).toBe(8);
    expect(job?.sections.plan?.body).toEqual({ plannedCutMm: 0.45, typed: '0.45' });
  });

  it('says what the cut does elsewhere where it was asked, and keeps that with the job', async () => {
    const round = {
      release: '0.8',
      'k.endPlayMm': '0.9',
      'k.endPlayMm.most': '0.6',
      'k.padsResurfacedMm': '0.3',
    };
    const page = await ask({ ...FIRST_SET, ...round, 'k.pullForwardMm': '4' });
    // Dialled 0.42: 0.80 + 0.42; and 4 + 0.3. First principles.
    expect(page.text).toContain(
      'release clearance grows to 1.220 mm. A shim or lining 0.42 mm thicker restores it.',
    );
    expect(page.text).toContain('End play is 0.900 mm, above the maximum of 0.600 mm');
    expect(page.text).toContain('The pull-forward gap will be 4.300 mm');
    const wrong = await ask({ ...FIRST_SET, 'k.endPlayMm': 'some', 'k.padThicknessMm': '-3' });
    expect(wrong.status).toBe(422);
    expect(wrong.html).toMatch(/id="f-k-endPlayMm-error"|id="f-k\.endPlayMm-error"/);
    const fields = {
      family: 'metric-4',
      unit: 'mm',
      ...FIRST_SET,
      ...round,
      initials: 'AK',
      jobNumber: 'Q-2',
    };
    expect((await program.post('/cover/keep', fields)).status).toBe(303);
    const setup = (await getJob(program.shop.db, 'Q-2'))?.sections.setup?.body;
    expect(setup?.releaseClearanceMm).toBe(0.8);
    expect(setup?.knockOn?.endPlayMm).toEqual({ mm: 0.9, leastMm: null, mostMm: 0.6 });
  });

  it('keeps nothing without initials, without readings, or with a reading in doubt', async () => {
    const whole = { family: 'metric-4', unit: 'mm', ...FIRST_SET, initials: 'AK' };
    const count = async () => (await findJobs(program.shop.db, { limit: 200 })).jobs.length;
    const before = await count();
    for (const [fields, sentence] of [
      [{ ...whole, initials: '' }, 'Enter your initials'],
      [{ family: 'metric-4', unit: 'mm', initials: 'AK' }, 'Nothing is measured yet'],
      [{ ...whole, 'w.0': '49.2' }, 'Did you mean 4.92 mm?'],
    ] as const) {
      const page = await program.post('/cover/keep', fields);
      expect(page.status).toBe(422);
      expect(page.text).toContain(sentence);
    }
    expect(await count()).toBe(before);
  });
});

describe('a cover of dimensions of one’s own', () => {
  it('lays out its stations once the dimensions are whole', async () => {
    const part = await ask({ family: 'own', studs: '3', circle: '240' });
    expect(part.text).toContain('Which cover is it?');
    const whole = await ask({
      family: 'own',
      studs: '3',
      circle: '240',
      trackInner: '180',
      trackOuter: '220',
      nominal: '4.5',
    });
    expect(whole.text).toContain('between studs 3 and 1');
    expect(whole.text).toContain('Measure it.');
  });
});
