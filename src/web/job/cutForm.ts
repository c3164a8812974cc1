import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
import type { Entry } from '../../../shared/words/catalogue.ts';
import { CUT, PLAN } from '../../../shared/words/fields/job.ts';
import type { CutPlan, Job } from '../../../shared/words/job.ts';
import { briefLength } from '../../../shared/words/print.ts';
import { isThroughWall } from '../../records/jobs/rules.ts';
import { planExpected } from '../../shop/doubts/coverExpected.ts';
import { passDoubt, restBesidePass, restOfCut } from '../../shop/doubts/passDoubt.ts';
import type { Edit } from '../../shop/jobEdits.ts';
import { readChosen } from '../catalogue/chosen.ts';
import { askAboutFigures } from '../request/askFigures.ts';
import { readBody } from '../request/bodyForm.ts';
import type { TypedForm } from '../request/typed.ts';

/** The cut to try, as typed; null with the sentences in the form. */
export function readPlan(
  form: TypedForm,
  kept: CutPlan | null,
  cleanUpMm: number | null,
  lathes: readonly Entry<'lathe'>[],
): CutPlan | null {
  const { box } = PLAN.lathe;
  // The next pass is planned without a choice of lathe: it stays.
  const lathe =
    form.fields[box] === undefined
      ? (kept?.lathe ?? null)
      : readChosen(form, box, 'lathe', lathes, kept?.lathe);
  const { plannedCutMm } = readBody(form, PLAN);
  if (plannedCutMm !== null && plannedCutMm <= 0)
    form.fault(
      PLAN.plannedCutMm.box,
      `The cut to try is ${briefLength(plannedCutMm, form.writing.lengthUnit)}; it must be more than 0. Leave it blank for the least cut that cleans up.`,
    );
  if (form.faults.length > 0) return null;
  // Sent again as it was shown in another unit, it is still what was typed then.
  const same = kept !== null && kept.plannedCutMm === plannedCutMm;
  if (!same) askAboutFigures(form, PLAN, planExpected(cleanUpMm));
  if (form.faults.length > 0) return null;
  return { plannedCutMm, typed: same ? kept.typed : form.text(PLAN.plannedCutMm.box), lathe };
}

/** A further pass, or with `seen` what was seen after the last one; null when something typed cannot be used. */
export function readCuts(job: Job, form: TypedForm): Edit | null {
  const before = cutsOf(job);
  const seen = readBody(form, { look: CUT.look, truedAgain: CUT.truedAgain });
  const last = before.at(-1);
  if (form.text('seen') === '1' && last) {
    if (form.faults.length > 0) return null;
    const now = { ...last, look: seen.look ?? last.look, truedAgain: seen.truedAgain ?? last.truedAgain };
    return { what: 'cuts', body: { cuts: [...before.slice(0, -1), now] } };
  }
  const depthMm = readDepth(form);
  if (depthMm === null || !isMeant(form, depthMm, restOfCut(job))) return null;
  const cut = { depthMm, typed: form.text(CUT.depthMm.box), note: form.text('note'), ...seen };
  return { what: 'cuts', body: { cuts: [...before, cut] } };
}

/** A pass deeper than what is left of the decided cut is asked about, until its depth is confirmed. */
function isMeant(form: TypedForm, valueMm: number, restMm: number | null): boolean {
  const typed = form.text(CUT.depthMm.box);
  const { lengthUnit, decimalSign } = form.writing;
  const read = readQuantity({ field: '', typed, kind: 'length', unit: lengthUnit, decimalSign });
  const unit = read.ok ? read.unit : lengthUnit;
  const asked = passDoubt({ valueMm, typed, unit, decimalSign }, restMm);
  if (asked === null || form.text('ok.depth') === typed) return true;
  form.ask('depth', asked.question, `${typed} is right`, asked.meantTyped === null ? [] : [asked.meantTyped]);
  return false;
}

/** The depth of one pass put right, with the reason; what was seen after it and its note stay. */
export function readPassPutRight(job: Job, form: TypedForm): Edit | null {
  const before = cutsOf(job);
  const index = before.findIndex((_, i) => form.text('pass') === String(i + 1));
  if (index < 0) {
    form.fault('pass', `Job ${job.number} has no such pass. Choose one of the passes made.`);
  }
  if (!form.has('why')) {
    form.fault('why', 'Enter the reason for the correction. The history keeps the old depth.');
  }
  const depthMm = readDepth(form);
  if (depthMm === null || form.faults.length > 0) return null;
  const same = before[index]?.depthMm === depthMm;
  const cuts = before.map((cut, i) => (i === index ? { ...cut, depthMm, typed: form.text('depth') } : cut));
  // What would go through the cover is refused, whatever is confirmed.
  const asked = !same && !isThroughWall(job, { cuts });
  if (asked && !isMeant(form, depthMm, restBesidePass(job, index))) return null;
  return { what: 'cuts', body: { cuts } };
}

const cutsOf = (job: Job) => job.sections.cuts?.body.cuts ?? [];

function readDepth(form: TypedForm): number | null {
  const depthMm = form.length(CUT.depthMm.box, CUT.depthMm.label);
  if (!form.faults.some((fault) => fault.path === 'depth'))
    form.needed(depthMm, CUT.depthMm.box, CUT.depthMm.label);
  return form.faults.length > 0 ? null : depthMm;
}
