import { demoCriteria } from '../../../data/demo/criteria.ts';
import { demoNuts } from '../../../data/demo/nuts.ts';
import { demoStacks } from '../../../data/demo/stacks.ts';
import { demoStuds } from '../../../data/demo/studs.ts';
import { addEntry, getEntry } from '../../../src/records/catalogue.ts';
import type { Db } from '../../../src/records/database/database.ts';
import type { NewSlip, PrintSlip } from '../../../src/records/slips/slips.ts';
import { counterSlip } from '../../../src/shop/studs/counterSlip.ts';
import { studsHeld } from '../../../src/shop/studs/onShelf.ts';
import { as } from '../samples.ts';

const STACK_ID = 'two-piece-four-3-8-24';
export const STUD_ID = 'long-3-8-24';
export const NUT_ID = 'hex-nut-3-8-24';

const entryOf = <T extends { id: string }>(all: readonly T[], id: string) =>
  all.find((one) => one.id === id)!;

/** What the counter answers for the two-piece flexplate of the demo. */
function answered() {
  const { entry: stack } = entryOf(demoStacks, STACK_ID);
  const studs = demoStuds.map(({ id, entry }) => ({ id, body: entry }));
  const question = { stack, pullForwardMm: 4, joint: null, criteria: demoCriteria, unit: 'in' as const };
  const { shown, choices } = studsHeld(studs, question, STUD_ID);
  const nuts = demoNuts.map(({ id, entry }) => ({ id, body: entry }));
  return counterSlip(question, shown!, choices, null, { nuts, washers: [] });
}

let sent = 0;

export function newSlip(change: Partial<NewSlip> = {}): NewSlip {
  return {
    sentId: `sample-00000000-${sent++}`,
    day: '2026-11-24',
    customerReference: 'Demo customer 12',
    asked: {
      stackId: STACK_ID,
      studId: STUD_ID,
      typed: { stack: STACK_ID, stud: STUD_ID, pull: '4' },
      unit: 'in',
    },
    answered: answered(),
    calcVersion: 'sample-1',
    ...change,
  };
}

export const print: PrintSlip = ({ number, who }) => ({
  html: `<p>Slip S-${number} by ${who}</p>`,
  parts: [{ hash: 'c'.repeat(64), kind: 'css', base64: 'cHt9' }],
});

/** The stud and the nut of the slip, with so many on the shelf (null: nobody counts), where there are none yet. */
export async function stockShelf(db: Db, stock: number | null, ofNuts: number | null = stock): Promise<void> {
  if ((await getEntry(db, 'stud', STUD_ID)) !== null) return;
  const stud = entryOf(demoStuds, STUD_ID).entry;
  const nut = entryOf(demoNuts, NUT_ID).entry;
  await addEntry(db, as('AA'), { kind: 'stud', id: STUD_ID, body: { ...stud, stock } });
  await addEntry(db, as('AA'), { kind: 'nut', id: NUT_ID, body: { ...nut, stock: ofNuts } });
}
