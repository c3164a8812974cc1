import { COVER_SHAPE, QUICK_LIMITS } from '../../../shared/words/fields/cover.ts';
import { PLAN } from '../../../shared/words/fields/job.ts';
import { placesOn } from '../../shop/placesOfJob.ts';
import { boxAt } from '../request/bodyForm.ts';
import type { Fields, TypedForm } from '../request/typed.ts';
import { AS_MEASURED } from './asMeasured.ts';

/** Far more than the 400 that are taken, so that too many are refused with a sentence and not cut off. */
const MOST_ROWS = 1000;

/** A length in a row of the tables: radius, wall, indicator reading, heat mark. */
export const LENGTH_CELL = /^(r|w|f|d|mr|md)\.\d+$/;

/** A row of the table of stations, as read. */
export interface StationRow {
  readonly index: number;
  /** Added by the person, beyond those laid out. */
  readonly own: boolean;
  readonly angleDeg: number;
  readonly radiusMm: number;
  readonly place: string;
  readonly walls: readonly number[];
  readonly faceMm: number | null;
  readonly markDepthMm: number | null;
}

/** Every station laid out, and those the person added. */
export function readRows(
  form: TypedForm,
  fields: Fields,
  cover: { studCount: number; trackInnerDiameterMm: number; trackOuterDiameterMm: number },
): StationRow[] {
  const layout = placesOn(cover);
  const typedRows = indexesOf(fields, /^[arwfd]\.(\d{1,3})$/);
  const last = Math.max(layout.length - 1, ...typedRows);
  const extra = fields.add === 'station' ? 1 : 0;
  return Array.from({ length: Math.min(last + 1 + extra, MOST_ROWS) }, (_, index) => {
    const planned = layout[index];
    const name = `station ${index + 1}`;
    const angleDeg = planned?.angleDeg ?? form.angle(`a.${index}`, `Angle of ${name}`);
    const radiusMm = planned?.radiusMm ?? form.length(`r.${index}`, `Radius of ${name}`);
    const walls = form.lengths(`w.${index}`, `Wall at ${name}`);
    const faceMm = form.length(`f.${index}`, `Indicator reading at ${name}`);
    const markDepthMm = form.length(`d.${index}`, `Heat mark depth at ${name}`);
    const typedAny = form.has(`w.${index}`) || faceMm !== null || markDepthMm !== null;
    if (typedAny && angleDeg === null) form.needed(angleDeg, `a.${index}`, `Angle of ${name}`);
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

/** A row of the table of heat marks between stations, as read. */
export interface MarkRow {
  readonly index: number;
  readonly angleDeg: number | null;
  readonly radiusMm: number | null;
  readonly depthMm: number | null;
  readonly complete: boolean;
}

/** Heat marks between stations; `complete` once place and depth are there. */
export function readMarks(form: TypedForm, fields: Fields): MarkRow[] {
  const typed = indexesOf(fields, /^m[ard]\.(\d{1,3})$/);
  const count = Math.max(-1, ...typed) + 1 + (fields.add === 'mark' ? 1 : 0);
  return Array.from({ length: Math.min(count, MOST_ROWS) }, (_, index) => {
    const name = `heat mark ${index + 1}`;
    const angleDeg = form.angle(`ma.${index}`, `Angle of ${name}`);
    const radiusMm = form.length(`mr.${index}`, `Radius of ${name}`);
    const depthMm = form.length(`md.${index}`, `Depth of ${name}`);
    const any = ['ma', 'mr', 'md'].some((key) => form.has(`${key}.${index}`));
    if (any) {
      form.needed(angleDeg, `ma.${index}`, `Angle of ${name}`);
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

/** A path of the schema as the name of the field it came from. */
export function fieldName(path: string, rows: readonly { index: number }[]): string {
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
