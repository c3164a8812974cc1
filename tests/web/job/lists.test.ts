import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { addEntry } from '../../../src/records/catalogue.ts';
import { createJob } from '../../../src/records/jobs/createJob.ts';
import { addReadings } from '../../../src/records/jobs/readings.ts';
import { csvOf } from '../../../src/web/request/csv.ts';
import { alder, as, received, wall } from '../../records/samples.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeEach(async () => {
  program = await serve({ demo: false });
});
afterEach(() => program.close());

/** The bytes as they leave, the mark at their head taken off, and what the headers say. */
async function list(path: string, headers: Record<string, string> = {}) {
  const answer = await fetch(program.url + path, { headers });
  const bytes = Buffer.from(await answer.arrayBuffer());
  return {
    status: answer.status,
    type: answer.headers.get('content-type'),
    file: answer.headers.get('content-disposition'),
    mark: [...bytes.subarray(0, 3)],
    lines: bytes.subarray(3).toString('utf8').trimEnd().split('\r\n'),
  };
}

/** What a cell of a simple line holds, by the name of its column. */
function cell(lines: readonly string[], row: number, column: string): string | undefined {
  return lines[row]?.split(',')[lines[0]?.split(',').indexOf(column) ?? -1];
}

describe('a list as CSV', () => {
  test('holds every reading a job ever had, with the unit in the name of the column', async () => {
    const { db } = program.shop;
    const job = await createJob(db, as('MH'), { received: received() });
    const first = wall('reading-1', { valueMm: 4.92 });
    await addReadings(db, as('AK'), { jobId: job.id, readings: [first] });
    await addReadings(db, as('BL'), {
      jobId: job.id,
      readings: [
        wall('reading-2', { valueMm: 4.87, typed: '4.87', replaces: 'reading-1' }),
        wall('reading-3', { kind: 'face', valueMm: -0.05, typed: '-0.05' }),
      ],
    });
    const { status, type, file, mark, lines } = await list('/jobs/1001/readings.csv');
    expect({ status, type, file, mark }).toEqual({
      status: 200,
      type: 'text/csv; charset=utf-8',
      file: 'attachment; filename="job-1001-readings.csv"',
      mark: [0xef, 0xbb, 0xbf],
    });
    expect(lines).toHaveLength(4);
    expect([1, 2, 3].map((row) => cell(lines, row, 'value (mm)'))).toEqual(['4.92', '4.87', '-0.05']);
    expect([1, 2, 3].map((row) => cell(lines, row, 'status'))).toEqual(['replaced', 'counts', 'counts']);
    expect([1, 2, 3].map((row) => cell(lines, row, 'who'))).toEqual(['AK', 'BL', 'BL']);
    // What was typed is text: a spreadsheet must not take it for a formula.
    expect(cell(lines, 3, 'as typed')).toBe("'-0.05");
  });

  test('is in inches for whoever reads inches', async () => {
    const { db } = program.shop;
    const job = await createJob(db, as('MH'), { received: received() });
    await addReadings(db, as('AK'), {
      jobId: job.id,
      readings: [wall('reading-1', { valueMm: 4.953, typed: '0.195 in' })],
    });
    await addEntry(db, as('BL'), { kind: 'family', id: 'alder', body: alder });
    const inches = { cookie: 'unit=in' };
    const readings = await list('/jobs/1001/readings.csv', inches);
    expect(cell(readings.lines, 1, 'value (in)')).toBe('0.195');
    const families = await list('/catalogue/family.csv', inches);
    expect(Number(cell(families.lines, 1, 'new wall (in)'))).toBeCloseTo(alder.nominalWallMm / 25.4, 9);
    expect(families.lines[0]).not.toMatch(/mm|MPa/);
  });

  test('holds all jobs, beyond one page, narrowed as the page is', async () => {
    const { db } = program.shop;
    for (let i = 0; i < 205; i++) {
      await createJob(db, as('MH'), {
        received: received({ customerReference: i === 7 ? 'quarry' : 'van' }),
      });
    }
    const all = await list('/jobs.csv');
    expect(all.lines).toHaveLength(206);
    expect(new Set(all.lines.slice(1).map((line) => line.split(',')[0])).size).toBe(205);
    const one = await list('/jobs.csv?text=quarry&stage=&after=');
    expect(one.lines).toHaveLength(2);
    expect(cell(one.lines, 1, 'customer reference')).toBe('quarry');
    expect((await list('/jobs.csv?stage=lost')).status).toBe(422);
    expect((await program.get('/jobs?text=quarry')).html).toContain('/jobs.csv?text=quarry');
  });

  test('holds a shelf of the catalog, retired entries too, and the page links to it', async () => {
    const { db } = program.shop;
    await addEntry(db, as('BL'), {
      kind: 'family',
      id: 'alder',
      body: { ...alder, name: '=HYPERLINK("x")' },
    });
    const families = await list('/catalogue/family.csv');
    expect(families.lines[0]).toContain('new wall (mm)');
    expect(families.lines[1]).toContain(`"'=HYPERLINK(""x"")"`);
    expect((await list('/catalogue/stud.csv')).lines).toHaveLength(1);
    expect((await list('/catalogue/stack.csv')).lines[0]).toContain('layer 1 thickness (mm)');
    expect((await list('/catalogue/gauge.csv')).lines[0]).toContain('expanded uncertainty U (mm)');
    expect((await list('/catalogue/nut.csv')).lines[0]).toContain('washer-face diameter (mm)');
    expect((await list('/catalogue/washer.csv')).lines[0]).toContain('inner diameter (mm)');
    for (const kind of ['family', 'stud', 'stack', 'nut', 'washer', 'gauge', 'steel', 'lining', 'lathe'])
      expect((await program.get(`/catalogue?shelf=${kind}`)).html).toContain(`href="/catalogue/${kind}.csv"`);
  });

  test.each(['=1+1', '+1', '-1', '@x', '\t=1', '\r=1', '＝1'])('never begins a formula with %j', (text) => {
    const [, line = ''] = csvOf([{ name: 'text', of: (row: string) => row }], [text]).split('\r\n');
    expect(line.replace(/^"/, '').startsWith("'")).toBe(true);
  });

  test('keeps quotes, commas and line ends inside their cell', () => {
    const text = csvOf([{ name: 'note', of: (row: string) => row }], ['a "b", c\nd']);
    expect(text).toBe('\ufeffnote\r\n"a ""b"", c\nd"\r\n');
  });
});
