import { doubt } from '../../../shared/quantity/doubt.ts';
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
import { LOOKED, PLAN } from '../../../shared/words/fields/job.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import type { ChosenGauge } from '../../../shared/words/job.ts';
import type { CoverFormView, DoubtView, StationRowView } from '../../../views/pages/cover/coverFields.tsx';
import { figuresOf, gaugesAtHand } from '../../shop/gauges.ts';
import { placesOn } from '../../shop/jobPlaces.ts';
import { chosenGauges } from '../measuring/gaugesOnForm.ts';
import { boxAt, noteBody, readBody } from '../request/bodyForm.ts';
import { type Fields, splitRepeats, TypedForm } from '../request/typed.ts';
import { ownFamily } from './ownBending.ts';

const OWN_FAMILY = 'own';
/** Far more than the 400 that are taken, so that too many are refused with a sentence and not cut off. */
const MOST_ROWS = 1000;

export interface CoverForm {
  readonly view: CoverFormView;
  /** null while nothing was measured, or something typed cannot be used. */
  readonly input: CoverCheckInput | null;
  /** What was typed for each station sent to the calculation, in its order. */
  readonly typedStations: readonly { wall: string; face: string; mark: string }[];
  readonly familyId: string;
  /** What bends: the family, or what was typed instead of one. */
  readonly bends: Family | null;
  readonly gauges: readonly ChosenGauge[];
  readonly withUnits: TypedForm['withUnits'];
}

interface NamedFamily {
  readonly id: string;
  readonly body: Family;
}

/** A length in a row of the tables: radius, wall, indicator reading, heat mark. */
const LENGTH_CELL = /^(r|w|f|d|mr|md)\.\d+$/;
const CRACK = { crackTest: { ...LOOKED.crackTest, box: 'crack' } } as const;
/** What is asked of how it is measured without a job, by the names of the question. */
const AS_MEASURED = {
  gauge: SETUP.gaugeFigures,
  chucking: SETUP.chucking,
  releaseClearanceMm: SETUP.releaseClearanceMm,
  knockOn: SETUP.knockOn,
} as const;

/**
 * The form of "a cover, quickly": what was typed, kept as typed, and the question it asks of the calculation.
 * Rows are named by number: `a.0` angle, `r.0` radius, `w.0` wall (repeats parted by semicolons), `f.0` face
 * height, `d.0` mark depth, `ok.0` a doubted reading confirmed; marks between stations `ma.0`, `mr.0`, `md.0`.
 */
export function readCoverForm(
  sent: Fields,
  families: readonly NamedFamily[],
  criteria: ShopCriteria,
  writing: Writing,
  gauges: readonly Entry<'gauge'>[] = [],
  today: string | null = null,
): CoverForm {
  const fields = applyFix(sent);
  const form = new TypedForm(fields, writing);
  noteBody(form, COVER_SHAPE);
  noteBody(form, OWN_BENDING, { at: OWN_BENDING_AT });
  for (const name of Object.keys(fields)) if (LENGTH_CELL.test(name)) form.note(name, 'length');
  const family = families.find((one) => one.id === fields.family) ?? null;
  const familyId = family?.id ?? (fields.family === OWN_FAMILY || families.length === 0 ? OWN_FAMILY : '');
  const cover = family ? shapeOf(family.body) : familyId === OWN_FAMILY ? ownShape(form) : null;
  const bends = family?.body ?? (cover && ownFamily(form, cover));
  const rows = cover ? readRows(form, fields, cover) : [];
  const marks = readMarks(form, fields);
  const measured = rows.filter(
    (row) => row.walls.length > 0 || form.has(`f.${row.index}`) || form.has(`d.${row.index}`),
  );
  const doubts = cover ? doubtsOf(form, fields, measured, cover.nominalWallMm, writing) : [];

  const chosen = chosenGauges(form, gauges);
  const measuredHow = readBody(form, AS_MEASURED);
  const raw = cover && {
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
    criteria: readCriteria(form, family?.body ?? null, criteria),
    makerMinimumWallMm: family?.body.makerMinimumWallMm ?? null,
    makerMinimumWallSource: family?.body.makerMinimumWallSource ?? null,
    plannedCutMm: readBody(form, PLAN).plannedCutMm,
    crackTest: readBody(form, CRACK).crackTest,
    familyLimits: family?.body.limits ?? null,
    doubtfulReadings: doubts.map((one) => `wall at station ${one.row + 1}`),
    gaugesUsed: chosen.map(({ gauge }) => ({ name: gauge.name, dueOn: gauge.dueOn })),
    measuredOn: today,
    gaugesAtHand: gaugesAtHand(gauges),
    balance: criteria.balance ?? null,
  };

  let input: CoverCheckInput | null = null;
  if (raw && measured.length > 0 && form.faults.length === 0) {
    const parsed = coverCheckSchema.safeParse(raw);
    if (parsed.success) input = parsed.data;
    else form.addFaults(faultsOf(parsed.error), (path) => fieldName(path, measured));
  }
  return {
    view: {
      fields,
      familyId,
      families: families.map(({ id, body }) => ({ id, name: body.name })),
      cover,
      family: family?.body ?? null,
      rows: rows.map(
        ({ index, angleDeg, radiusMm, own, place }): StationRowView => ({
          index,
          angleDeg,
          radiusMm,
          own,
          place,
        }),
      ),
      markRows: marks.map((mark) => mark.index),
      doubts,
      faults: form.faults,
      measuredCount: measured.length,
      gauges,
      lengthUnit: writing.lengthUnit,
      decimalSign: writing.decimalSign,
    },
    input,
    typedStations: measured.map((row) => ({
      wall: form.text(`w.${row.index}`),
      face: form.text(`f.${row.index}`),
      mark: form.text(`d.${row.index}`),
    })),
    familyId,
    bends,
    gauges: chosen,
    withUnits: (address) => form.withUnits(address),
  };
}

/** A press on "use 4.92 mm" sends `fix=w.3=4.92`: that field, and no other, is replaced. */
function applyFix(sent: Fields): Fields {
  const match = /^([a-z]{1,2}\.\d{1,3})=(.{1,40})$/.exec(sent.fix ?? '');
  const { fix: _, ...rest } = sent;
  return match ? { ...rest, [match[1]!]: match[2]! } : rest;
}

function shapeOf(family: Family) {
  const { studCount, studCircleDiameterMm, trackInnerDiameterMm, trackOuterDiameterMm, nominalWallMm } =
    family;
  return { studCount, studCircleDiameterMm, trackInnerDiameterMm, trackOuterDiameterMm, nominalWallMm };
}

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
  if (studCount < 2 || studCount > 12) {
    form.fault(count.box, `${count.label} is ${studCount}; this works for 2 to 12. Count the studs again.`);
    return null;
  }
  if (trackInnerDiameterMm <= 0 || trackInnerDiameterMm >= trackOuterDiameterMm) {
    form.fault(
      inner.box,
      `${inner.label} must be more than 0 and less than the outer one. Measure both again.`,
    );
    return null;
  }
  return { studCount, studCircleDiameterMm, trackInnerDiameterMm, trackOuterDiameterMm, nominalWallMm };
}

function readRows(
  form: TypedForm,
  fields: Fields,
  cover: { studCount: number; trackInnerDiameterMm: number; trackOuterDiameterMm: number },
) {
  const layout = placesOn(cover);
  const typedRows = indexesOf(fields, /^[arwfd]\.(\d{1,3})$/);
  const last = Math.max(layout.length - 1, ...typedRows);
  const extra = fields.add === 'station' ? 1 : 0;
  return Array.from({ length: Math.min(last + 1 + extra, MOST_ROWS) }, (_, index) => {
    const planned = layout[index];
    const name = `station ${index + 1}`;
    const angleDeg = planned?.angleDeg ?? form.angle(`a.${index}`, `Clock position of ${name}`);
    const radiusMm = planned?.radiusMm ?? form.length(`r.${index}`, `Radius of ${name}`);
    const walls = form.lengths(`w.${index}`, `Wall at ${name}`);
    const faceMm = form.length(`f.${index}`, `Face height at ${name}`);
    const markDepthMm = form.length(`d.${index}`, `Mark depth at ${name}`);
    const typedAny = form.has(`w.${index}`) || faceMm !== null || markDepthMm !== null;
    if (typedAny && angleDeg === null) form.needed(angleDeg, `a.${index}`, `Clock position of ${name}`);
    if (typedAny && radiusMm === null) form.needed(radiusMm, `r.${index}`, `Radius of ${name}`);
    if (typedAny && !form.has(`w.${index}`)) form.needed(null, `w.${index}`, `Wall at ${name}`);
    return {
      index,
      own: planned === undefined,
      angleDeg: angleDeg ?? 0,
      radiusMm: radiusMm ?? 0,
      place: planned?.name ?? '',
      walls,
      faceMm,
      markDepthMm,
    };
  });
}

function readMarks(form: TypedForm, fields: Fields) {
  const typed = indexesOf(fields, /^m[ard]\.(\d{1,3})$/);
  const count = Math.max(-1, ...typed) + 1 + (fields.add === 'mark' ? 1 : 0);
  return Array.from({ length: Math.min(count, MOST_ROWS) }, (_, index) => {
    const name = `mark ${index + 1}`;
    const angleDeg = form.angle(`ma.${index}`, `Clock position of ${name}`);
    const radiusMm = form.length(`mr.${index}`, `Radius of ${name}`);
    const depthMm = form.length(`md.${index}`, `Depth of ${name}`);
    const any = ['ma', 'mr', 'md'].some((key) => form.has(`${key}.${index}`));
    if (any) {
      form.needed(angleDeg, `ma.${index}`, `Clock position of ${name}`);
      form.needed(radiusMm, `mr.${index}`, `Radius of ${name}`);
      form.needed(depthMm, `md.${index}`, `Depth of ${name}`);
    }
    return {
      index,
      angleDeg,
      radiusMm,
      depthMm,
      complete: angleDeg !== null && radiusMm !== null && depthMm !== null,
    };
  });
}

function indexesOf(fields: Fields, pattern: RegExp): number[] {
  return Object.keys(fields)
    .map((name) => pattern.exec(name)?.[1])
    .filter((index) => index !== undefined)
    .map(Number)
    .filter((index) => index < MOST_ROWS);
}

function doubtsOf(
  form: TypedForm,
  fields: Fields,
  rows: readonly { index: number; walls: readonly number[] }[],
  nominalWallMm: number,
  writing: Writing,
): DoubtView[] {
  return rows.flatMap(({ index, walls }) => {
    const parts = splitRepeats(fields[`w.${index}`] ?? '');
    const found = walls.flatMap((valueMm, i) => {
      if (valueMm <= 0) return [];
      const asked = doubt({
        valueMm,
        expectedMm: nominalWallMm,
        typed: parts[i] ?? '',
        unit: writing.lengthUnit,
        decimalSign: writing.decimalSign,
      });
      return asked ? [{ ...asked, at: i }] : [];
    })[0];
    if (!found || form.text(`ok.${index}`) === parts.join('; ')) return [];
    const { meantTyped } = found;
    const meant =
      meantTyped === null ? null : parts.map((part, i) => (i === found.at ? meantTyped : part)).join('; ');
    return [{ row: index, question: found.question, meant, asTyped: parts.join('; ') }];
  });
}

function readCriteria(form: TypedForm, family: Family | null, criteria: ShopCriteria) {
  const typed = readBody(form, QUICK_LIMITS);
  const typedMinimum = typed.minimumWallMm;
  const shopMinimum = family?.shopMinimumWallMm ?? criteria.minimumWallMm;
  return {
    minimumWallMm: typedMinimum ?? shopMinimum,
    minimumWallSource:
      typedMinimum !== null
        ? 'typed on this page'
        : family?.shopMinimumWallMm != null
          ? (family.shopMinimumWallSource ?? 'the shop')
          : shopMinimum === null
            ? null
            : `the criteria of ${criteria.shopName}`,
    faceRunoutLimitMm: typed.faceRunoutLimitMm ?? criteria.faceRunoutLimitMm,
    cleanUpAllowanceMm: typed.cleanUpAllowanceMm ?? criteria.cleanUpAllowanceMm,
    confidence: criteria.confidence,
    typicalCutMm: criteria.typicalCutMm,
  };
}

/** A path of the schema as the name of the field it came from. */
function fieldName(path: string, rows: readonly { index: number }[]): string {
  const station = /^stations\.(\d+)(?:\.(\w+))?/.exec(path);
  if (station) {
    const index = rows[Number(station[1])]?.index ?? Number(station[1]);
    const key =
      { angleDeg: 'a', radiusMm: 'r', wallMm: 'w', faceMm: 'f', markDepthMm: 'd' }[station[2] ?? 'wallMm'] ??
      'w';
    return `${key}.${index}`;
  }
  const mark = /^marks\.(\d+)(?:\.(\w+))?/.exec(path);
  if (mark)
    return `${{ angleDeg: 'ma', radiusMm: 'mr', depthMm: 'md' }[mark[2] ?? 'depthMm'] ?? 'md'}.${mark[1]}`;
  const [part, below] = [path.split('.')[0], path.replace(/^[^.]*\./, '')];
  const box =
    part === 'cover'
      ? boxAt(COVER_SHAPE, below)
      : part === 'criteria'
        ? boxAt(QUICK_LIMITS, below)
        : boxAt({ ...AS_MEASURED, ...PLAN }, path);
  return box ?? 'w.0';
}
