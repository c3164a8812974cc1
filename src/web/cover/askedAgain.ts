import { doubtsAmong, type ReadingInDoubt } from '../../../shared/measuring/readingDoubt.ts';
import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
import type { TypedLength } from '../../../shared/quantity/slip.ts';
import type { Family, ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { Gauge } from '../../../shared/words/cover.ts';
import { QUICK_LIMITS } from '../../../shared/words/fields/cover.ts';
import type { ReadingKind } from '../../../shared/words/job.ts';
import type { DoubtView } from '../../../views/pages/cover/coverFields.tsx';
import { expectedOf } from '../../shop/doubts/coverDoubts.ts';
import { limitDoubts } from '../../shop/doubts/limitDoubt.ts';
import { splitRepeats, type TypedForm } from '../request/typed.ts';
import type { MarkRow, StationRow } from './coverRows.ts';

/** One part of a box, read. */
interface Part {
  readonly name: string;
  /** "Wall at station 3". */
  readonly label: string;
  /** Which of several readings in the box. */
  readonly at: number;
  readonly reading: ReadingInDoubt;
}

/** What is asked about on the quick page: readings that look like slips, and limits that can hardly be meant. */
export function askedAgain(
  form: TypedForm,
  rows: readonly StationRow[],
  marks: readonly MarkRow[],
  given: {
    readonly nominalWallMm: number;
    readonly gauge: Gauge | null;
    readonly family: Family | null;
    readonly criteria: ShopCriteria;
  },
): readonly DoubtView[] {
  const parts = [
    ...rows.flatMap((row) => partsOf(form, row)),
    ...marks.flatMap((mark) => partOf(form, mark)),
  ];
  const found = doubtsAmong(
    parts.map(({ reading }) => reading),
    expectedOf(given.nominalWallMm, given.gauge),
    (i) => isConfirmed(form, parts[i]!.name),
  );
  const once = found.filter(
    ({ index }, i) => found.findIndex((one) => parts[one.index]!.name === parts[index]!.name) === i,
  );
  return [
    ...once.map(({ index, doubt }): DoubtView => {
      const { name, label, at } = parts[index]!;
      return view(form, name, label, doubt.question, inPlace(form, name, at, doubt.meantTyped));
    }),
    ...limitsAsked(form, given),
  ];
}

function limitsAsked(
  form: TypedForm,
  {
    nominalWallMm,
    family,
    criteria,
  }: { nominalWallMm: number; family: Family | null; criteria: ShopCriteria },
): readonly DoubtView[] {
  const { minimumWallMm, faceRunoutLimitMm, cleanUpAllowanceMm } = QUICK_LIMITS;
  const boxes = { minimumWallMm, faceRunoutLimitMm, cleanUpAllowanceMm };
  const typed = {
    minimumWallMm: typedIn(form, minimumWallMm.box),
    faceRunoutLimitMm: typedIn(form, faceRunoutLimitMm.box),
    cleanUpAllowanceMm: typedIn(form, cleanUpAllowanceMm.box),
  };
  const covers = [{ name: family?.name ?? '', nominalWallMm }];
  return limitDoubts(typed, criteria, covers).flatMap(({ limit, doubt }) => {
    if (limit === 'typicalCutMm') return [];
    const { box, label } = boxes[limit];
    return isConfirmed(form, box) ? [] : [view(form, box, label, doubt.question, doubt.meantTyped)];
  });
}

function view(
  form: TypedForm,
  name: string,
  label: string,
  question: string,
  meant: string | null,
): DoubtView {
  return { name, label, question, meant, asTyped: shownIn(form, name) };
}

/** A box as the person sees it, its readings parted alike. */
function shownIn(form: TypedForm, name: string): string {
  return splitRepeats(form.text(name)).join('; ');
}

function isConfirmed(form: TypedForm, name: string): boolean {
  return form.text(`ok.${name}`) === shownIn(form, name) && form.has(name);
}

/** What the box would hold if the other value was meant. */
function inPlace(form: TypedForm, name: string, at: number, meant: string | null): string | null {
  if (meant === null) return null;
  return splitRepeats(form.text(name))
    .map((part, i) => (i === at ? meant : part))
    .join('; ');
}

function typedIn(form: TypedForm, name: string, at = 0): TypedLength | null {
  const typed = splitRepeats(form.text(name))[at];
  const { lengthUnit, decimalSign } = form.writing;
  if (typed === undefined) return null;
  const read = readQuantity({ field: '', typed, kind: 'length', unit: lengthUnit, decimalSign });
  return read.ok ? { valueMm: read.value, typed: read.typed, unit: read.unit, decimalSign } : null;
}

function partsOf(form: TypedForm, row: StationRow): readonly Part[] {
  const place = { angleDeg: row.angleDeg, radiusMm: row.radiusMm };
  const one = (kind: ReadingKind, letter: string, label: string, at = 0): readonly Part[] => {
    const name = `${letter}.${row.index}`;
    const typed = typedIn(form, name, at);
    if (typed === null || (kind !== 'face' && typed.valueMm <= 0)) return [];
    return [
      { name, label: `${label} at station ${row.index + 1}`, at, reading: { ...place, kind, ...typed } },
    ];
  };
  return [
    ...splitRepeats(form.text(`w.${row.index}`)).flatMap((_, at) => one('wall', 'w', 'Wall', at)),
    ...one('face', 'f', 'Indicator reading'),
    ...one('mark', 'd', 'Heat mark depth'),
  ];
}

function partOf(form: TypedForm, { index, angleDeg, radiusMm }: MarkRow): readonly Part[] {
  const name = `md.${index}`;
  const typed = typedIn(form, name);
  if (typed === null || angleDeg === null || radiusMm === null || typed.valueMm <= 0) return [];
  const reading = { angleDeg, radiusMm, kind: 'mark' as const, ...typed };
  return [{ name, label: `Depth of heat mark ${index + 1}`, at: 0, reading }];
}
