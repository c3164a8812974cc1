import { afterAll, beforeAll, expect, test } from 'vitest';
import { recheckBending } from '../../src/shop/bending/recheckBending.ts';
import { recheckDecision } from '../../src/shop/recheck.ts';
import { ringedDecision, signedBefore } from '../records/jobs/ringed.ts';
import { expectSound } from '../views/markup.ts';
import { type Served, serve } from './program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: false });
});
afterAll(() => program.close());

test('the front page lists what was signed on a ring not recorded as joined, the worst first, until it is closed', async () => {
  expect((await program.get('/')).html).not.toContain('id="rings"');
  const { db } = program.shop;
  const mild = await signedBefore(db, { afterMm: 4.8 });
  const worse = await signedBefore(db, { afterMm: 4 });
  const page = await program.get('/');
  expectSound(page.html);
  expect(page.text).toMatch(
    new RegExp(
      `Job ${worse.number} , .*Without its ring: After the cut, friction-surface waviness is \\d+ % more .*Job ${mild.number} ,`,
    ),
  );

  const close = (word: string) => program.post(`/jobs/${worse.number}/ring-closed`, { who: 'CD', word });
  const empty = await close('');
  expect(empty.status).toBe(422);
  expect(empty.text).toContain('Say what was found or done about the ring before you close this.');
  expect((await close('Called back, ring cut off.')).status).toBe(303);
  const after = await program.get('/');
  expect(after.text).not.toContain(`Job ${worse.number} , `);
  expect(after.text).toContain(`Job ${worse.number} : Called back, ring cut off. (CD,`);
  expect(after.text).toContain(`Job ${mild.number} , `);
});

test('a decision that counted on such a ring says what today finds', async () => {
  const kept = ringedDecision(4, { afterMm: 4 });
  const bent = await recheckBending(kept, 'mm');
  expect(bent).toContain('The calculation has changed (plate-2 then, plate-3 now)');
  expect(bent).toContain('stiffness OK then and Not OK now');
  const planned = {
    ...kept,
    bending: { ...kept.bending!, welded: false },
    check: {
      ...kept.check,
      verdict: 'face-and-ring' as const,
      findings: [
        { ...kept.check.findings[0]!, status: 'fail' as const },
        { ...kept.check.findings[0]!, id: 'stiffness-with-ring' },
      ],
    },
    decision: 'face-and-ring' as const,
  };
  expect(recheckDecision(planned, 'mm')).toMatch(/verdict .* then and .* now/);
});
