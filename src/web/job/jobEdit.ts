import type { Request, Response } from 'express';
import { writingIn } from '../../../shared/quantity/fieldText.ts';
import { inReadersUnit } from '../../../shared/quantity/inReadersUnit.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import {
  cutsSchema,
  lookedSchema,
  planSchema,
  receivedSchema,
  setupSchema,
} from '../../../shared/schemas/job.ts';
import type { AnyFields } from '../../../shared/words/fields/field.ts';
import { CUT, INSPECTED, LOOKED, PLAN, RECEIVED } from '../../../shared/words/fields/job.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import { RING_WELDED } from '../../../shared/words/fields/weld.ts';
import type { Job } from '../../../shared/words/job.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import type { Refused } from '../../../views/pages/job/section.tsx';
import { StaleEdit } from '../../records/database/errors.ts';
import { jobNamed } from '../../records/jobs/readJob.ts';
import { reviseJob } from '../../records/jobs/reviseJob.ts';
import { closedRefusal } from '../../records/jobs/rules.ts';
import type { Edit } from '../../shop/jobEdits.ts';
import { boxAt } from '../request/bodyForm.ts';
import { frameOf, type PageContext, rememberPreference } from '../request/pageContext.ts';
import { fieldsOf, TypedForm } from '../request/typed.ts';
import { withInitials } from '../request/whoFaults.ts';
import { EDITS } from './editForms.ts';
import { addressOf, ctxOf, fromOf, showJob } from './jobRequest.ts';
import { printsFor } from './papers.ts';
import { toNewCoverType } from './receivedForm.ts';
import { setupAsTyped } from './setupForm.ts';
import { staleShown } from './staleShown.ts';

/** One form of the job's page: kept as a revision, or shown again with what speaks against it. */
export async function postEdit(
  section: keyof typeof EDITS,
  context: PageContext,
  req: Request,
  res: Response,
): Promise<void> {
  const { db } = context.shop;
  const fields = fieldsOf(req.body);
  const job = await jobNamed(db, String(req.params.number));
  const frame = await frameOf(req, context);
  if (section === 'received' && fields.addType !== undefined) {
    res.redirect(303, toNewCoverType(fields, addressOf(job), '#receive'));
    return;
  }
  // What stands as it was kept is not asked about again.
  const kept =
    section === 'setup' ? setupAsTyped(job.sections.setup?.body ?? null, writingIn(fields, frame)) : {};
  const form = new TypedForm(fields, frame, kept);
  const refuse = (status: number, on: Job, faults: readonly Fault[], stale: Refused['stale'] = null) =>
    showJob(context, req, res, on, {
      status,
      fields,
      refused: {
        section,
        fields,
        faults: stale ? faults : withInitials(faults, fields.who),
        stale,
        doubts: form.doubts,
      },
    });
  const closed = section === 'closed' ? null : closedRefusal(job);
  if (closed !== null) {
    await refuse(422, job, closed.faults);
    return;
  }
  const landing = section === 'welded' ? '#measure' : '';
  let edit: Edit | null = null;
  try {
    edit = await EDITS[section](context, job, form, frame);
    if (edit === null) {
      // A ring that was recorded already: sent twice, or from a second tablet.
      if (form.faults.length === 0) res.redirect(303, `${addressOf(job)}${landing}`);
      else await refuse(422, job, form.faults);
      return;
    }
    const unfit = unfitBody(edit);
    if (unfit.length > 0) {
      await refuse(422, job, inBoxUnits(unfit, form));
      return;
    }
    const whole = { jobId: job.id, fromRevision: fromOf(fields), ...edit };
    await reviseJob(db, ctxOf(context, fields), whole, printsFor(context.settings.publicUrl, frame));
  } catch (error) {
    if (error instanceof StaleEdit && edit !== null) {
      const stale = await staleShown(db, job, edit, error, fromOf(fields), frame);
      await refuse(
        409,
        await jobNamed(db, String(req.params.number)),
        [{ path: '', message: error.message }],
        stale,
      );
      return;
    }
    if (!(error instanceof Refusal)) throw error;
    const { faults } = error;
    const sent = edit;
    const shown = sent ? faults.map((one) => ({ ...one, path: boxOf(sent, one.path) })) : faults;
    await refuse(422, job, inBoxUnits(shown, form));
    return;
  }
  rememberPreference(res, 'initials', (fields.who ?? '').trim());
  res.redirect(303, `${addressOf(job)}${landing}`);
}

/** Schemas and rules speak in the units that are kept; the form in those of its boxes. */
function inBoxUnits(faults: readonly Fault[], { writing }: TypedForm): Fault[] {
  return faults.map(({ path, message }) => ({ path, message: inReadersUnit(message, writing) }));
}

const SCHEMAS = {
  received: receivedSchema,
  looked: lookedSchema,
  setup: setupSchema,
  plan: planSchema,
  cuts: cutsSchema,
} as const;

/** What a section's schema says against it, led to the fields of its form. */
function unfitBody(edit: Edit): Fault[] {
  const schema = edit.what in SCHEMAS ? SCHEMAS[edit.what as keyof typeof SCHEMAS] : null;
  const parsed = schema?.safeParse(edit.body);
  if (!parsed || parsed.success) return [];
  return faultsOf(parsed.error).map(({ path, message }) => ({ path: boxOf(edit, path), message }));
}

const FIELDS: Partial<Record<Edit['what'], AnyFields>> = {
  received: RECEIVED,
  looked: LOOKED,
  setup: SETUP,
  plan: PLAN,
};

/** The box of the form a fault of a section belongs beside. */
function boxOf(edit: Edit, path: string): string {
  const item = /^items\.(\d+)\.(\w+)$/.exec(path);
  if (item && edit.what === 'looked') {
    const { item: row } = edit.body.items[Number(item[1])] ?? {};
    return boxAt(INSPECTED, item[2] ?? '', { row }) ?? path;
  }
  if (path === 'ringWelded.on') return RING_WELDED.on.box;
  if (edit.what === 'cuts') return boxAt(CUT, path.replace(/^cuts\.\d+\./, '')) ?? CUT.depthMm.box;
  return boxAt(FIELDS[edit.what] ?? {}, path) ?? path;
}
