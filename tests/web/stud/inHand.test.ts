import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoStuds } from '../../../data/demo/studs.ts';
import { type Served, serve } from '../program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

const measure = (fields: Record<string, string>) =>
  program.get(`/stud/stacks?${new URLSearchParams({ stud: 'own', unit: 'in', thread: '', ...fields })}`);
const href = (html: string, id: string) =>
  (new RegExp(`id="${id}"[^>]*href="([^"]*)"`).exec(html)?.[1] ?? '').replaceAll('&amp;', '&');
const FINE = { major: '.373', over: '.417', projection: '1.19' };

describe('a stud and a caliper', () => {
  it('gives the thread, its twins, the stud of the shelf, and each flexplate stack with that stud', async () => {
    const page = await measure(FINE);
    expect(page.status).toBe(200);
    expect(page.text).toContain('Thread: 3/8-24 UNF');
    expect(page.text).toMatch(/Easy to mistake for: M10×1/);
    expect(page.text).toContain('go/no-go gauge, or a nut you know, by hand');
    expect(page.text).toMatch(/The M10×1 nut goes onto the 3\/8-24 UNF stud about \d threads, then binds\./);
    // 1.195 in the catalog.
    expect(page.text).toMatch(/Long stud 3\/8-24 UNF like yours Yours: 0\.005 in shorter/);
    expect(page.text).toContain('Long stud 3/8-24 UNF fits 1 of 12 flexplate stacks.');
    const stud = await program.get(href(page.html, 'stack-two-piece-four-3-8-24'));
    expect(stud.text).toContain('Long stud 3/8-24 UNF fits: the nut starts by hand');
    const slip = await program.get(href(page.html, 'slip-stack-two-piece-four-3-8-24'));
    expect([slip.status, slip.text]).toEqual([200, expect.stringContaining('4 × Long stud 3/8-24 UNF')]);
  });

  it.each(demoStuds.map(({ id, entry }) => [id, entry.stud] as const))(
    'tells %s from what it measures',
    async (id, { thread, projectionMm, pilotDiameterMm }) => {
      const [major, pitch] =
        thread.system === 'unified'
          ? [thread.majorInch * 25.4, 25.4 / thread.threadsPerInch]
          : [thread.majorMm, thread.pitchMm];
      const page = await measure({
        unit: 'mm',
        major: (major - 0.12).toFixed(2),
        over: (10 * pitch + 0.06).toFixed(2),
        projection: (projectionMm + 0.05).toFixed(2),
        pilot: (pilotDiameterMm! - 0.02).toFixed(2),
      });
      expect(page.status, page.text.slice(0, 400)).toBe(200);
      expect(/id="shelf-([\w-]+)"/.exec(page.html)?.[1]).toBe(id);
      // Ten pitches of M8×1.25 and of 5/16-20 UN are 0.2 mm apart, no more than a caliper at a crest.
      expect(page.html.includes('id="thread-5-16-20-un"')).toBe(id.endsWith('-m8'));
      expect(page.html.includes('id="stacks-found"')).toBe(!id.endsWith('-m8'));
    },
  );

  it('with the diameter alone names the threads it may be, and each leads on', async () => {
    const page = await measure({ major: '.372', projection: '1.19' });
    expect(page.text).toContain('5 threads it may be: measure over ten threads, or choose');
    expect(page.html).not.toContain('id="stacks-found"');
    const chosen = await program.get(href(page.html, 'thread-3-8-24-unf'));
    expect(chosen.text).toContain('Long stud 3/8-24 UNF fits');
  });

  it('says so where no thread measures like that, and what to look at', async () => {
    const page = await measure({ unit: 'mm', major: '6.9', over: '8' });
    expect(page.text).toContain('No standard thread measures like this. Count the gaps');
    expect(page.text).toContain('M7×0.75: diameter within its class; pitch off by 0.050 mm.');
  });

  it('names nothing as like it where the length is that of no stud', async () => {
    const page = await measure({ ...FINE, projection: '1.08' });
    expect(page.text).toContain('None on the shelf is like it; nearest first');
    expect(page.html).not.toContain('id="stacks-found"');
  });

  it('keeps gap and torque with the stud, in every stack and on its slip', async () => {
    const joint = { torque: '27', engine: '180', kFrom: 'zinc', torqueFrom: 'maker' };
    const page = await measure({ ...FINE, pull: '.15', ...joint });
    const path = href(page.html, 'stack-two-piece-four-3-8-24');
    const stud = await program.get(path);
    expect(stud.html).toMatch(/name="pull"[^>]*value="\.15"/);
    expect(stud.html).toMatch(/name="torque"[^>]*value="27"/);
    expect(stud.text).toContain('27.0 lb·ft is the vehicle maker’s figure');
    const slip = await program.get(path.replace('/stud?', '/stud/slip?'));
    expect(slip.text).toContain('Pull-forward gap 0.150 in, measured');
    const back = await program.get(href(stud.html, 'other-stacks'));
    expect(back.html).toMatch(/name="pull"[^>]*value="\.15"/);
    expect(back.html).toMatch(/name="torque"[^>]*value="27"/);
  });

  it('goes along where it is measured in full: checked beside the shelf, with a slip of its own', async () => {
    const whole = {
      thread: '3/8-24',
      threadStart: '.04',
      threadEnd: '.905',
      projection: '1.3',
      pilot: '.315',
    };
    const page = await measure({ ...whole, pull: '.16' });
    expect(page.text).toMatch(/Stud in hand fits \d+ of 12 flexplate stacks/);
    const path = href(page.html, 'stack-two-piece-four-3-8-24');
    const stud = await program.get(path);
    expect(stud.text).toContain('The stud in hand is checked too: 3/8-24 UNF-2A, length from pad 1.300 in.');
    expect(stud.html).toMatch(/<h1[^>]*>Stud in hand fits/);
    expect(stud.html).toContain('id="stud-own"');
    expect(stud.html).toMatch(/<input type="hidden" name="threadEnd" value="\.905"/);
    const slip = await program.get(path.replace('/stud?', '/stud/slip?'));
    expect(slip.text).toContain('4 × Stud in hand');
  });

  it('refuses a thread that is not the one measured', async () => {
    const page = await measure({ ...FINE, thread: 'M10x1' });
    expect(page.status).toBe(422);
    expect(page.text).toContain('The diameter and length measured are not those of M10×1-6g.');
  });

  it('understands 3/8 fine, and asks about 3/8, 9.45 and 3/8-25 with buttons', async () => {
    expect((await measure({ thread: '3/8 fine', projection: '1.19' })).text).toContain(
      'Long stud 3/8-24 UNF fits',
    );
    for (const [typed, first] of [
      ['3/8', '3/8-16 UNC'],
      ['9.45', '3/8-16 UNC'],
      ['3/8-25', '3/8-24 UNF'],
    ] as const) {
      const page = await measure({ thread: typed, projection: '1.19' });
      expect([typed, page.status]).toEqual([typed, 422]);
      expect(page.html).toContain(`name="set.thread" value="${first}"`);
      expect(page.html).not.toContain('id="slip-');
    }
    const chosen = await measure({ thread: '3/8-25', 'set.thread': '3/8-24 UNF', projection: '1.19' });
    expect(chosen.text).toContain('Long stud 3/8-24 UNF fits');
    const sure = await measure({ thread: '3/8-25', 'ok.thread': '3/8-25', projection: '1.19' });
    expect([sure.status, sure.text]).toEqual([
      200,
      expect.stringContaining('No stud in the catalog has this thread'),
    ]);
  });
});
