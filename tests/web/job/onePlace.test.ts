import { afterEach, describe, expect, it } from 'vitest';
import { getJob } from '../../../src/records/jobs/readJob.ts';
import type { Served } from '../program.ts';
import { measured, PLACES, readingsForm, shopWith, step } from '../steps.ts';

let program: Served;
afterEach(() => program.close());

interface Sent {
  readonly id: string;
  readonly angleDeg: number;
  readonly radiusMm: number;
  readonly valueMm: number;
  readonly pass?: 'before' | 'after';
}

/** Walls sent by a script. */
async function send(readings: readonly Sent[]): Promise<void> {
  const full = readings.map((one) => ({
    pass: 'before',
    kind: 'wall',
    typed: String(one.valueMm),
    gauge: '',
    doubtful: false,
    replaces: null,
    ...one,
  }));
  const answer = await fetch(`${program.url}/api/jobs/1001/readings`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ who: 'MH', readings: full }),
  });
  expect([answer.status, await answer.json()]).toMatchObject([200, {}]);
}

const decided = async () => (await getJob(program.shop.db, '1001'))!.sections.decision!.body;
/** The cell of a wall on the job's page. */
function cell(html: string, row: number): string {
  return new RegExp(`name="w\\.${row}"[^>]*value="([^"]*)"`).exec(html)?.[1] ?? '';
}

describe('a repeat', () => {
  it('sent at radius 110.0000000000001 stands in the table at the station at 110, and counts in the verdict and in what is decided', async () => {
    program = await shopWith();
    await measured(program);
    await send([{ id: 'repeat-by-a-script-1', angleDeg: 0, radiusMm: 110.0000000000001, valueMm: 4.0 }]);
    const page = await program.get('/jobs/1001');
    expect(cell(page.html, 0)).toBe('4.90; 4');
    expect(cell(page.html, 12)).toBe('');
    // (4.9 + 4.0) / 2 less the clean-up allowance of 0.05.
    expect(page.text).toContain('4.400 mm');
    const form = { decision: 'replace', reason: 'to see what it rests on' };
    expect((await step(program, 'decision', form)).status).toBe(303);
    const { input, check } = await decided();
    expect(input.stations).toHaveLength(12);
    expect(input.stations[0]!.wallMm).toEqual([4.9, 4]);
    expect(check.leastWall!.beforeMm).toBeCloseTo(4.45, 9);
  });

  it('at 359.9999999° is corrected in the cell it is shown in, and is one station on the measuring screen', async () => {
    program = await shopWith();
    await measured(program);
    await send([{ id: 'repeat-by-a-script-1', angleDeg: 359.9999999, radiusMm: 110, valueMm: 4.0 }]);
    const { html } = await program.get('/jobs/1001');
    const was = /name="was\.w\.0" value="([^"]*)"/.exec(html)![1]!;
    const corrected = {
      ...readingsForm('before', ['4.90; 4.88', ...PLACES.slice(1).map(() => '4.90')]),
      token: 'token-corrected',
      'was.w.0': was,
    };
    expect((await program.post('/jobs/1001/readings', corrected)).status).toBe(303);
    const job = (await getJob(program.shop.db, '1001'))!;
    const walls = job.readings.filter(
      ({ angleDeg, radiusMm, kind }) => radiusMm === 110 && angleDeg % 359 < 1 && kind === 'wall',
    );
    expect(walls.map(({ valueMm }) => valueMm).sort()).toEqual([4.88, 4.9]);
    const standing = await fetch(`${program.url}/jobs/1001/measure/standing`);
    const said = (await standing.json()) as { standing: { at: number }[] };
    expect(said.standing.every(({ at }) => at >= 0 && at < 12)).toBe(true);
    const history = await program.get('/jobs/1001/history');
    expect(history.text).toContain('Wall behind stud 1');
  });

  it('sent after the cut is compared, verified and guarded at that station', async () => {
    program = await shopWith();
    await measured(program);
    await step(program, 'decision', { decision: 'face' });
    await step(program, 'cuts', { depth: '0.05', look: 'gone' });
    await send(
      PLACES.map((place, i) => {
        const [angleDeg, radiusMm] = place.split('/').map(Number) as [number, number];
        return {
          id: `after-the-cut-by-script-${i}`,
          pass: 'after',
          angleDeg,
          radiusMm: radiusMm + 1e-13 * i,
          valueMm: 4.85,
        };
      }),
    );
    const page = await program.get('/jobs/1001');
    expect(page.text).toContain('Every station measured before the cut was measured again after it.');
    expect(page.text).toContain('Every wall is within 0.000 mm of what the cut should have left.');
    // Two at one station: their mean, 4.275, is below the minimum of 4.3, though neither 4.85 is.
    await send([
      { id: 'one-low-one-high-1', pass: 'after', angleDeg: 360, radiusMm: 110.0000000000001, valueMm: 3.7 },
    ]);
    const signed = await step(program, 'signature', { statement: 'all the same' });
    expect(signed.status).toBe(422);
    expect(signed.text).toContain('After the cut 4.275 mm of wall is left at the thinnest station');
  });
});

it('radii sent as inches times 25.4 make stations, are shown where they stand, and give an answer', async () => {
  program = await shopWith();
  await program.post('/jobs', { family: 'alder', receivedOn: '2026-11-24', who: 'MH' });
  await step(program, 'looked', { crackTest: 'none-found', crackMethod: 'dye' });
  const rings = [
    { inches: 4.331, angles: [0, 45, 90, 135, 180, 225, 270, 315] },
    { inches: 5.039, angles: [0, 90, 180, 270] },
  ];
  // The second reading of each is off by what adding up in inches leaves.
  await send(
    rings.flatMap(({ inches, angles }) =>
      angles.flatMap((angleDeg) => [
        {
          id: `inch-reading-${inches * 1000}-${angleDeg}-a`,
          angleDeg,
          radiusMm: inches * 25.4,
          valueMm: 4.9,
        },
        {
          id: `inch-reading-${inches * 1000}-${angleDeg}-b`,
          angleDeg,
          radiusMm: (inches - 0.1) * 25.4 + 0.1 * 25.4,
          valueMm: 4.92,
        },
      ]),
    ),
  );
  const page = await program.get('/jobs/1001');
  expect(Array.from({ length: 12 }, (_, i) => cell(page.html, i))).toEqual(PLACES.map(() => '4.9; 4.92'));
  expect(cell(page.html, 12)).toBe('');
  const form = { decision: 'replace', reason: 'to see what it rests on' };
  expect((await step(program, 'decision', form)).status).toBe(303);
  const { input } = await decided();
  expect(input.stations.map(({ wallMm }) => wallMm)).toEqual(PLACES.map(() => [4.9, 4.92]));
});

it('two places of one angle, a fifth of a millimeter apart, are one station: its wall is their mean', async () => {
  program = await shopWith();
  await measured(program);
  await send([{ id: 'a-fifth-further-out-1', angleDeg: 0, radiusMm: 110.2, valueMm: 4.8 }]);
  const page = await program.get('/jobs/1001');
  expect(cell(page.html, 0)).toBe('4.90; 4.8');
  expect(page.text).not.toContain('is at the same place as');
});
