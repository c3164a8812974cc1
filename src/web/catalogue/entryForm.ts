import { asTyped } from '../../../shared/quantity/fieldText.ts';
import { catalogueWasherSchema, familySchema } from '../../../shared/schemas/catalogue.ts';
import { catalogueLatheSchema, catalogueLiningSchema } from '../../../shared/schemas/chosen.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { catalogueGaugeSchema } from '../../../shared/schemas/gauge.ts';
import { catalogueSteelSchema } from '../../../shared/schemas/steel.ts';
import type {
  CatalogueGauge,
  CatalogueStack,
  Entry,
  EntryBodies,
  Family,
} from '../../../shared/words/catalogue.ts';
import { isDay } from '../../../shared/words/day.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { type AnyFields, lowerFirst } from '../../../shared/words/fields/field.ts';
import { GAUGE } from '../../../shared/words/fields/gauge.ts';
import { CATALOGUE_LATHE } from '../../../shared/words/fields/lathe.ts';
import { LINING } from '../../../shared/words/fields/lining.ts';
import { STEEL } from '../../../shared/words/fields/steel.ts';
import { CATALOGUE_NUT, CATALOGUE_STUD, CATALOGUE_WASHER } from '../../../shared/words/fields/stud.ts';
import type { CatalogueKind } from '../../../shared/words/terms.ts';
import { FAMILY_EXPECTED, gaugeExpected } from '../../shop/doubts/coverExpected.ts';
import { dueDoubt } from '../../shop/doubts/dayDoubt.ts';
import { LATHE_EXPECTED, LINING_EXPECTED } from '../../shop/doubts/limitsExpected.ts';
import { STEEL_EXPECTED } from '../../shop/doubts/steelExpected.ts';
import { askDay } from '../request/askedDay.ts';
import { askAboutFigures } from '../request/askFigures.ts';
import { type BodyRead, boxAt, readBody } from '../request/bodyForm.ts';
import type { Fields, TypedForm, Writing } from '../request/typed.ts';
import { askAboutEntryStack, askAboutNut, askAboutStud, askAboutWasher } from '../stud/asked.ts';
import { readNut } from '../stud/nutForm.ts';
import { readStack, stackAsTyped, stackFieldOf } from '../stud/stackForm.ts';
import { readStud } from '../stud/studForm.ts';
import { type AtHand, chosenAsTyped, readChosen } from './chosen.ts';
import { askMinimums } from './limitsAsked.ts';

/** The fields of each kind but the stack, whose layers are rows. */
const FIELDS = {
  family: FAMILY,
  stud: CATALOGUE_STUD,
  nut: CATALOGUE_NUT,
  washer: CATALOGUE_WASHER,
  gauge: GAUGE,
  steel: STEEL,
  lining: LINING,
  lathe: CATALOGUE_LATHE,
};

/** Kinds whose fields are read as they stand, with what checks them whole. */
const PLAIN = {
  washer: catalogueWasherSchema,
  gauge: catalogueGaugeSchema,
  steel: catalogueSteelSchema,
  lining: catalogueLiningSchema,
  lathe: catalogueLatheSchema,
};
type PlainKind = keyof typeof PLAIN;

/** An entry as typed; null when something cannot be used, with the sentences in the form. */
export function readEntry(
  kind: CatalogueKind,
  form: TypedForm,
  atHand: AtHand,
  /** What is changed; null for what is new. */
  standing: EntryBodies[CatalogueKind] | null,
): EntryBodies[CatalogueKind] | null {
  if (kind === 'stud') return readStud(form);
  if (kind === 'stack') return readStack(form);
  if (kind === 'nut') return readNut(form);
  if (kind === 'family') return readFamily(form, atHand, standing as Family | null);
  return readPlain(kind, form);
}

/** What was typed and looks like a slip is asked about; of a cover type what can't be believed is refused beside it. */
export function askAboutEntry(
  kind: CatalogueKind,
  form: TypedForm,
  { today, standing }: { readonly today: string; readonly standing: EntryBodies[CatalogueKind] | null },
): void {
  if (kind === 'family') askAboutFamily(form, today, standing as Family | null);
  if (kind === 'gauge') askAboutGauge(form, today, standing as CatalogueGauge | null);
  if (kind === 'stud') askAboutStud(form);
  if (kind === 'stack') askAboutEntryStack(form);
  if (kind === 'nut') askAboutNut(form);
  if (kind === 'washer') askAboutWasher(form);
  if (kind === 'steel') askAboutFigures(form, STEEL, STEEL_EXPECTED);
  if (kind === 'lining') askAboutFigures(form, LINING, LINING_EXPECTED);
  if (kind === 'lathe') askAboutFigures(form, CATALOGUE_LATHE, LATHE_EXPECTED);
}

function askAboutFamily(form: TypedForm, today: string, standing: Family | null): void {
  const day = FAMILY.shopMinimumWallOn;
  askDay(form, day.box, `The ${lowerFirst(day.label)}`, {
    today,
    standing: standing?.shopMinimumWallOn ?? undefined,
  });
}

function askAboutGauge(form: TypedForm, today: string, standing: CatalogueGauge | null): void {
  const kinds = Object.keys(GAUGE.gaugeKind.options) as CatalogueGauge['gaugeKind'][];
  const kind = form.choice('gaugeKind', kinds) ?? GAUGE.gaugeKind.ifEmpty;
  askAboutFigures(form, GAUGE, gaugeExpected(kind));
  askAboutDue(form, today, standing?.dueOn ?? undefined);
}

/** A calibration that is due long after today, or was due already, may be a slip of the year. */
function askAboutDue(form: TypedForm, today: string, standing: string | undefined): void {
  const { box, label } = GAUGE.dueOn;
  const day = form.text(box);
  if (!isDay(day) || day === standing || form.text(`ok.${box}`) === day) return;
  const question = dueDoubt(label, day, today);
  if (question !== null) form.fault(`ok.${box}`, question);
}

/** The box that each place in a body came from. */
export function entryBox(kind: CatalogueKind, form: TypedForm): (path: string) => string {
  return kind === 'stack' ? stackFieldOf(form) : (path) => boxAt(FIELDS[kind], path) ?? 'name';
}

/** An entry as its form would have it typed. */
export function entryAsTyped({ kind, body }: Entry<CatalogueKind>, writing: Writing): Fields {
  if (kind === 'stack') return stackAsTyped(body as CatalogueStack, writing);
  const typed = asTyped(FIELDS[kind], body, writing);
  return kind === 'family' ? { ...typed, ...chosenAsTyped(body as Family) } : typed;
}

/** Field by field as typed, then checked whole. */
function readPlain(kind: PlainKind, form: TypedForm): EntryBodies[PlainKind] | null {
  const read = readBody<AnyFields>(form, FIELDS[kind]);
  if (form.faults.length > 0) return null;
  const parsed = PLAIN[kind].safeParse(read);
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), entryBox(kind, form));
  return null;
}

/** The boxes of person and day are begun for whoever adds a type; they say nothing where no minimum is set. */
function whoSetMinimum(
  read: BodyRead<typeof FAMILY>,
): Pick<Family, 'shopMinimumWallBy' | 'shopMinimumWallOn' | 'shopMinimumWallSource'> {
  const { shopMinimumWallMm: mm, shopMinimumWallBy, shopMinimumWallOn, shopMinimumWallSource } = read;
  if (mm === null) return { shopMinimumWallBy: null, shopMinimumWallOn: null, shopMinimumWallSource };
  const named = shopMinimumWallBy !== null && shopMinimumWallOn !== null;
  return {
    shopMinimumWallBy,
    shopMinimumWallOn,
    shopMinimumWallSource: named ? null : shopMinimumWallSource,
  };
}

function readFamily(form: TypedForm, atHand: AtHand, standing: Family | null): Family | null {
  const read = readBody(form, FAMILY);
  const steel = readChosen(form, FAMILY.steel.box, 'steel', atHand.steel, standing?.steel);
  const lining = readChosen(form, FAMILY.lining.box, 'lining', atHand.lining, standing?.lining);
  const { source: _, ...figures } = read.limits ?? { source: '' };
  if (read.limits !== null && Object.values(figures).every((mm) => mm === null))
    form.fault(
      entryBox('family', form)('limits.source'),
      'A source is given, but no figure. Enter one, or leave the source blank.',
    );
  // Asked before the schema looks: a slip is told with the value meant, not as a cover that cannot be.
  if (form.faults.length === 0) askAboutFigures(form, FAMILY, FAMILY_EXPECTED);
  if (form.faults.length === 0) askMinimums(form);
  if (form.faults.length > 0) return null;
  const parsed = familySchema.safeParse({ ...read, steel, lining, ...whoSetMinimum(read) });
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), entryBox('family', form));
  return null;
}
