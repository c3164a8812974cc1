import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { getEntry, listEntries } from '../../../src/records/catalogue.ts';
import { formsIn } from '../boxes.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true, unit: 'in' });
});
afterAll(() => program.close());

/** The form of a page as it is shown, to be sent. */
async function shown(path: string, action: string): Promise<Record<string, string>> {
  const form = formsIn((await program.get(path)).html).find((one) => one.action === action);
  return Object.fromEntries((form?.boxes ?? []).map(({ name, value }) => [name, value]));
}

describe('one like this', () => {
  it('opens the form filled from the other, and is saved under a name of its own', async () => {
    const page = await program.get('/catalogue/stud/long-3-8-24');
    expect(page.html).toContain('href="/catalogue/stud/new?like=long-3-8-24"');
    const fields = await shown('/catalogue/stud/new?like=long-3-8-24', '/catalogue/stud');
    const other = (await getEntry(program.shop.db, 'stud', 'long-3-8-24'))!;
    expect(fields).toMatchObject({
      name: other.name,
      thread: other.body.threadTyped,
      stock: '',
      like: other.id,
    });
    const same = await program.post('/catalogue/stud', { ...fields, who: 'AK' });
    expect(same.status).toBe(422);
    expect(same.text).toContain('This is the name of the stud it was copied from. Give it another name.');
    const named = await program.post('/catalogue/stud', { ...fields, name: 'Long 3/8-24, blued', who: 'AK' });
    expect(named.status).toBe(303);
    const added = (await listEntries(program.shop.db, 'stud')).find(
      ({ name }) => name === 'Long 3/8-24, blued',
    )!;
    expect(added.body.stud).toEqual({ ...other.body.stud, pitchDiameterMeasuredMm: null });
    expect([added.revision, added.body.stock, other.revision]).toEqual([1, null, other.revision]);
  });

  it.each([
    ['family', '1125-4-plain', ['shopSource']],
    ['gauge', null, ['calibration', 'repeatability', 'due']],
  ] as const)('of a %s leaves out what is true of the other alone', async (kind, id, boxes) => {
    const of = id ?? (await listEntries(program.shop.db, 'gauge'))[0]!.id;
    const fields = await shown(`/catalogue/${kind}/new?like=${of}`, `/catalogue/${kind}`);
    expect(boxes.map((box) => fields[box] ?? '')).toEqual(boxes.map(() => ''));
    expect(fields.name).not.toBe('');
  });

  it('of nothing is no page', async () => {
    expect((await program.get('/catalogue/stud/new?like=none')).status).toBe(404);
  });
});

describe('where an entry is used', () => {
  it('a cover type, a stack, a stud and a gauge name their jobs, newest first', async () => {
    const family = await program.get('/catalogue/family/1125-4-plain');
    const used = family.text.slice(family.text.indexOf('Where it is used'));
    expect(used).toMatch(/5 jobs: Job 1018 Nov 19, 2026 Job 1006/);
    expect((await program.get('/catalogue/stack/two-piece-four-3-8-24')).text).toContain('1 job: Job 1005');
    expect((await program.get('/catalogue/stud/long-3-8-24')).text).toContain('1 job: Job 1005');
  });

  it('says so where nothing names it, and of one that is retired as before', async () => {
    const nut = (await listEntries(program.shop.db, 'nut'))[0]!;
    const none = (await program.get(`/catalogue/nut/${nut.id}`)).text;
    expect(none).toContain('No job and no counter slip names this nut.');
    await program.post('/catalogue/family/1125-4-plain/retire', { from: '1', why: 'no more', who: 'AK' });
    expect((await program.get('/catalogue/family/1125-4-plain')).text).toContain('5 jobs: Job 1018');
  });
});
