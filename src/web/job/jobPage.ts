import { asTyped } from '../../../shared/quantity/fieldText.ts';
import { writeLength } from '../../../shared/quantity/writeQuantity.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import { RING_WELDED } from '../../../shared/words/fields/weld.ts';
import type { Job, Pass } from '../../../shared/words/job.ts';
import type { Frame } from '../../../views/frame.ts';
import type { MeasureProps } from '../../../views/pages/job/measure.tsx';
import type { Refused } from '../../../views/pages/job/section.tsx';
import { JobPage } from '../../../views/pages/job/wholeJobPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { listEntries } from '../../records/catalogue.ts';
import { historyOf } from '../../records/jobs/history.ts';
import { photosOf } from '../../records/photos/photos.ts';
import { besideOf, setBeside } from '../../shop/bending/bendings.ts';
import { figuresTyped } from '../../shop/gauges.ts';
import { jobAnswer } from '../../shop/jobAnswer.ts';
import { jobUnder } from '../../shop/jobUnder.ts';
import { recheckBending } from '../../shop/recheck.ts';
import { criteriaFields } from '../catalogue/entryFields.ts';
import { placeViews } from '../measuring/table.ts';
import { differences } from '../request/fieldLines.ts';
import type { PageContext } from '../request/pageContext.ts';
import type { Fields } from '../request/typed.ts';
import { lookedAsTyped } from './inspectionForm.ts';
import { jobStuds, studsFrame } from './jobStuds.ts';

export interface JobShown {
  readonly asItWas?: number | null;
  readonly fields: Fields;
  readonly refused?: Refused | null;
  readonly doubts?: { readonly pass: Pass; readonly list: MeasureProps['doubts'] };
  /** New for every page that is sent: ids of readings are made from it. */
  readonly token: string;
  /** Aborts when the page is not waited for any more. */
  readonly signal?: AbortSignal;
}

/** The whole page of a job, as it stands or as it was. */
export async function jobPage(
  context: PageContext,
  frame: Frame,
  job: Job,
  shown: JobShown,
): Promise<string> {
  const { db } = context.shop;
  const { fields, refused = null, token } = shown;
  const under = await jobUnder(db, job, frame, shown.asItWas);
  const { criteria, criteriaRevision, gauges } = under;
  const decision = job.sections.decision?.body ?? null;
  const [families, stacks, studs] = [
    await listEntries(db, 'family'),
    await listEntries(db, 'stack'),
    await listEntries(db, 'stud'),
  ];
  const family = job.sections.received?.body.family ?? null;
  const setup = job.sections.setup?.body ?? null;
  const chosenGauges = setup?.gauges ?? [];
  const answer = await jobAnswer(job, under, { signal: shown.signal });
  const beside = besideOf(families, fields.beside);
  const bending = await setBeside(answer.bending, beside, criteria, shown.signal);
  const next = answer.nextPass;
  const measure = (pass: Pass) => ({
    places: placeViews(job, pass, frame),
    token: `${token}`,
    doubts: shown.doubts?.pass === pass ? shown.doubts.list : [],
  });
  return renderPage(
    JobPage({
      frame: studsFrame(fields, frame),
      job,
      asItWas: shown.asItWas ?? null,
      families: families.map(({ id, name }) => ({ id, name })),
      history: await historyOf(db, job.id),
      photos: await photosOf(db, job.id, job.revision),
      missing: answer.missing,
      next: answer.next,
      steps: answer.steps,
      statementNeeded: answer.statementNeeded,
      refused,
      lookedTyped: lookedAsTyped(job.sections.looked?.body ?? null, frame),
      setupTyped: {
        ...asTyped(
          SETUP,
          setup && { ...setup, gaugeFigures: figuresTyped(setup.gaugeFigures, chosenGauges) },
          frame,
        ),
        ...asTyped(RING_WELDED, setup?.ringWelded, frame),
        ...Object.fromEntries(chosenGauges.map(({ use, id }) => [`${use}Gauge`, id])),
      },
      gauges,
      before: measure('before'),
      after: measure('after'),
      decide: {
        shape: family && {
          ...family,
          densityKgPerM3: null,
        },
        check: answer.check,
        checkFaults: answer.faults,
        criteriaRevision,
        bending,
        beside: {
          families: families.map(({ id, name }) => ({ id, name })),
          chosen: fields.beside ?? '',
          action: `/jobs/${encodeURIComponent(job.number)}#decide`,
        },
        plan: answer.plan,
        outdated: decision !== null && job.outcome === null,
        otherwise: decision && otherwiseOf(answer.otherwise, await recheckBending(decision)),
        criteriaSince:
          decision === null
            ? []
            : differences(criteriaFields(decision.criteria, frame), criteriaFields(criteria, frame)),
      },
      verified: answer.verified,
      studs: jobStuds({ job, fields, stacks, studs, criteria, criteriaRevision, frame }),
      compared: answer.compared,
      passes: answer.passes,
      nextPass: next && {
        ...next,
        planTyped:
          next.totalMm === null
            ? ''
            : writeLength(upToDial(next.totalMm), frame.lengthUnit, frame.decimalSign),
      },
    }),
  );
}

/** Rounded up to a thousandth of a millimetre, so that what is planned cleans up. */
function upToDial(mm: number): number {
  return Math.ceil(mm * 1000 - 1e-6) / 1000;
}

function otherwiseOf(...told: readonly (string | null)[]): string | null {
  const said = told.filter((one) => one !== null);
  return said.length === 0 ? null : said.join(' ');
}
