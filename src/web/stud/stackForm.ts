import { asTyped, type Writing } from '../../../shared/quantity/fieldText.ts';
import { readThread } from '../../../shared/quantity/readThread.ts';
import { threadDoubt } from '../../../shared/quantity/threadDoubt.ts';
import { catalogueStackSchema } from '../../../shared/schemas/catalogue.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import { CATALOGUE_STACK, LAYER, NUT, NUT_THREAD_BOX } from '../../../shared/words/fields/stud.ts';
import type { ThreadSpec } from '../../../shared/words/stud/thread.ts';
import { styleOf } from '../../shop/studs/layers.ts';
import { nutMarked } from '../../shop/studs/markings.ts';
import { gapTypedExpected } from '../../shop/studs/studsExpected.ts';
import { anyTyped, boxAt, noteBody, readBody } from '../request/bodyForm.ts';
import type { TypedForm } from '../request/typed.ts';

export const MOST_LAYERS = 12;

/** How many layer rows the form shows: those typed, at least two, one more when asked for. */
export function layerRows(form: TypedForm): number {
  const typed = Object.keys(form.fields)
    .map((name) => /^l[nktohc]\.(\d{1,2})$/.exec(name)?.[1])
    .filter((index) => index !== undefined)
    .map(Number);
  return Math.min(Math.max(1, ...typed) + 1 + (form.text('add') === 'layer' ? 1 : 0), MOST_LAYERS);
}

/** What a stack's boxes hold, where they are not read: they may come with the address. */
export function noteStack(form: TypedForm): void {
  noteBody(form, CATALOGUE_STACK);
  for (let row = 0; row < MOST_LAYERS; row++) noteBody(form, LAYER, { row });
}

/** The gap as typed, in doubt where it is far from the stack's own. */
export function readGap(form: TypedForm, ofStackMm: number | null): number | null {
  const { box, label } = CATALOGUE_STACK.pullForwardMm;
  return form.lengthLike(box, label, gapTypedExpected(ofStackMm));
}

/** One row of the layers; nothing is missing of one that was not begun. */
export function readLayer(form: TypedForm, row: number) {
  const typed = anyTyped(form, LAYER, { row });
  const of = `layer ${row + 1}`;
  const layer = readBody(form, LAYER, {
    row,
    of: form.text(`${LAYER.name.box}.${row}`) || of,
    ifEmpty: { name: of },
    idle: !typed,
  });
  return { typed, layer };
}

/**
 * A flexplate stack as typed: its layers row by row, the nut, the pull-forward gap. null when something is missing or
 * cannot be used; the form then holds the sentences.
 */
export function readStack(form: TypedForm, name?: string): CatalogueStack | null {
  const layers = Array.from({ length: layerRows(form) }, (_, row) => readLayer(form, row)).flatMap(
    ({ typed, layer }) => (typed ? [layer] : []),
  );
  const thread = readThreadField(form, NUT_THREAD_BOX, 'internal');
  const marked = nutClassMarked(form, thread);
  const read = readBody(form, CATALOGUE_STACK, { ifEmpty: { name } });
  const { nut } = read;
  if (nut === null && form.has(NUT_THREAD_BOX)) form.needed(null, NUT.heightMm.box, NUT.heightMm.label);
  if (form.faults.length > 0) return null;
  const parsed = catalogueStackSchema.safeParse({
    ...read,
    stack: { ...read.stack, layers, style: read.stack?.style ?? styleOf(layers) },
    nut: nut && { ...nut, thread, proofMPa: nut.proofMPa ?? marked?.proofMPa },
  });
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), stackFieldOf(form));
  return null;
}

/** Proof stress of the class marked on the nut; what is typed beside it counts before. */
export function nutClassMarked(form: TypedForm, thread: ThreadSpec | null) {
  const name = form.text('nutClass');
  if (name === '') return null;
  if (thread === null) {
    if (!form.faults.some(({ path }) => path === 'nutThread'))
      form.fault('nutThread', 'The nut class needs the nut thread. Enter it, as 3/8-24 or M10x1.25.');
    return null;
  }
  const found = nutMarked(name, thread);
  if (found === null)
    form.fault('nutClass', `There is no proof stress for ${name} at this diameter. Enter the proof stress.`);
  return found;
}

/** A thread callout typed in a field; null when empty or refused. */
export function readThreadField(
  form: TypedForm,
  name: string,
  side: 'external' | 'internal',
): ThreadSpec | null {
  if (!form.has(name)) return null;
  const read = readThread(form.text(name), side);
  if (!read.ok) {
    const meant = read.choices ?? (read.meant === undefined ? [] : [read.meant]);
    if (meant.length === 0) form.fault(name, read.message);
    else form.ask(name, read.message, null, meant);
    return null;
  }
  const asked = form.isSure(name) ? null : threadDoubt(read.thread);
  if (asked === null) return read.thread;
  form.ask(name, `Thread: ${asked.question}`, `Thread is ${form.text(name)}, as typed`, [asked.meant]);
  return null;
}

/** The field that each place in a stack's body came from: rows left empty are no layers. */
export function stackFieldOf(form: TypedForm): (path: string) => string {
  const rows = Array.from({ length: layerRows(form) }, (_, row) => row).filter((row) =>
    anyTyped(form, LAYER, { row }),
  );
  return (path) => {
    const layer = /layers\.(\d+)(?:\.(\w+))?/.exec(path);
    if (!layer) return boxAt(CATALOGUE_STACK, path) ?? NUT_THREAD_BOX;
    const row = rows[Number(layer[1])] ?? Number(layer[1]);
    return boxAt(LAYER, layer[2] ?? 'thicknessMm', { row }) ?? `${LAYER.thicknessMm.box}.${row}`;
  };
}

/** A stack as its form would have it typed. */
export function stackAsTyped(body: CatalogueStack, writing: Writing): Record<string, string> {
  return {
    ...asTyped(CATALOGUE_STACK, body, writing),
    ...Object.assign({}, ...body.stack.layers.map((layer, row) => asTyped(LAYER, layer, writing, { row }))),
  };
}
