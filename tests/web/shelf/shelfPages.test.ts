import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { goMetric } from '../metric.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true, publicUrl: 'http://shop.invalid:8080' });
  await goMetric(program.shop.db);
});
afterAll(() => program.close());

const send = (number: string, fields: Readonly<Record<string, string>>) =>
  program.post(`/shelf/${number}`, { who: 'AA', ...fields });
const put = (number: string, lies = 'rack B') => send(number, { what: 'put', from: '0', lies });

describe('the shelf', () => {
  it('is empty until a cover is put there, and says how', async () => {
    const { status, text } = await program.get('/shelf');
    expect(status).toBe(200);
    expect(text).toContain('Nothing on the shelf yet');
    expect((await program.get('/shelf?family=1125-4-billet')).text).toContain('No such cover on the shelf');
  });

  it('takes a measured cover from its job, with where it lies', async () => {
    expect((await program.get('/jobs/1005')).html).toContain('action="/shelf/1005"');
    const nowhere = await put('1005', '');
    expect(nowhere.status).toBe(422);
    expect(nowhere.text).toContain('Enter where the cover lies');
    expect(await put('1005')).toMatchObject({ status: 303, location: '/shelf/1005' });
    const job = await program.get('/jobs/1005');
    expect(job.text).toContain('On the shelf at rack B');
    expect(job.html).not.toContain('id="put-form"');
    const { text } = await program.get('/shelf');
    expect(text).toContain('1 cover, best first');
    expect(text).toContain('1125-4 billet');
    expect(text).toContain('Long stud 3/8-24 UNF');
  });

  it('takes none that is to be replaced, or that nobody measured', async () => {
    expect((await put('1003')).text).toContain('A crack was found in it. It can’t be put on the shelf.');
    expect((await put('1002')).text).toContain('The decision is to replace it.');
    expect((await put('1017')).text).toContain('No wall of it is measured.');
    expect((await program.get('/jobs/1017')).html).not.toContain('id="put-form"');
  });

  it('reserves for one job at a time: a second tablet gets 409 with both', async () => {
    const first = await send('1005', { what: 'reserved', from: '1', forJob: '1017' });
    expect(first.status).toBe(303);
    const second = await send('1005', { what: 'reserved', from: '1', forJob: '1016', who: 'BB' });
    expect(second.status).toBe(409);
    expect(second.text).toContain('Theirs: Reserved for job 1017. Yours, not saved: reserved for job 1016.');
    expect((await program.get('/jobs/1017')).text).toContain('Reserved for this job: the cover of job 1005');
    expect((await program.get('/shelf')).text).toContain('Reserved for job 1017.');
  });

  it('asks about a slip, refuses what can’t be read, and keeps what was typed', async () => {
    const slipped = await program.get('/shelf?wall=42&unit=mm');
    expect(slipped.status).toBe(422);
    expect(slipped.text).toContain('Did you mean 4.2');
    const wrong = await program.get('/shelf?wall=thick&sure=3&unit=mm');
    expect(wrong.status).toBe(422);
    expect(wrong.html).toContain('value="thick"');
    expect(wrong.text).toContain('How sure: enter 50 % to 99.99 %');
    expect((await program.get('/shelf?wall=5.3&unit=mm')).text).toContain('5.300 mm is asked for');
  });

  it('has a tag whose code opens its place, and a CSV', async () => {
    const tag = await program.get('/shelf/1005/tag');
    expect(tag.html).toContain('QR code leading to http://shop.invalid:8080/shelf/1005');
    expect(tag.text).toContain('rack B');
    expect((await program.get('/shelf.csv')).text).toContain('1005,Check first,Reserved for job 1017.');
    expect((await program.get('/shelf/1001/tag')).status).toBe(404);
  });

  it('lets a cover go with a reason, and forgets nothing', async () => {
    expect((await send('1005', { what: 'off', from: '2', why: '' })).text).toContain('Enter why');
    expect((await send('1005', { what: 'off', from: '2', why: 'went out with 1017' })).status).toBe(303);
    const { text } = await program.get('/shelf/1005');
    expect(text).toContain('not on the shelf');
    expect(text).toContain('Taken off the shelf. went out with 1017');
    expect(text).toContain('Put on the shelf, at rack B.');
    expect((await program.get('/shelf')).text).toContain('Nothing on the shelf yet');
  });
});
