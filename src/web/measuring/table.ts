import type { Writing } from '../../../shared/quantity/fieldText.ts';
import type { Job, Pass, ReadingKind } from '../../../shared/words/job.ts';
import { type Place, readPlace, turned } from '../../../shared/words/places.ts';
import { briefLength } from '../../../shared/words/print.ts';
import { READING_WORD } from '../../../shared/words/readings.ts';
import type { PlaceView } from '../../../views/pages/job/measure.tsx';
import type { DoubtedLength } from '../../../views/parts/form/askedHere.ts';
import { placeOn, placesRead } from '../../shop/placesOfJob.ts';
import { type Cell, cellText, type ReadingsChanged, readingsChanged } from '../../shop/readingsSent.ts';
import { type Fields, splitRepeats, TypedForm } from '../request/typed.ts';

const KINDS = ['wall', 'face', 'mark'] as const;
const LETTER: Readonly<Record<ReadingKind, string>> = { wall: 'w', face: 'f', mark: 'd' };
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

export interface ReadingsSent extends ReadingsChanged {
  readonly pass: Pass;
  /** What cannot be read, where something else was probably meant. */
  readonly unread: readonly DoubtedLength[];
}

/** What changed in the measuring table since it was shown, or what in it cannot be used. */
export async function readReadings(
  job: Job,
  fields: Fields,
  writing: Writing,
  gauge: string,
): Promise<ReadingsSent> {
  const form = new TypedForm(fields, writing);
  const pass: Pass = form.text('pass') === 'after' ? 'after' : 'before';
  const token = /^[A-Za-z0-9-]{8,40}$/.test(form.text('token')) ? form.text('token') : null;
  if (token === null)
    form.fault(
      '',
      'This form is not complete, so nothing was saved. Open the job again and enter the readings there.',
    );
  const cells = cellsOf(form, job, pass);
  const changed = await readingsChanged(job, {
    pass,
    token: token ?? '',
    gauge,
    writing: form.writing,
    cells,
  });
  return { pass, ...changed, unread: form.doubts, faults: [...form.faults, ...changed.faults] };
}

/** The boxes that were sent, row by row; what cannot be read is said in the form. */
function cellsOf(form: TypedForm, job: Job, pass: Pass): Cell[] {
  const cover = job.sections.received?.body.family;
  const rows = rowIndexes(form.fields);
  const most = (rows.at(-1) ?? 0) + 1;
  if (most > MOST_PLACES) {
    form.fault('', `${most} stations were sent; one job holds at most 400. Leave some out.`);
  }
  return rows
    .filter((row) => row < MOST_PLACES)
    .flatMap((row) => {
      const place = placeOf(form, row);
      if (place === null) return [];
      const where = `station ${row + 1} (${placeOn(cover, place.angleDeg)})`;
      return KINDS.flatMap((kind): Cell[] => {
        const name = `${LETTER[kind]}.${row}`;
        if (form.fields[name] === undefined) return [];
        const parts = splitRepeats(form.text(name));
        const values = form.lengths(name, `${READING_WORD[pass][kind]} at ${where}`);
        const [was, confirmed] = [form.fields[`was.${name}`] ?? '', form.text(`ok.${name}`)];
        return [{ name, kind, place, row, parts, values, was, confirmed }];
      });
    });
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
  const angleDeg = form.angle(`a.${index}`, `Angle of ${name}`);
  const radiusMm = form.length(`r.${index}`, `Radius of ${name}`);
  if (form.faults.length === before) {
    form.needed(angleDeg, `a.${index}`, `Angle of ${name}`);
    form.needed(radiusMm, `r.${index}`, `Radius of ${name}`);
  }
  if (angleDeg === null || radiusMm === null) return null;
  if (!(radiusMm > 0)) {
    form.fault(
      `r.${index}`,
      `Radius of ${name} is ${briefLength(radiusMm, form.writing.lengthUnit)}; it must be more than 0. Measure it from the crank axis.`,
    );
    return null;
  }
  return { angleDeg: turned(angleDeg), radiusMm };
}
