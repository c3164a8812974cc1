import { type Request, type Response, Router } from 'express';
import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { withSign } from '../../../shared/quantity/plainNumber.ts';
import { writeLength } from '../../../shared/quantity/writeQuantity.ts';
import { shopCriteriaSchema } from '../../../shared/schemas/catalogue.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import type { ShopCriteria } from '../../../shared/words/catalogue.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { CriteriaPage } from '../../../views/pages/catalogue/criteriaPage.tsx';
import type { EntryStale } from '../../../views/parts/entryHistory.tsx';
import { renderPage } from '../../../views/render.ts';
import { entryHistory, typedIn } from '../../records/catalogue.ts';
import { StaleEdit } from '../../records/database/errors.ts';
import { CRITERIA_ID, currentCriteria, saveCriteria } from '../../records/shopCriteria.ts';
import {
  BENDING_FIELDS,
  bendingAsTyped,
  readBendingSettings,
  readHeatSettings,
} from '../bending/bendingForm.ts';
import { frameOf, type House, rememberPreference } from '../request/house.ts';
import { type Fields, fieldsOf, TypedForm, unitOf } from '../request/typed.ts';
import { readShims, readStudSetting, studLimitsAsTyped } from '../stud/limits.ts';
import { entryRevisionsInWords, entryStale } from './entryWords.ts';
import { balanceAsTyped, latheAsTyped, readBalance, readLathe } from './latheForm.ts';
import { typedOf } from './typedEntry.ts';

const FIELD: Readonly<Record<string, string>> = {
  shopName: 'shopName',
  minimumWallMm: 'minimum',
  cleanUpAllowanceMm: 'allowance',
  faceRunoutLimitMm: 'runout',
  confidence: 'confidence',
  typicalCutMm: 'typical',
  protrusionThreads: 'protrusion',
  startThreads: 'start',
  'studSetting.leanAt25Mm': 'studLean',
  'studSetting.offMm': 'studOff',
  'studSetting.proofNm': 'studProof',
};

/** The field that each place in the criteria came from. */
function fieldOf(path: string): string {
  if (path.startsWith('shimsMm')) return 'shims';
  return FIELD[path] ?? BENDING_FIELDS[path] ?? path.replace(/^(lathe|balance)\./, '');
}

/** The shop's own limits, each change a revision with who, when and why. */
export function criteriaRouter(house: House): Router {
  const router = Router();
  const { db } = house.shop;

  router.get('/criteria', async (req, res) => {
    const now = await currentCriteria(db);
    await show(req, res, { revision: now.revision, fields: asTyped(now.body, await frameOf(req, house)) });
  });

  router.post('/criteria', async (req, res) => {
    const fields = fieldsOf(req.body);
    const frame = await frameOf(req, house);
    const writing: Writing = {
      ...frame,
      lengthUnit: unitOf(fields) ?? frame.lengthUnit,
    };
    const form = new TypedForm(fields, writing);
    const body = readCriteria(form);
    const revision = Number(fields.from);
    if (body === null) {
      await show(req, res, { revision, fields, faults: form.faults });
      return;
    }
    const typed = typedOf(form, body, fieldOf, asTyped((await currentCriteria(db)).body, writing));
    try {
      await saveCriteria(
        db,
        { who: fields.who ?? '', why: fields.why ?? '', now: house.now },
        { fromRevision: revision, body, typed },
      );
    } catch (error) {
      if (error instanceof StaleEdit) {
        const stale = entryStale('criteria', error, body, frame);
        await show(req, res, { revision: error.currentRevision, fields, stale });
        return;
      }
      if (!(error instanceof Refusal)) throw error;
      await show(req, res, { revision, fields, faults: error.faults });
      return;
    }
    rememberPreference(res, 'initials', (fields.who ?? '').trim());
    res.redirect(303, '/criteria');
  });

  async function show(
    req: Request,
    res: Response,
    page: { revision: number; fields: Fields; faults?: readonly Fault[]; stale?: EntryStale },
  ): Promise<void> {
    const { revision, fields, faults = [], stale = null } = page;
    const frame = await frameOf(req, house);
    const history = await entryHistory(db, 'criteria', CRITERIA_ID);
    const typed = await typedIn(db, 'criteria', CRITERIA_ID);
    res.status(stale !== null ? 409 : faults.length > 0 ? 422 : 200).send(
      renderPage(
        CriteriaPage({
          frame,
          revision,
          fields,
          faults,
          stale,
          history: entryRevisionsInWords('criteria', history, typed, frame),
        }),
      ),
    );
  }

  return router;
}

function readCriteria(form: TypedForm): ShopCriteria | null {
  const percent = form.number('confidence', 'How sure to be');
  const needed = <T>(value: T | null, name: string, label: string) =>
    form.has(name) ? value : form.needed(value, name, label);
  const raw = {
    shopName: form.text('shopName'),
    minimumWallMm: form.length('minimum', 'The minimum wall'),
    cleanUpAllowanceMm: needed(
      form.length('allowance', 'The clean-up allowance'),
      'allowance',
      'The clean-up allowance',
    ),
    faceRunoutLimitMm: form.length('runout', 'The runout allowed after the cut'),
    confidence: percent === null ? null : percent / 100,
    typicalCutMm: form.length('typical', 'The typical cut'),
    protrusionThreads: needed(
      form.number('protrusion', 'Threads beyond the nut'),
      'protrusion',
      'Threads beyond the nut',
    ),
    startThreads: needed(form.number('start', 'Threads showing'), 'start', 'Threads showing'),
    lengthUnit: form.choice('lengthUnit', ['mm', 'in']) ?? 'mm',
    decimalSign: form.choice('decimalSign', ['point', 'comma']) ?? 'point',
    lathe: readLathe(form),
    studSetting: readStudSetting(form),
    shimsMm: readShims(form),
    balance: readBalance(form),
    bending: readBendingSettings(form),
    heat: readHeatSettings(form),
  };
  needed(percent, 'confidence', 'How sure to be');
  if (form.faults.length > 0) return null;
  const parsed = shopCriteriaSchema.safeParse(raw);
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), fieldOf);
  return null;
}

function asTyped(body: ShopCriteria, writing: Writing): Fields {
  const text = (mm: number | null) =>
    mm === null ? '' : writeLength(mm, writing.lengthUnit, writing.decimalSign);
  const number = (value: number) => withSign(String(value), writing.decimalSign);
  return {
    shopName: body.shopName,
    minimum: text(body.minimumWallMm),
    allowance: text(body.cleanUpAllowanceMm),
    runout: text(body.faceRunoutLimitMm),
    confidence: number(Number((body.confidence * 100).toPrecision(12))),
    typical: text(body.typicalCutMm),
    protrusion: number(body.protrusionThreads),
    start: number(body.startThreads),
    lengthUnit: body.lengthUnit,
    decimalSign: body.decimalSign,
    ...studLimitsAsTyped(body, text, number),
    ...latheAsTyped(body.lathe ?? null, text, number),
    ...balanceAsTyped(body.balance ?? null, number),
    ...bendingAsTyped(body.bending ?? null, body.heat ?? null, { length: text, number }),
  };
}
