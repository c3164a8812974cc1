import { boxesOf } from '../../../shared/quantity/fieldText.ts';
import { studFiguresSchema, threadTypedSchema } from '../../../shared/schemas/caliper.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import type { CatalogueStud } from '../../../shared/words/catalogue.ts';
import { CALIPER } from '../../../shared/words/fields/caliper.ts';
import { CATALOGUE_STUD, STUD, THREAD_BOX } from '../../../shared/words/fields/stud.ts';
import type { StudInHand, StudLengths, ThreadsFound } from '../../../shared/words/stud/choices.ts';
import type { ThreadSpec } from '../../../shared/words/stud/thread.ts';
import type { NamedEntry } from '../../shop/studChoices.ts';
import { IN_HAND, studInHand } from '../../shop/studs/inHand.ts';
import { caliperExpected } from '../../shop/studs/studsExpected.ts';
import { sameThread, threadsLike } from '../../shop/studs/threads.ts';
import { askAboutFigures } from '../request/askFigures.ts';
import { boxAt, noteBody, readBody } from '../request/bodyForm.ts';
import { type Fields, TypedForm } from '../request/typed.ts';
import { askAboutStud } from './asked.ts';
import { readThreadField } from './stackForm.ts';
import { readStud } from './studForm.ts';

const NAME = 'Stud in hand';
const { thread: _made, ...FIGURES } = STUD;
/** What is measured of a stud in the hand; null with the sentences in the form. */
export function readInHand(form: TypedForm, studs: readonly NamedEntry<CatalogueStud>[]): StudInHand | null {
  noteBody(form, CALIPER);
  noteBody(form, CATALOGUE_STUD);
  const typed = readThreadField(form, THREAD_BOX, 'external');
  const threads = readCaliper(form);
  if (typed && threads && !threads.mayBe.some(({ thread }) => sameThread(thread, typed)))
    form.fault(
      THREAD_BOX,
      `The diameter and length measured are not those of ${typed.designation}. Clear one of the two, or measure again.`,
    );
  if (!form.has(THREAD_BOX) && !form.has(CALIPER.majorMm.box))
    form.fault(CALIPER.majorMm.box, 'Measure the diameter over the threads, or enter the thread.');
  const only = threads?.mayBe.length === 1 ? (threads.mayBe[0]?.thread ?? null) : null;
  const thread = typed ?? only;
  const entry = thread && isWhole(form) ? readWhole(form, thread) : null;
  const lengths = entry?.stud ?? readLengths(form);
  if (form.faults.length === 0) askAboutStud(form);
  return form.faults.length > 0 || lengths === null
    ? null
    : studInHand({ threads, thread, lengths, entry }, studs);
}

function readCaliper(form: TypedForm): ThreadsFound | null {
  const read = readBody(form, CALIPER);
  const parsed = threadTypedSchema.safeParse(read);
  if (!parsed.success) {
    if (form.faults.length === 0)
      form.addFaults(faultsOf(parsed.error), (path) => boxAt(CALIPER, path) ?? path);
    return null;
  }
  const { majorMm, ...rest } = parsed.data;
  if (majorMm === null && rest.overMm !== null) {
    form.fault(CALIPER.majorMm.box, 'The diameter over the threads is empty. Measure it too.');
    return null;
  }
  askAboutFigures(form, CALIPER, caliperExpected(rest.pitches));
  return majorMm === null || form.faults.length > 0 ? null : threadsLike({ majorMm, ...rest });
}

/** Those that were measured: none has to be. */
function readLengths(form: TypedForm): StudLengths | null {
  if (form.faults.length > 0) return null;
  const parsed = studFiguresSchema.safeParse(readBody(form, FIGURES, { idle: true }));
  if (parsed.success) return form.faults.length > 0 ? null : parsed.data;
  if (form.faults.length === 0)
    form.addFaults(faultsOf(parsed.error), (path) => boxAt(FIGURES, path) ?? path);
  return null;
}

function isWhole(form: TypedForm): boolean {
  return [STUD.threadStartMm, STUD.threadEndMm, STUD.projectionMm].every(({ box }) => form.has(box));
}

/** With its thread as measured, where none was typed. */
function readWhole(form: TypedForm, { designation }: ThreadSpec): CatalogueStud | null {
  if (form.faults.length > 0) return null;
  const thread = form.text(THREAD_BOX) || designation;
  const whole = new TypedForm({ ...form.fields, [THREAD_BOX]: thread }, form.writing);
  const entry = readStud(whole, NAME);
  form.faults.push(...whole.faults);
  return entry;
}

/** The stud in the hand that came along to a stack’s page; null where none did, or with the sentences in the form. */
export function handAlong(form: TypedForm): NamedEntry<CatalogueStud> | null {
  noteBody(form, CATALOGUE_STUD);
  if (!isWhole(form) || !form.has(THREAD_BOX)) return null;
  const entry = readStud(form, NAME);
  if (entry) askAboutStud(form);
  return entry && { id: IN_HAND, body: entry };
}

/** What goes along with a stud in the hand to a stack’s page: its boxes as typed, its thread as it was found. */
export function handBoxes({ threadTyped }: CatalogueStud, form: TypedForm): Fields {
  const boxes = boxesOf(CATALOGUE_STUD).filter((name) => form.has(name));
  return { ...kept(form, [...boxes, 'grade']), [THREAD_BOX]: threadTyped };
}

/** Boxes as typed, with what was confirmed of them. */
export function kept(form: TypedForm, boxes: readonly string[]): Fields {
  const names = boxes.flatMap((name) => [name, `ok.${name}`]).filter((name) => form.has(name));
  return Object.fromEntries(names.map((name) => [name, form.text(name)]));
}
