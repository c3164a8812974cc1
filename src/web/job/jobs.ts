import { randomUUID } from 'node:crypto';
import { type Request, type Response, Router } from 'express';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import {
  cutsSchema,
  lookedSchema,
  planSchema,
  receivedSchema,
  setupSchema,
} from '../../../shared/schemas/job.ts';
import type { Job, LookItem, SectionName } from '../../../shared/words/job.ts';
import { DECISION_KINDS, LOOK_ITEMS } from '../../../shared/words/job.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import type { Frame } from '../../../views/frame.ts';
import { NewJobPage } from '../../../views/pages/job/newJobPage.tsx';
import type { Refused } from '../../../views/pages/job/section.tsx';
import { renderPage } from '../../../views/render.ts';
import { jointFrom } from '../../calc/stud/joint/jointFigures.ts';
import { getEntry, listEntries } from '../../records/catalogue.ts';
import { StaleEdit } from '../../records/database/errors.ts';
import { createJob, getJob, jobAtRevision, reviseJob } from '../../records/jobs/jobs.ts';
import { addReadings } from '../../records/jobs/readings.ts';
import { decisionFrom, type Edit, signatureFrom, studsFrom, studWorkFrom } from '../../shop/jobEdits.ts';
import { readReadings } from '../measuring/table.ts';
import { NoSuchPage } from '../request/errors.ts';
import { frameOf, type House, rememberPreference, todayIn } from '../request/house.ts';
import { requestGoneSignal } from '../request/requestGone.ts';
import { type Fields, fieldsOf, TypedForm, unitOf } from '../request/typed.ts';
import { jointField, readJoint, studRing, torqueFromOf } from '../stud/joint.ts';
import { readGap } from '../stud/stackForm.ts';
import { readReplaced, readRetightening } from '../stud/work.ts';
import { readCuts, readPassPutRight } from './cutForm.ts';
import { historyRouter } from './history.ts';
import { jobListRouter } from './jobList.ts';
import { jobPage } from './jobPage.ts';
import { listsRouter } from './lists.ts';
import { readReceived } from './receivedForm.ts';
import { readSetup } from './setupForm.ts';
import { staleShown } from './staleShown.ts';

const SENT_ID = /^[A-Za-z0-9-]{16,64}$/;

/** What one form of the job page wants to write; null when something typed cannot be used. */
type ReadEdit = (job: Job, form: TypedForm, frame: Frame) => Promise<Edit | null>;

/** The jobs: the list, a new one, and the whole of each on one page. */
export function jobsRouter(house: House): Router {
  const router = Router();
  const { db } = house.shop;
  router.use(historyRouter(house));
  router.use(jobListRouter(house));
  router.use(listsRouter(house));

  router.get('/jobs/new', async (req, res) => {
    await newJobPage(req, res, fieldsOf(req.query), [], 200);
  });

  router.post('/jobs', async (req, res) => {
    const fields = fieldsOf(req.body);
    try {
      const { number, received } = await readReceived(db, fields, { today: todayIn(house) });
      const job = await createJob(db, ctxOf(fields), {
        ...(number !== null && { number }),
        ...(SENT_ID.test(fields.sentId ?? '') && { sentId: fields.sentId! }),
        received,
      });
      rememberPreference(res, 'initials', (fields.who ?? '').trim());
      res.redirect(303, address(job));
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      await newJobPage(req, res, fields, error.faults, error.code === 'sent-otherwise' ? 409 : 422);
    }
  });

  router.get('/jobs/:number', async (req, res) => {
    const fields = fieldsOf(req.query);
    const now = await mustFind(req.params.number);
    const asItWas = /^\d{1,9}$/.test(fields.revision ?? '') ? Number(fields.revision) : null;
    if (asItWas !== null && (asItWas < 1 || asItWas > now.revision)) {
      throw new NoSuchPage(`Job ${now.number} has no revision ${asItWas}; it has ${now.revision}.`);
    }
    const job = asItWas === null ? now : await jobAtRevision(db, now.id, asItWas);
    await show(req, res, job, { asItWas, fields });
  });

  const edits: Readonly<Record<SectionName | 'pass' | 'replaced' | 'retightened', ReadEdit>> = {
    received: async (job, form) => {
      const standing = job.sections.received?.body.receivedOn;
      const read = await readReceived(db, form.fields, { today: todayIn(house), standing });
      return { what: 'received', body: read.received };
    },
    looked: async (_job, form) => {
      const crackTest = form.choice('crackTest', ['found', 'none-found', 'not-done']) ?? 'not-done';
      const crackMethod = form.choice('crackMethod', ['by-eye', 'dye', 'magnetic-particle']);
      if (crackTest === 'none-found' && crackMethod === null) {
        form.fault(
          'crackMethod',
          'No crack found, but not how it was looked for. Choose dye, magnetic particle or by eye.',
        );
      }
      const items = LOOK_ITEMS.map((item: LookItem) => ({
        item,
        result: form.choice(`result.${item}`, ['not-looked', 'sound', 'fault']) ?? ('not-looked' as const),
        final: form.text(`final.${item}`) === '1',
        note: form.text(`note.${item}`),
      }));
      return form.faults.length > 0
        ? null
        : { what: 'looked', body: { crackTest, crackMethod, crackNote: form.text('crackNote'), items } };
    },
    setup: async (job, form) => {
      const kept = job.sections.setup?.body ?? null;
      const body = readSetup(form, await listEntries(db, 'gauge'), kept);
      return body && { what: 'setup', body };
    },
    plan: async (_job, form) => {
      const plannedCutMm = form.length('cut', 'The cut to try');
      if (plannedCutMm !== null && plannedCutMm <= 0) {
        form.fault(
          'cut',
          `The cut to try is ${plannedCutMm} mm; it must be more than 0. Leave it empty for the least that cleans up.`,
        );
      }
      return form.faults.length > 0
        ? null
        : { what: 'plan', body: { plannedCutMm, typed: form.text('cut') } };
    },
    decision: async (job, form, frame) => {
      const decision = form.choice('decision', DECISION_KINDS);
      if (decision === null) {
        form.fault('decision', 'No decision was chosen. Choose one.');
        return null;
      }
      const asked = {
        decision,
        reason: form.text('reason'),
        fromRevision: fromOf(form.fields),
        criteriaRevision: revisionIn(form.fields.criteria),
      };
      return decisionFrom(db, job, asked, frame, 'decision');
    },
    cuts: async (job, form) => readCuts(job, form),
    pass: async (job, form) => readPassPutRight(job, form),
    studs: async (job, form, frame) => {
      const stack = await getEntry(db, 'stack', form.text('stack'));
      const pullForwardMm = readGap(form, stack?.body.pullForwardMm ?? null);
      const ring = studRing(job.sections.received?.body.family ?? null, stack?.body.stack ?? null);
      const joint = readJoint(form, ring);
      if (form.faults.length > 0) return null;
      const asked = {
        stackId: form.text('stack'),
        studId: form.text('stud'),
        pullForwardMm,
        note: form.text('note'),
        joint,
        jointFrom: joint && jointFrom(joint, torqueFromOf(form)),
        revisions: {
          stack: revisionIn(form.fields.stackRevision),
          stud: revisionIn(form.fields[`studRevision.${form.text('stud')}`]),
          criteria: revisionIn(form.fields.criteria),
        },
        replaced: null,
        retightening: null,
      };
      return studsFrom(db, job, asked, frame.lengthUnit, {
        stack: 'stack',
        stud: 'stud',
        note: 'note',
        criteria: 'stud',
        joint: jointField,
        replaced: () => 'stud',
      });
    },
    replaced: async (job, form, frame) => {
      const read = readReplaced(form);
      if (read === null) return null;
      const { stud, entry } = read;
      return studWorkFrom(
        db,
        job,
        (work) => ({
          ...work,
          replaced: [...work.replaced.filter((one) => one.stud !== stud), ...(entry ? [entry] : [])],
        }),
        frame.lengthUnit,
      );
    },
    retightened: async (job, form, frame) => {
      const retightening = readRetightening(form, todayIn(house));
      if (retightening === null) return null;
      return studWorkFrom(db, job, (work) => ({ ...work, retightening }), frame.lengthUnit);
    },
    signature: async (job, form, frame) => {
      const asked = { statement: form.text('statement'), fromRevision: fromOf(form.fields) };
      return signatureFrom(db, job, asked, frame);
    },
  };

  router.post('/jobs/:number/readings', async (req, res) => {
    const fields = fieldsOf(req.body);
    const job = await mustFind(req.params.number);
    const frame = await frameOf(req, house);
    const writing = {
      ...frame,
      lengthUnit: unitOf(fields) ?? frame.lengthUnit,
    };
    const gauge = job.sections.setup?.body.gauge ?? '';
    const sent = readReadings(job, fields, writing, gauge);
    const refuse = async (status: number, faults: readonly Fault[], stale: Refused['stale'] = null) =>
      show(req, res, job, {
        status,
        fields,
        refused: { section: 'readings', fields, faults, stale },
        doubts: { pass: sent.pass, list: sent.doubts },
      });
    if (sent.conflicts.length > 0) {
      await refuse(409, sent.faults, { theirs: sent.newest, compared: sent.conflicts, since: [] });
      return;
    }
    if (sent.faults.length > 0 || sent.doubts.length > 0) {
      await refuse(422, [
        ...sent.faults,
        ...sent.doubts.map((one) => ({ path: one.name, message: one.question })),
      ]);
      return;
    }
    if (sent.readings.length === 0) {
      res.redirect(303, address(job));
      return;
    }
    try {
      await addReadings(db, ctxOf(fields), { jobId: job.id, readings: sent.readings });
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      const status = error.code === 'reading-differs' || error.code === 'nothing-to-replace' ? 409 : 422;
      await refuse(status, error.faults);
      return;
    }
    rememberPreference(res, 'initials', (fields.who ?? '').trim());
    res.redirect(303, address(job));
  });

  for (const [section, read] of Object.entries(edits) as [keyof typeof edits, ReadEdit][]) {
    router.post(`/jobs/:number/${section}`, async (req, res) => {
      const fields = fieldsOf(req.body);
      const job = await mustFind(req.params.number!);
      const frame = await frameOf(req, house);
      const form = new TypedForm(fields, frame);
      const refuse = (status: number, on: Job, faults: readonly Fault[], stale: Refused['stale'] = null) =>
        show(req, res, on, { status, fields, refused: { section, fields, faults, stale } });
      let edit: Edit | null = null;
      try {
        edit = await read(job, form, frame);
        if (edit === null) {
          await refuse(422, job, form.faults);
          return;
        }
        const unfit = unfitBody(edit);
        if (unfit.length > 0) {
          await refuse(422, job, unfit);
          return;
        }
        await reviseJob(db, ctxOf(fields), { jobId: job.id, fromRevision: fromOf(fields), ...edit });
      } catch (error) {
        if (error instanceof StaleEdit && edit !== null) {
          const stale = await staleShown(db, job, edit, error, fromOf(fields), frame);
          await refuse(409, await mustFind(job.number), [{ path: '', message: error.message }], stale);
          return;
        }
        if (!(error instanceof Refusal)) throw error;
        const { faults } = error;
        const kept = edit;
        const shown = kept ? faults.map((one) => ({ ...one, path: boxOf(kept, one.path) })) : faults;
        await refuse(422, job, shown);
        return;
      }
      rememberPreference(res, 'initials', (fields.who ?? '').trim());
      res.redirect(303, address(job));
    });
  }

  async function show(
    req: Request,
    res: Response,
    job: Job,
    what: Omit<Parameters<typeof jobPage>[3], 'token'> & { status?: number },
  ): Promise<void> {
    const frame = await frameOf(req, house);
    const html = await jobPage(house, frame, job, {
      ...what,
      token: randomUUID(),
      signal: requestGoneSignal(res),
    });
    res.status(what.status ?? 200).send(html);
  }

  async function newJobPage(
    req: Request,
    res: Response,
    fields: Fields,
    faults: readonly Fault[],
    status: number,
  ) {
    const frame = await frameOf(req, house);
    const families = await listEntries(db, 'family');
    res.status(status).send(
      renderPage(
        NewJobPage({
          frame,
          families: families.map(({ id, name }) => ({ id, name })),
          fields: {
            receivedOn: todayIn(house),
            who: frame.initials,
            sentId: randomUUID(),
            ...fields,
          },
          faults,
        }),
      ),
    );
  }

  async function mustFind(number: string): Promise<Job> {
    const job = await getJob(db, number);
    if (job === null)
      throw new NoSuchPage(`There is no job "${number.slice(0, 40)}" in this shop. Look for it under jobs.`);
    return job;
  }

  function ctxOf(fields: Fields) {
    return { who: fields.who ?? '', why: fields.why ?? '', now: house.now };
  }

  return router;
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

/** The box of the form a fault of a section belongs beside. */
function boxOf(edit: Edit, path: string): string {
  const item = /^items\.(\d+)\.(\w+)$/.exec(path);
  if (item && edit.what === 'looked') return `${item[2]}.${edit.body.items[Number(item[1])]?.item}`;
  const cut = /^cuts\.\d+\.(\w+)$/.exec(path);
  if (cut) return cut[1] === 'note' ? 'note' : 'depth';
  const names: Readonly<Record<string, string>> = {
    customerReference: 'customer',
    residualRunoutMm: 'residual',
    cuts: 'depth',
    plannedCutMm: 'cut',
    typed: 'cut',
  };
  return names[path] ?? path;
}

/** The revision a form was filled from; 0, which no job has, when it does not say. */
function fromOf(fields: Fields): number {
  return revisionIn(fields.from, 0);
}

/** A revision that a form carries; one that nothing has when it does not. */
function revisionIn(typed: string | undefined, without = -1): number {
  return /^\d{1,9}$/.test(typed ?? '') ? Number(typed) : without;
}

function address(job: Job): string {
  return `/jobs/${encodeURIComponent(job.number)}`;
}
