import { writeLength } from '../../../shared/quantity/writeQuantity.ts';
import type { NextPass } from '../../../shared/words/afterCut.ts';
import type { Entry } from '../../../shared/words/catalogue.ts';
import type { Job, Pass } from '../../../shared/words/job.ts';
import { slipName } from '../../../shared/words/stud/slip.ts';
import { FOLLOWS } from '../../../shared/words/verdicts.ts';
import type { Frame } from '../../../views/frame.ts';
import type { NextPassView } from '../../../views/pages/job/cut.tsx';
import type { MeasureProps } from '../../../views/pages/job/measure.tsx';
import type { Refused } from '../../../views/pages/job/section.tsx';
import { JobPage } from '../../../views/pages/job/wholeJobPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { listEntries } from '../../records/catalogue.ts';
import { comebacksOf } from '../../records/jobs/comebacks.ts';
import { historyOf } from '../../records/jobs/history.ts';
import { askingFirst } from '../../records/jobs/rules.ts';
import { signedPrints } from '../../records/jobs/signedPrints.ts';
import { photosOf } from '../../records/photos/photos.ts';
import { reservedFor, shelfOf } from '../../records/shelf/shelfChanges.ts';
import { slipOfJob } from '../../records/slips/slips.ts';
import { besideOf, setBeside } from '../../shop/bending/bendings.ts';
import { recheckBending } from '../../shop/bending/recheckBending.ts';
import { isListFinding } from '../../shop/inspection/listFindings.ts';
import { type JobAnswer, jobAnswer } from '../../shop/jobAnswer.ts';
import { jobUnder, type UnderRead } from '../../shop/jobUnder.ts';
import { jobsOfCover } from '../../shop/sameCover.ts';
import { wayCosts } from '../../shop/trends/wayCosts.ts';
import { whatDecides } from '../../shop/whatDecides.ts';
import type { Asker } from '../../shop/work/workPool.ts';
import { namedText, namesAtHand } from '../catalogue/chosen.ts';
import { criteriaFields } from '../catalogue/entryFields.ts';
import { placeViews } from '../measuring/table.ts';
import { differences } from '../request/fieldLines.ts';
import type { PageContext } from '../request/pageContext.ts';
import type { Fields } from '../request/typed.ts';
import { lookedAsTyped } from './inspectionForm.ts';
import { jobStuds, studsFrame, studsOnSlip } from './jobStuds.ts';
import { inspectedAsTyped } from './listAnswers.ts';
import { setupAsTyped } from './setupForm.ts';

export interface JobShown {
  readonly asItWas?: number | null;
  readonly fields: Fields;
  readonly refused?: Refused | null;
  readonly doubts?: { readonly pass: Pass; readonly list: MeasureProps['doubts'] };
  /** New for every page that is sent: ids of readings are made from it. */
  readonly token: string;
  /** Aborts when the page is not waited for any more. */
  readonly asker?: Asker;
}

/** The whole page of a job, as it stands or as it was. */
export async function jobPage(
  context: PageContext,
  frame: Frame,
  job: Job,
  shown: JobShown,
): Promise<string> {
  const { db } = context.shop;
  const { fields, refused = null, asItWas = null } = shown;
  const under = await jobUnder(db, job, frame, asItWas);
  const { criteria, criteriaRevision, gauges, lists = [] } = under;
  const families = await listEntries(db, 'family');
  const [stacks, studs] = [await listEntries(db, 'stack'), await listEntries(db, 'stud')];
  const answer = await jobAnswer(job, under, { asker: shown.asker });
  const slip = await slipOfJob(db, job.id);
  const asked =
    fields.stack === undefined && !job.sections.studs ? { ...studsOnSlip(slip, frame), ...fields } : fields;
  const beside = besideOf(families, fields.beside);
  const setupTyped = setupAsTyped(job.sections.setup?.body ?? null, frame);
  // The form of a signed job comes when it is asked for: most who open one only read it.
  const setupAgain = fields.again === 'setup' && asItWas === null;
  const opened = setupAgain
    ? ({ section: 'setup', fields: setupTyped, faults: [], stale: null } as const)
    : null;
  const bending = await setBeside(answer.bending, beside, criteria, shown.asker);
  return renderPage(
    JobPage({
      ...answer,
      frame: studsFrame(asked, frame),
      job: answer.told,
      asItWas,
      families: families.map(({ id, name }) => ({ id, name })),
      history: await historyOf(db, job.id),
      photos: await photosOf(db, job.id, job.revision),
      signedPrints: await signedPrints(db, job.id),
      refused: refused ?? opened,
      cameBack: await comebacksOf(db, job.id),
      lookedTyped: lookedAsTyped(job.sections.looked?.body ?? null, frame),
      verified: answer.verified.filter((one) => !isListFinding(one)),
      list: {
        lists,
        typed: inspectedAsTyped(lists, job.sections.inspected?.body ?? null, frame),
        found: answer.verified.filter(isListFinding),
      },
      setupTyped,
      gauges,
      before: measureOf(job, 'before', frame, shown),
      after: measureOf(job, 'after', frame, shown),
      decide: {
        ...decideOf(job, answer, under, frame),
        lathes: {
          toName: namesAtHand('lathe', await listEntries(db, 'lathe')),
          chosen: namedText('lathe', job.sections.plan?.body ?? {}),
        },
        costs: await wayCosts(db, job, answer.check),
        bending,
        beside: besideShown(job, families, fields),
        otherwise: await otherwiseOf(job, answer, frame),
      },
      studs: {
        ...jobStuds({ job, fields: asked, stacks, studs, criteria, criteriaRevision, frame }),
        otherwise: answer.studsOtherwise,
        slip: slip && {
          number: slipName(slip.number),
          stackName: slip.answered.stack.name,
          studName: slip.answered.stud.name,
        },
      },
      nextPass: answer.nextPass && planTyped(answer.nextPass, frame),
      coverJobs: (await jobsOfCover(db, job.sections.received?.body.coverNumber ?? '')).map((one) =>
        one.number === job.number ? { ...one, heatMarks: answer.stands?.heatMarks ?? [] } : one,
      ),
      shelf: { stands: await shelfOf(db, job.id), kept: await reservedFor(db, job.id) },
    }),
  );
}

function measureOf(job: Job, pass: Pass, frame: Frame, { token, doubts }: JobShown) {
  return { places: placeViews(job, pass, frame), token, doubts: doubts?.pass === pass ? doubts.list : [] };
}

function decideOf(
  job: Job,
  { check, faults, plan }: JobAnswer,
  { criteria, criteriaRevision }: UnderRead,
  frame: Frame,
) {
  const family = job.sections.received?.body.family ?? null;
  const decision = job.sections.decision?.body ?? null;
  return {
    shape: family && { ...family, densityKgPerM3: null },
    check,
    checkFaults: faults,
    criteriaRevision,
    plan,
    decides: check === null ? [] : whatDecides(check),
    reasonAsked:
      check !== null &&
      (FOLLOWS[check.verdict] === null || askingFirst(check, FOLLOWS[check.verdict]).length > 0),
    outdated: decision !== null && job.outcome === null,
    criteriaSince:
      decision === null
        ? []
        : differences(criteriaFields(decision.criteria, frame), criteriaFields(criteria, frame)),
  };
}

function besideShown(job: Job, families: readonly Entry<'family'>[], { beside = '' }: Fields) {
  return {
    families: families.map(({ id, name }) => ({ id, name })),
    chosen: beside,
    action: `/jobs/${encodeURIComponent(job.number)}#decide`,
  };
}

/** What today's calculation would say otherwise of the decision's inputs; null where it says the same. */
async function otherwiseOf(
  job: Job,
  { otherwise }: JobAnswer,
  { lengthUnit }: Frame,
): Promise<string | null> {
  const decision = job.sections.decision?.body;
  if (!decision) return null;
  const said = [otherwise, await recheckBending(decision, lengthUnit)].filter((one) => one !== null);
  return said.length === 0 ? null : said.join(' ');
}

/** The next pass with the cut in all as its box would have it typed. */
function planTyped(next: NextPass, { lengthUnit, decimalSign }: Frame): NextPassView {
  const { totalMm } = next;
  return {
    ...next,
    planTyped: totalMm === null ? '' : writeLength(upToDial(totalMm), lengthUnit, decimalSign),
  };
}

/** Rounded up to a thousandth of a millimeter, so that what is planned cleans up. */
function upToDial(mm: number): number {
  return Math.ceil(mm * 1000 - 1e-6) / 1000;
}
