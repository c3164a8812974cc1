import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { coverCheckSchema } from '../../../shared/schemas/coverCheck.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import type { Entry, Family, ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { CoverCheckInput } from '../../../shared/words/cover.ts';
import {
  COVER_SHAPE,
  OWN_BENDING,
  OWN_BENDING_AT,
  QUICK_LIMITS,
} from '../../../shared/words/fields/cover.ts';
import { PLAN } from '../../../shared/words/fields/job.ts';
import type { MasterCheck } from '../../../shared/words/gauges/masterChecks.ts';
import type { ChosenGauge } from '../../../shared/words/job.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { CoverFormView, DoubtView } from '../../../views/pages/cover/coverFields.tsx';
import { OWN_BENDING_EXPECTED, planExpected, SHAPE_EXPECTED } from '../../shop/doubts/coverExpected.ts';
import { cleanUpMm } from '../../shop/doubts/coverFigures.ts';
import { figuresOf, gaugesAtHand } from '../../shop/gauges.ts';
import { notInspected } from '../../shop/jobInput.ts';
import { limitsFor } from '../../shop/limitsFor.ts';
import { gaugesUsed } from '../../shop/mastersChecked.ts';
import { chosenGauges } from '../measuring/gaugesOnForm.ts';
import { askAboutFigures } from '../request/askFigures.ts';
import { noteBody, readBody } from '../request/bodyForm.ts';
import { type Fields, TypedForm } from '../request/typed.ts';
import { askedAgain } from './askedAgain.ts';
import { askAboutSetup } from './askSetup.ts';
import { AS_MEASURED, CRACK } from './asMeasured.ts';
import { fieldName, LENGTH_CELL, readMarks, readRows, type StationRow } from './coverRows.ts';
import { ownFamily } from './ownBending.ts';

const OWN_FAMILY = 'own';

export interface CoverForm {
  readonly view: CoverFormView;
  /** null while nothing was measured, or something typed cannot be used. */
  readonly input: CoverCheckInput | null;
  /** What was typed for each station and each mark sent to the calculation, in their order. */
  readonly typedStations: readonly { wall: string; face: string; mark: string }[];
  readonly typedMarks: readonly string[];
  readonly familyId: string;
  /** What bends: the family, or what was typed instead of one. */
  readonly bends: Family | null;
  readonly gauges: readonly ChosenGauge[];
  readonly withUnits: TypedForm['withUnits'];
}

/** What the shop has in its catalog and asks of a cover, for the form to choose from. */
export interface ShopAtHand {
  readonly families: readonly { readonly id: string; readonly body: Family }[];
  readonly criteria: ShopCriteria;
  readonly gauges: readonly Entry<'gauge'>[];
  /** Of the gauges chosen. */
  readonly masterChecks: readonly MasterCheck[];
  /** A day, `2026-11-24`. */
  readonly today: string;
}

/** The cover chosen or typed, and its rows. */
type Chosen = ReturnType<typeof chosenCover>;

/**
 * The form of "a cover, quickly": what was typed, kept as typed, and the question it asks of the calculation.
 * Rows are named by number: `a.0` angle, `r.0` radius, `w.0` wall (repeats parted by semicolons), `f.0` face
 * height, `d.0` mark depth, `ok.w.0` a wall confirmed that was asked about; marks between stations `ma.0`, `mr.0`, `md.0`.
 */
export function readCoverForm(sent: Fields, shop: ShopAtHand, writing: Writing): CoverForm {
  const { fix, ...fields } = sent;
  const read = readTyped(fields, shop, writing);
  // A press on "use 4.92 mm" sends `fix=w.3=4.92 mm`: the answer to that question, and no other field, is put in.
  const answered = read.view.doubts.find(({ name, meant }) => meant !== null && fix === `${name}=${meant}`);
  return answered ? readTyped({ ...fields, [answered.name]: answered.meant! }, shop, writing) : read;
}

function readTyped(fields: Fields, shop: ShopAtHand, writing: Writing): CoverForm {
  const form = new TypedForm(fields, writing);
  noteBody(form, COVER_SHAPE);
  noteBody(form, OWN_BENDING, { at: OWN_BENDING_AT });
  for (const name of Object.keys(fields)) if (LENGTH_CELL.test(name)) form.note(name, 'length');
  const chosen = chosenCover(form, fields, shop);
  const { cover, measured, marks } = chosen;
  const gauges = chosenGauges(form, shop.gauges);
  const known = {
    gauge: figuresOf(readBody(form, { gauge: AS_MEASURED.gauge }).gauge, gauges),
    criteria: shop.criteria,
  };
  const family = chosen.family?.body ?? null;
  const doubts = cover
    ? askedAgain(form, measured, marks, { ...known, family, nominalWallMm: cover.nominalWallMm })
    : [];
  const input = readInput(form, chosen, gauges, shop, doubts);
  return {
    view: viewOf(form, chosen, [...doubts, ...figuresAsked(form)], shop),
    input,
    typedStations: measured.map((row) => ({
      wall: form.text(`w.${row.index}`),
      face: form.text(`f.${row.index}`),
      mark: form.text(`d.${row.index}`),
    })),
    typedMarks: marks.filter(({ complete }) => complete).map(({ index }) => form.text(`md.${index}`)),
    familyId: chosen.familyId,
    bends: chosen.family?.body ?? (cover && ownFamily(form, cover)),
    gauges,
    withUnits: (address) => form.withUnits(address),
  };
}

function chosenCover(form: TypedForm, fields: Fields, { families }: ShopAtHand) {
  const family = families.find((one) => one.id === fields.family) ?? null;
  const familyId = family?.id ?? (fields.family === OWN_FAMILY || families.length === 0 ? OWN_FAMILY : '');
  const cover = family ? shapeOf(family.body) : familyId === OWN_FAMILY ? ownShape(form) : null;
  const rows = cover ? readRows(form, fields, cover) : [];
  const isMeasured = (row: StationRow) =>
    row.walls.length > 0 || form.has(`f.${row.index}`) || form.has(`d.${row.index}`);
  return { family, familyId, cover, rows, measured: rows.filter(isMeasured), marks: readMarks(form, fields) };
}

/** The question to the calculation; null while nothing was measured, or with a fault that the form then names. */
function readInput(
  form: TypedForm,
  { family, cover, measured, marks }: Chosen,
  chosen: readonly ChosenGauge[],
  { criteria, gauges, masterChecks, today }: ShopAtHand,
  doubts: readonly DoubtView[],
): CoverCheckInput | null {
  const measuredHow = readBody(form, AS_MEASURED);
  askAboutSetup(form, AS_MEASURED, family?.body ?? null);
  if (family === null) askAboutOwnCover(form);
  const typed = readBody(form, QUICK_LIMITS);
  const { plannedCutMm } = readBody(form, PLAN);
  const { crackTest } = readBody(form, CRACK);
  // A cracked cover is answered before anything is measured.
  const nothing = measured.length === 0 && (crackTest !== 'found' || marks.some((mark) => mark.complete));
  if (cover === null || nothing || form.faults.length > 0) return null;
  const parsed = coverCheckSchema.safeParse({
    cover: { ...cover, densityKgPerM3: null },
    stations: measured.map(({ angleDeg, radiusMm, walls, faceMm, markDepthMm }) => ({
      angleDeg,
      radiusMm,
      wallMm: walls,
      faceMm,
      markDepthMm,
    })),
    marks: marks
      .filter((mark) => mark.complete)
      .map(({ angleDeg, radiusMm, depthMm }) => ({ angleDeg, radiusMm, depthMm })),
    ...measuredHow,
    gauge: figuresOf(measuredHow.gauge, chosen),
    ...limitsFor(family?.body ?? null, criteria, gaugesAtHand(gauges), { typed, cover }),
    plannedCutMm,
    crackTest,
    notInspected: notInspected([]),
    doubtfulReadings: doubts.map(({ label }) => label.charAt(0).toLowerCase() + label.slice(1)),
    gaugesUsed: gaugesUsed(chosen, masterChecks, today),
    measuredOn: today,
  });
  if (parsed.success) {
    if (plannedCutMm !== null && !form.isSure(PLAN.plannedCutMm.box))
      askAboutFigures(form, PLAN, planExpected(cleanUpMm(parsed.data)));
    return form.faults.length > 0 ? null : parsed.data;
  }
  form.addFaults(faultsOf(parsed.error), (path) => fieldName(path, measured));
  return null;
}

/** The dimensions typed instead of a cover type. */
function askAboutOwnCover(form: TypedForm): void {
  askAboutFigures(form, COVER_SHAPE, SHAPE_EXPECTED);
  askAboutFigures(form, OWN_BENDING, OWN_BENDING_EXPECTED, { at: OWN_BENDING_AT });
}

/** Figures that look like a slip, and what cannot be read, where something else was probably meant. */
function figuresAsked(form: TypedForm): readonly DoubtView[] {
  return form.doubts.map(({ name, typed, question, says, meant = [] }) => ({
    name,
    label: '',
    question,
    meant: meant[0] ?? null,
    asTyped: says === null ? null : typed,
  }));
}

/** What a question stands for is no fault beside it. */
function faultsUnasked({ faults, doubts }: TypedForm): readonly Fault[] {
  return faults.filter(({ path }) => !doubts.some(({ name, says }) => says !== null && name === path));
}

function viewOf(
  form: TypedForm,
  { family, familyId, cover, rows, marks, measured }: Chosen,
  doubts: readonly DoubtView[],
  { families, gauges }: ShopAtHand,
): CoverFormView {
  return {
    fields: form.fields,
    familyId,
    families: families.map(({ id, body }) => ({ id, name: body.name })),
    cover,
    family: family?.body ?? null,
    rows: rows.map(({ index, angleDeg, radiusMm, own, place }) => ({
      index,
      angleDeg,
      radiusMm,
      own,
      place,
    })),
    markRows: marks.map((mark) => mark.index),
    doubts,
    faults: faultsUnasked(form),
    measuredCount: measured.length,
    gauges,
    lengthUnit: form.writing.lengthUnit,
    decimalSign: form.writing.decimalSign,
  };
}

function shapeOf(family: Family) {
  const { studCount, studCircleDiameterMm, trackInnerDiameterMm, trackOuterDiameterMm, nominalWallMm } =
    family;
  return { studCount, studCircleDiameterMm, trackInnerDiameterMm, trackOuterDiameterMm, nominalWallMm };
}

/** The dimensions typed instead of a cover type; null until they lay out stations. */
function ownShape(form: TypedForm) {
  const { densityKgPerM3: _, ...shape } = readBody(form, COVER_SHAPE, { idle: true });
  const { studCount, studCircleDiameterMm, trackInnerDiameterMm, trackOuterDiameterMm, nominalWallMm } =
    shape;
  if (
    studCount === null ||
    studCircleDiameterMm === null ||
    trackInnerDiameterMm === null ||
    trackOuterDiameterMm === null ||
    nominalWallMm === null
  ) {
    return null;
  }
  const { studCount: count, trackInnerDiameterMm: inner } = COVER_SHAPE;
  if (studCount < count.least || studCount > count.most) {
    form.fault(
      count.box,
      `${count.label} is ${studCount}; it must be ${count.least} to ${count.most}. Count the studs again.`,
    );
    return null;
  }
  if (trackInnerDiameterMm <= 0 || trackInnerDiameterMm >= trackOuterDiameterMm) {
    form.fault(
      inner.box,
      `${inner.label} must be more than 0 and less than the outside one. Measure both again.`,
    );
    return null;
  }
  return { studCount, studCircleDiameterMm, trackInnerDiameterMm, trackOuterDiameterMm, nominalWallMm };
}
