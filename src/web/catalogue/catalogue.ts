import { type Request, type Response, Router } from 'express';
import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { withSign } from '../../../shared/quantity/plainNumber.ts';
import { writeLength } from '../../../shared/quantity/writeQuantity.ts';
import { familySchema } from '../../../shared/schemas/catalogue.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import type {
  CatalogueGauge,
  CatalogueStack,
  CatalogueStud,
  Entry,
  EntryBodies,
  Family,
  TypedInEntry,
} from '../../../shared/words/catalogue.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import {
  type CatalogueKind,
  CataloguePage,
  EntryPage,
  KIND_WORD,
} from '../../../views/pages/catalogue/cataloguePage.tsx';
import type { EntryStale } from '../../../views/parts/entryHistory.tsx';
import { renderPage } from '../../../views/render.ts';
import {
  addEntry,
  entryHistory,
  getEntry,
  listEntries,
  reinstateEntry,
  retireEntry,
  reviseEntry,
  typedIn,
} from '../../records/catalogue.ts';
import { StaleEdit } from '../../records/database/errors.ts';
import { BENDING_FIELDS, familyBendingAsTyped, readFamilyBending } from '../bending/bendingForm.ts';
import { NoSuchPage } from '../request/errors.ts';
import { frameOf, type House, rememberPreference } from '../request/house.ts';
import { type Fields, fieldsOf, TypedForm, unitOf } from '../request/typed.ts';
import { layerRows, readStack, stackAsTyped, stackFieldOf } from '../stud/stackForm.ts';
import { readStud, studFieldOf } from '../stud/studForm.ts';
import { entryRevisionsInWords, entryStale } from './entryWords.ts';
import { fitLimitsAsTyped, readFitLimits } from './fitLimitsForm.ts';
import { gaugeAsEntered, gaugeFieldOf, readGaugeEntry } from './gaugeEntry.ts';
import { typedOf } from './typedEntry.ts';

/** Cover families, studs, stacks and gauges: look, add, change as a new revision, retire. */
export function catalogueRouter(house: House): Router {
  const router = Router();
  const { db } = house.shop;

  router.get('/catalogue', async (req, res) => {
    res.send(
      renderPage(
        CataloguePage({
          frame: await frameOf(req, house),
          families: await listEntries(db, 'family', { retired: true }),
          studs: await listEntries(db, 'stud', { retired: true }),
          stacks: await listEntries(db, 'stack', { retired: true }),
          gauges: await listEntries(db, 'gauge', { retired: true }),
        }),
      ),
    );
  });

  router.get('/catalogue/:kind/new', async (req, res) => {
    await show(req, res, { kind: kindOf(req), entry: null, fields: {} });
  });

  router.post('/catalogue/:kind', async (req, res) => {
    const kind = kindOf(req);
    await save(req, res, kind, null, async (fields, body, typed) => {
      await addEntry(db, ctxOf(fields), { kind, body, typed });
    });
  });

  router.get('/catalogue/:kind/:id', async (req, res) => {
    const kind = kindOf(req);
    const entry = await mustFind(kind, String(req.params.id));
    const frame = await frameOf(req, house);
    await show(req, res, { kind, entry, fields: fieldsOfEntry(entry, frame) });
  });

  router.post('/catalogue/:kind/:id', async (req, res) => {
    const kind = kindOf(req);
    const entry = await mustFind(kind, String(req.params.id));
    await save(req, res, kind, entry, async (fields, body, typed) => {
      const fromRevision = Number(fields.from);
      await reviseEntry(db, ctxOf(fields), { kind, id: entry.id, fromRevision, body, typed });
    });
  });

  for (const [word, change] of [
    ['retire', retireEntry],
    ['reinstate', reinstateEntry],
  ] as const) {
    router.post(`/catalogue/:kind/:id/${word}`, async (req, res) => {
      const kind = kindOf(req);
      const entry = await mustFind(kind, String(req.params.id));
      const fields = fieldsOf(req.body);
      await attempt(req, res, { kind, entry, fields, body: null }, () =>
        change(db, ctxOf(fields), { kind, id: entry.id, fromRevision: Number(fields.from) }),
      );
    });
  }

  async function save(
    req: Request,
    res: Response,
    kind: CatalogueKind,
    entry: Entry<CatalogueKind> | null,
    write: (fields: Fields, body: EntryBodies[CatalogueKind], typed: TypedInEntry | null) => Promise<void>,
  ): Promise<void> {
    const fields = fieldsOf(req.body);
    const frame = await frameOf(req, house);
    const writing: Writing = {
      ...frame,
      lengthUnit: unitOf(fields) ?? frame.lengthUnit,
    };
    const form = new TypedForm(fields, writing);
    if (fields.add === 'layer') {
      await show(req, res, { kind, entry, fields });
      return;
    }
    const body = readBody(kind, form);
    if (body === null) {
      await show(req, res, { kind, entry, fields, faults: form.faults });
      return;
    }
    const shown = entry ? fieldsOfEntry(entry, writing) : {};
    const typed = typedOf(form, body, fieldOf(kind, form), shown);
    await attempt(req, res, { kind, entry, fields, body }, () => write(fields, body, typed));
  }

  async function attempt(
    req: Request,
    res: Response,
    sent: {
      kind: CatalogueKind;
      entry: Entry<CatalogueKind> | null;
      fields: Fields;
      /** null where only its use changes. */
      body: EntryBodies[CatalogueKind] | null;
    },
    change: () => Promise<unknown>,
  ): Promise<void> {
    const { kind, entry, fields, body } = sent;
    try {
      await change();
    } catch (error) {
      if (error instanceof StaleEdit && entry) {
        const stale = entryStale(kind, error, body, await frameOf(req, house));
        await show(req, res, { kind, entry: await mustFind(kind, entry.id), fields, stale });
        return;
      }
      if (!(error instanceof Refusal)) throw error;
      await show(req, res, { kind, entry, fields, faults: error.faults });
      return;
    }
    rememberPreference(res, 'initials', (fields.who ?? '').trim());
    res.redirect(303, `/catalogue#${kind}`);
  }

  async function show(
    req: Request,
    res: Response,
    page: {
      kind: CatalogueKind;
      entry: Entry<CatalogueKind> | null;
      fields: Fields;
      faults?: readonly Fault[];
      stale?: EntryStale;
    },
  ): Promise<void> {
    const { kind, entry, fields, faults = [], stale = null } = page;
    const frame = await frameOf(req, house);
    const told = async ({ id }: Entry) =>
      entryRevisionsInWords(kind, await entryHistory(db, kind, id), await typedIn(db, kind, id), frame);
    res.status(stale !== null ? 409 : faults.length > 0 ? 422 : 200).send(
      renderPage(
        EntryPage({
          frame,
          kind,
          entry,
          history: entry ? await told(entry) : [],
          fields,
          layerRows: layerRows(new TypedForm(fields, frame)),
          faults,
          stale,
        }),
      ),
    );
  }

  async function mustFind(kind: CatalogueKind, id: string): Promise<Entry<CatalogueKind>> {
    const entry = await getEntry(db, kind, id);
    if (entry === null)
      throw new NoSuchPage(`There is no ${KIND_WORD[kind].one} "${id.slice(0, 60)}" in the catalogue.`);
    return entry;
  }

  function ctxOf(fields: Fields) {
    return { who: fields.who ?? '', why: fields.why ?? '', now: house.now };
  }

  return router;
}

function kindOf(req: Request): CatalogueKind {
  const { kind } = req.params;
  if (kind === 'family' || kind === 'stud' || kind === 'stack' || kind === 'gauge') return kind;
  throw new NoSuchPage('The catalogue holds cover families, studs, stacks and gauges. Choose one of them.');
}

function readBody(kind: CatalogueKind, form: TypedForm): EntryBodies[CatalogueKind] | null {
  const name = form.text('name');
  if (name === '') form.fault('name', 'Name is empty. Give it the name the shop knows it by.');
  if (kind === 'stud') return readStud(form, name);
  if (kind === 'stack') return readStack(form, name);
  if (kind === 'gauge') return readGaugeEntry(form, name);
  return readFamily(form, name);
}

/** The field that each place in a body came from. */
function fieldOf(kind: CatalogueKind, form: TypedForm): (path: string) => string {
  if (kind === 'stud') return studFieldOf;
  if (kind === 'stack') return stackFieldOf(form);
  if (kind === 'gauge') return gaugeFieldOf;
  return familyFieldOf;
}

const FAMILY_FIELDS: Readonly<Record<string, string>> = {
  name: 'name',
  studCount: 'studCount',
  studCircleDiameterMm: 'circle',
  trackInnerDiameterMm: 'trackInner',
  trackOuterDiameterMm: 'trackOuter',
  nominalWallMm: 'nominal',
  bossDiameterMm: 'boss',
  rimDiameterMm: 'rim',
  padDiameterMm: 'pad',
  padThicknessMm: 'padThickness',
  ...BENDING_FIELDS,
  makerMinimumWallMm: 'makerMinimum',
  makerMinimumWallSource: 'makerSource',
  shopMinimumWallMm: 'shopMinimum',
  shopMinimumWallSource: 'shopSource',
  note: 'note',
};

const familyFieldOf = (path: string): string =>
  path.startsWith('limits.') ? path.replace('limits.', 'lim.') : (FAMILY_FIELDS[path] ?? 'name');

function readFamily(form: TypedForm, name: string): Family | null {
  const needed = (field: string, label: string) => {
    const value = form.length(field, label);
    return form.has(field) ? value : form.needed(value, field, label);
  };
  const studCount = form.count('studCount', 'Number of studs');
  if (!form.has('studCount')) form.needed(studCount, 'studCount', 'Number of studs');
  const raw = {
    name,
    make: form.choice('make', ['stamped', 'from-solid']) ?? 'stamped',
    sideWall: form.choice('sideWall', ['plain', 'ribbed']) ?? 'plain',
    studCount,
    studCircleDiameterMm: needed('circle', 'Stud circle diameter'),
    trackInnerDiameterMm: needed('trackInner', 'Track inner diameter'),
    trackOuterDiameterMm: needed('trackOuter', 'Track outer diameter'),
    nominalWallMm: needed('nominal', 'Wall when new'),
    bossDiameterMm: form.length('boss', 'Boss diameter'),
    rimDiameterMm: form.length('rim', 'Rim diameter'),
    padDiameterMm: form.length('pad', 'Pad diameter'),
    padThicknessMm: form.length('padThickness', 'Pad thickness'),
    ...readFamilyBending(form),
    limits: readFitLimits(form),
    makerMinimumWallMm: form.length('makerMinimum', "Maker's minimum wall"),
    makerMinimumWallSource: form.text('makerSource') || null,
    shopMinimumWallMm: form.length('shopMinimum', "The shop's minimum wall"),
    shopMinimumWallSource: form.text('shopSource') || null,
    ringAllowed: form.text('ring') === '1',
    note: form.text('note'),
  };
  if (raw.makerMinimumWallMm !== null && raw.makerMinimumWallSource === null) {
    form.fault('makerSource', "A maker's minimum needs its source. Say where it is printed.");
  }
  if (raw.shopMinimumWallMm !== null && raw.shopMinimumWallSource === null) {
    form.fault('shopSource', "The shop's minimum needs a name. Say who set it, and when.");
  }
  if (form.faults.length > 0) return null;
  const parsed = familySchema.safeParse(raw);
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), familyFieldOf);
  return null;
}

/** An entry as its form would have it typed. */
function fieldsOfEntry(entry: Entry<CatalogueKind>, writing: Writing): Fields {
  const text = (mm: number | null) =>
    mm === null ? '' : writeLength(mm, writing.lengthUnit, writing.decimalSign);
  const decimal = (value: number) => withSign(String(value), writing.decimalSign);
  if (entry.kind === 'family') return familyAsTyped(entry.body as Family, text, decimal);
  if (entry.kind === 'stud') return studAsTyped(entry.body as CatalogueStud, text);
  if (entry.kind === 'gauge') return gaugeAsEntered(entry.body as CatalogueGauge, text);
  return stackAsTyped(entry.body as CatalogueStack, text);
}

type Text = (mm: number | null) => string;
const plain = (value: number | null) => (value === null ? '' : String(value));

function familyAsTyped(body: Family, text: Text, decimal: (value: number) => string): Fields {
  return {
    name: body.name,
    make: body.make,
    sideWall: body.sideWall,
    studCount: String(body.studCount),
    circle: text(body.studCircleDiameterMm),
    trackInner: text(body.trackInnerDiameterMm),
    trackOuter: text(body.trackOuterDiameterMm),
    nominal: text(body.nominalWallMm),
    boss: text(body.bossDiameterMm),
    rim: text(body.rimDiameterMm),
    pad: text(body.padDiameterMm),
    padThickness: text(body.padThicknessMm),
    ...familyBendingAsTyped(body, { length: text, number: decimal }),
    ...fitLimitsAsTyped(body, text),
    makerMinimum: text(body.makerMinimumWallMm),
    makerSource: body.makerMinimumWallSource ?? '',
    shopMinimum: text(body.shopMinimumWallMm),
    shopSource: body.shopMinimumWallSource ?? '',
    ring: body.ringAllowed ? '1' : '',
    note: body.note,
  };
}

function studAsTyped({ name, stud, threadTyped, stock, shelf, note }: CatalogueStud, text: Text): Fields {
  return {
    name,
    thread: threadTyped,
    threadStart: text(stud.threadStartMm),
    threadEnd: text(stud.threadEndMm),
    projection: text(stud.projectionMm),
    tolerance: text(stud.lengthToleranceMm),
    pilot: text(stud.pilotDiameterMm),
    tensile: plain(stud.tensileMPa),
    proof: plain(stud.proofMPa),
    fillet: text(stud.filletMm),
    pitchDiameter: text(stud.pitchDiameterMeasuredMm ?? null),
    stock: plain(stock ?? null),
    shelf: shelf ?? '',
    note,
  };
}
