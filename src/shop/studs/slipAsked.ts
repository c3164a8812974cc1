import type { SlipSent } from '../../../shared/schemas/slip.ts';
import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import { JOINT } from '../../../shared/words/fields/joint.ts';
import { CATALOGUE_STACK } from '../../../shared/words/fields/stud.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { CounterSlip } from '../../../shared/words/stud/slip.ts';
import { getEntry, listEntries } from '../../records/catalogue.ts';
import type { Db } from '../../records/database/database.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import { figuresDoubted } from '../doubts/figuresDoubted.ts';
import { counterSlip } from './counterSlip.ts';
import { studsHeld } from './onShelf.ts';
import { gapTypedExpected, jointExpected } from './studsExpected.ts';

/**
 * The slip of a question in plain numbers, under the rule of the page: none while anything is refused or in doubt, or no
 * thread is known. Throws a Refusal that names each place.
 */
export async function slipAsked(
  db: Db,
  asked: SlipSent,
): Promise<{ readonly slip: CounterSlip; readonly studId: string }> {
  const stack = await stackAsked(db, asked);
  refuseDoubts(asked, stack);
  const { body: criteria } = await currentCriteria(db);
  const { pullForwardMm, joint, studId, torqueFrom } = asked;
  const question = { stack, pullForwardMm, joint, criteria, unit: criteria.lengthUnit };
  const studs = await listEntries(db, 'stud');
  if (studId !== null && !studs.some(({ id }) => id === studId))
    throw new Refusal('no-stud', [
      { path: 'studId', message: `There is no stud "${studId}" in the catalog.` },
    ]);
  const { choices, shown, faults } = studsHeld(studs, question, studId ?? undefined);
  if (faults.length > 0) throw new Refusal('wrong-values', faults);
  const answered = studId === null ? shown : choices.find(({ match }) => match.id === studId);
  if (!answered)
    throw new Refusal('no-stud', [
      {
        path: studId === null ? 'stackId' : 'studId',
        message: 'No stud could be checked. Correct the catalog.',
      },
    ]);
  const shelf = { nuts: await listEntries(db, 'nut'), washers: await listEntries(db, 'washer') };
  return {
    slip: counterSlip(question, answered, choices, torqueFrom, shelf),
    studId: answered.match.id,
  };
}

async function stackAsked(db: Db, { stackId }: SlipSent): Promise<CatalogueStack> {
  const entry = await getEntry(db, 'stack', stackId);
  const refused = (message: string) => new Refusal('no-stack', [{ path: 'stackId', message }]);
  if (entry === null || entry.retired)
    throw refused(`There is no flexplate stack "${stackId}" in the catalog.`);
  if (entry.body.nut?.thread == null)
    throw refused(
      'The nut thread of this stack is not known, so no stud can be named. Enter it in the catalog.',
    );
  return entry.body;
}

function refuseDoubts({ pullForwardMm, joint, confirmed }: SlipSent, stack: CatalogueStack): void {
  const { makerTorqueNm } = stack;
  const thread = stack.nut?.thread?.designation ?? '';
  const doubts = [
    ...figuresDoubted(
      { pullForwardMm: CATALOGUE_STACK.pullForwardMm },
      { pullForwardMm },
      { pullForwardMm: gapTypedExpected(stack.pullForwardMm) },
      '',
    ),
    ...(joint ? figuresDoubted(JOINT, joint, jointExpected({ thread, makerTorqueNm }), 'joint') : []),
  ];
  const faults = doubts
    .filter(({ path }) => !confirmed.includes(path))
    .map(
      ({ path, question }): Fault => ({
        path,
        message: `${question} If it is right, name ${path} in confirmed.`,
      }),
    );
  if (faults.length > 0) throw new Refusal('wrong-values', faults);
}
