import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findJobs } from '../../src/records/jobs/findJobs.ts';
import { DESK, openBrowser, openProgram, PHONE } from '../browser/browser.ts';
import { takeEvery } from './every.ts';

/** Takes the pictures of the README anew, from the demo shop; with `--all`, every screen and print into a folder. */
const folder = fileURLToPath(new URL('.', import.meta.url));
if (process.argv.includes('--all')) {
  const all = join(tmpdir(), 'coverwright-pictures');
  await takeEvery(all);
  console.log(`Contact sheets are in ${all}.`);
} else await takeReadme();

async function takeReadme(): Promise<void> {
  const program = await openProgram({ unit: 'in', publicUrl: 'http://coverwright.example:4180' });
  const browser = await openBrowser();

  const { jobs } = await findJobs(program.shop.db, { stage: 'to-decide', limit: 1 });
  const { jobs: waiting } = await findJobs(program.shop.db, { stage: 'to-measure', limit: 1 });
  const { jobs: signed } = await findJobs(program.shop.db, { stage: 'signed', outcome: 'face', limit: 1 });
  const shots = [
    { name: 'front', path: '/', view: DESK, high: 900 },
    { name: 'cover', press: '#way-example', path: '/', view: DESK, high: 1500 },
    { name: 'stud', path: '/stud', choose: true, view: DESK, high: 1250 },
    { name: 'job', path: `/jobs/${jobs[0]?.number}`, view: DESK, high: 1400 },
    { name: 'measuring', path: `/jobs/${waiting[0]?.number}/measure`, view: DESK, high: 1000 },
    {
      name: 'bending',
      path: `/jobs/${jobs[0]?.number}`,
      view: DESK,
      high: 1300,
      unfold: '#job-bending-drawings > summary',
      only: '#job-bending',
    },
    { name: 'sheet', path: `/jobs/${signed[0]?.number}/sheet`, view: DESK, high: 1400 },
    { name: 'phone', press: '#way-example', path: '/', view: PHONE, high: 1400 },
  ];
  for (const shot of shots) {
    const page = await browser.newPage({ viewport: { ...shot.view, height: shot.high } });
    await page.goto(program.url + shot.path, { waitUntil: 'networkidle' });
    if (shot.press) {
      await page.click(shot.press);
      await page.waitForLoadState('networkidle');
    }
    if (shot.choose) {
      const twoPiece = page.locator('#f-stack option', { hasText: 'Two-piece' }).first();
      await page.selectOption('#f-stack', (await twoPiece.getAttribute('value')) ?? '');
      await page.waitForSelector('#stud-head .verdict');
    }
    if (shot.unfold) {
      await page.$$eval('#decide details:is(.answer-row, .row-rest)', (rows) => {
        for (const row of rows)
          if (row.querySelector('#job-bending')) (row as HTMLDetailsElement).open = true;
      });
      await page.click(shot.unfold);
      await page.waitForLoadState('networkidle');
    }
    await page.evaluate(() => window.scrollTo(0, 0));
    const part = shot.only ? await page.locator(shot.only).boundingBox() : null;
    await page.screenshot({
      path: `${folder}${shot.name}.png`,
      ...(part && { clip: { ...part, height: Math.min(part.height, shot.high) }, fullPage: true }),
    });
    console.log(`${shot.name}.png`);
    await page.close();
  }
  await browser.close();
  await program.close();
}
