import { doubt } from '../../../shared/quantity/doubt.ts';
import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { writeAsTyped } from '../../../shared/quantity/writeQuantity.ts';
import type { Job, NewReading, Pass, Reading, ReadingKind } from '../../../shared/words/job.ts';
import { type Place, readPlace, turned } from '../../../shared/words/places.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { MeasureProps, PlaceView } from '../../../views/pages/job/measure.tsx';
import type { Compared } from '../../../views/parts/sideBySide.tsx';
import { placeOn, placesRead } from '../../shop/jobPlaces.ts';
import { type Fields, splitRepeats, TypedForm } from '../request/typed.ts';

const KINDS = ['wall', 'face', 'mark'] as const;
const LETTER: Readonly<Record<ReadingKind, string>> = { wall: 'w', face: 'f', mark: 'd' };
const LABEL: Readonly<Record<ReadingKind, string>> = {
  wall: 'Wall',
  face: 'Face height',
  mark: 'Mark depth',
};
/** Empty rows at the end, for places of the person's own. */
const SPARE_ROWS = 2;
/** As many as the calculation takes, with the empty rows a form ends in. */
const MOST_PLACES = 400 + SPARE_ROWS;

/** The measuring table as it stands, each cell as it would be typed. */
export function placeViews(job: Job, pass: Pass, writing: Writing): PlaceView[] {
  const views = placesRead(job, pass).all.map(
    ({ angleDeg, radiusMm, name, readings: here }, index): PlaceView => {
      const cell = (kind: ReadingKind) => {
        const readings = here.filter((one) => one.kind === kind);
        return {
          text: readings.map((one) => cellText(one, writing)).join('; '),
          ids: readings.map((one) => one.id).join(','),
        };
      };
      const [wall, face, mark] = [cell('wall'), cell('face'), cell('mark')];
      return {
        index,
        angleDeg,
        radiusMm,
        place: name,
        own: false,
        wall: wall.text,
        face: face.text,
        mark: mark.text,
        was: { wall: wall.ids, face: face.ids, mark: mark.ids },
      };
    },
  );
  const spare = Array.from({ length: SPARE_ROWS }, (_, i): PlaceView => {
    const empty = { wall: '', face: '', mark: '' };
    return { index: views.length + i, angleDeg: 0, radiusMm: 0, place: '', own: true, ...empty, was: empty };
  });
  return [...views, ...spare];
}

function cellText({ typed, valueMm }: Reading, { lengthUnit, decimalSign }: Writing): string {
  return valueMm === null ? '' : writeAsTyped(valueMm, typed, lengthUnit, decimalSign);
}

export interface ReadingsSent {
  readonly pass: Pass;
  readonly readings: readonly NewReading[];
  readonly faults: readonly Fault[];
  readonly doubts: MeasureProps['doubts'];
  /** Cells this person changed that somebody else changed meanwhile: theirs, and what was typed here. */
  readonly conflicts: readonly Compared[];
  /** The newest reading among theirs; null where they only withdrew. */
  readonly newest: Reading | null;
}

/**
 * What changed in the measuring table since it was shown. A cell left as it was sends nothing; a changed one adds a
 * reading that replaces the one shown; an emptied one withdraws it. Ids follow from the form's token and the cell, so
 * that sending the form twice adds nothing the second time.
 */
export function readReadings(job: Job, fields: Fields, writing: Writing, gauge: string): ReadingsSent {
  const form = new TypedForm(fields, writing);
  const pass: Pass = form.text('pass') === 'after' ? 'after' : 'before';
  const token = /^[A-Za-z0-9-]{8,40}$/.test(form.text('token')) ? form.text('token') : null;
  if (token === null)
    form.fault(
      '',
      'This form is not complete, so nothing was kept. Open the job again and type the readings there.',
    );
  const nominal = job.sections.received?.body.family.nominalWallMm ?? 0;
  const cover = job.sections.received?.body.family;
  const read = placesRead(job, pass);
  const readings: NewReading[] = [];
  const doubts: { name: string; question: string; asTyped: string }[] = [];
  const conflicts: Compared[] = [];
  let newest: Reading | null = null as Reading | null;

  const rows = rowIndexes(fields);
  if ((rows.at(-1) ?? 0) >= MOST_PLACES) {
    form.fault(
      '',
      `${(rows.at(-1) ?? 0) + 1} stations were sent; at most 400 can be kept with one job. Leave some out.`,
    );
  }
  for (const index of rows.filter((row) => row < MOST_PLACES)) {
    const place = placeOf(form, index);
    if (place === null) continue;
    const where = `station ${index + 1} (${placeOn(cover, place.angleDeg)})`;
    for (const kind of KINDS) {
      const name = `${LETTER[kind]}.${index}`;
      if (fields[name] === undefined) continue;
      const standing = read.readAt(kind, place);
      const parts = splitRepeats(form.text(name));
      const values = form.lengths(name, `${LABEL[kind]} at ${where}`);
      if (values.length !== parts.length) continue;
      if (values.length === standing.length && values.every((value, i) => value === standing[i]?.valueMm))
        continue;
      if ((fields[`was.${name}`] ?? '') !== standing.map((one) => one.id).join(',')) {
        conflicts.push({
          label: `${LABEL[kind]} at ${where}`,
          before: standing.map((one) => `${cellText(one, writing)} by ${one.who}`).join('; ') || 'withdrawn',
          after: parts.join('; ') || 'emptied',
        });
        for (const one of standing) if (newest === null || one.revision > newest.revision) newest = one;
        continue;
      }
      if (kind !== 'wall' && parts.length > 1) {
        form.fault(
          name,
          `${LABEL[kind]} at ${where}: "${form.text(name)}" is ${parts.length} readings; type one.`,
        );
        continue;
      }
      const bad = values.find((value) => (kind === 'wall' && value <= 0) || (kind === 'mark' && value < 0));
      if (bad !== undefined) {
        form.fault(
          name,
          `${LABEL[kind]} at ${where} is ${bad} mm; it must be ${kind === 'wall' ? 'more than' : 'at least'} 0 mm. Measure it again.`,
        );
        continue;
      }
      for (let i = 0; i < Math.max(parts.length, standing.length); i++) {
        const typed = parts[i];
        const was = standing[i];
        const valueMm = values[i] ?? null;
        if (was !== undefined && valueMm === was.valueMm) continue;
        const asked =
          kind === 'wall' && valueMm !== null && typed !== undefined
            ? doubt({
                valueMm,
                expectedMm: nominal,
                typed,
                unit: writing.lengthUnit,
                decimalSign: writing.decimalSign,
              })
            : null;
        if (asked && form.text(`ok.${name}`) !== parts.join('; ')) {
          doubts.push({ name, question: `Wall at ${where}: ${asked.question}`, asTyped: parts.join('; ') });
        }
        readings.push({
          id: `${token}-${pass[0]}${LETTER[kind]}${index}-${i}`,
          pass,
          kind,
          ...place,
          valueMm,
          typed: typed ?? '',
          gauge,
          doubtful: false,
          replaces: was?.id ?? null,
        });
      }
    }
  }
  return { pass, readings, faults: form.faults, doubts, conflicts, newest };
}

function rowIndexes(fields: Fields): number[] {
  const indexes = Object.keys(fields)
    .map((name) => /^[wfd]\.(\d{1,3})$/.exec(name)?.[1])
    .filter((index) => index !== undefined)
    .map(Number);
  return [...new Set(indexes)].sort((a, b) => a - b);
}

/** Where a row measures: as laid out, or as typed by the person; null for an empty row. */
function placeOf(form: TypedForm, index: number): Place | null {
  const given = readPlace(form.text(`at.${index}`));
  if (given) return given;
  if (!['w', 'f', 'd'].some((key) => form.has(`${key}.${index}`))) return null;
  const name = `station ${index + 1}`;
  const before = form.faults.length;
  const angleDeg = form.angle(`a.${index}`, `Clock position of ${name}`);
  const radiusMm = form.length(`r.${index}`, `Radius of ${name}`);
  if (form.faults.length === before) {
    form.needed(angleDeg, `a.${index}`, `Clock position of ${name}`);
    form.needed(radiusMm, `r.${index}`, `Radius of ${name}`);
  }
  if (angleDeg === null || radiusMm === null) return null;
  if (!(radiusMm > 0)) {
    form.fault(
      `r.${index}`,
      `Radius of ${name} is ${radiusMm} mm; it must be more than 0 mm. Measure it from the crank axis.`,
    );
    return null;
  }
  return { angleDeg: turned(angleDeg), radiusMm };
}
