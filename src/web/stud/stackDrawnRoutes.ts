import { type Request, type Response, Router } from 'express';
import { boxesOf } from '../../../shared/quantity/fieldText.ts';
import { stackNutSchema } from '../../../shared/schemas/catalogue.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { layerSchema, studSurroundings } from '../../../shared/schemas/studParts.ts';
import { CATALOGUE_STACK, LAYER, NUT, NUT_THREAD_BOX } from '../../../shared/words/fields/stud.ts';
import type { Nut } from '../../../shared/words/stud/stud.ts';
import type { LayerDrawn } from '../../../views/drawings/stackDrawn.tsx';
import { StackDrawnPage } from '../../../views/pages/stud/stackDrawnPage.tsx';
import type { StackTyped } from '../../../views/parts/stackDrawnPart.tsx';
import { renderPage } from '../../../views/render.ts';
import { getEntry } from '../../records/catalogue.ts';
import { layerKind } from '../../shop/studs/layers.ts';
import { usualHoleMm } from '../../shop/studs/studsExpected.ts';
import { anyTyped, boxAt, readBody } from '../request/bodyForm.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import type { PageContext } from '../request/pageContext.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, TypedForm, type Writing } from '../request/typed.ts';
import { askAboutStack } from './asked.ts';
import { studFrame } from './request.ts';
import { layerRows, readGap, readLayer, readThreadField, stackAsTyped } from './stackForm.ts';

const NUT_BOXES = [...boxesOf(NUT), NUT_THREAD_BOX];

/** The stack of a form, drawn while it is typed. Looks, and keeps nothing. */
export function stackDrawnRouter(context: PageContext): Router {
  const router = Router();
  router.get('/stud/drawn', handledIn(context)(getStackDrawn));
  return router;
}

async function getStackDrawn(context: PageContext, req: Request, res: Response): Promise<void> {
  const { entry: entryId, ...fields } = fieldsOf(req.query);
  const frame = await studFrame(req, context, fields);
  const entry = entryId ? await getEntry(context.shop.db, 'stack', entryId) : null;
  const form = new TypedForm(fields, frame, entry ? stackAsTyped(entry.body, frame) : {});
  const typed = typedStack(form);
  const back = `/stud?${new URLSearchParams({ ...fields, stack: 'own' })}`;
  res.send(renderPage(StackDrawnPage({ frame: keepingUnits(frame, form), typed, back })));
}

/** What can be drawn of the stack in these boxes; a form that shows what is kept does not ask about it. */
export function stackDrawn(fields: Fields, writing: Writing, shown: Fields = {}): StackTyped {
  return typedStack(new TypedForm(fields, writing, shown));
}

function typedStack(form: TypedForm): StackTyped {
  const rows = Array.from({ length: layerRows(form) }, (_, row) => row);
  const read = rows.map((row) => (anyTyped(form, LAYER, { row }) ? layerIn(form, row) : null));
  const nut = nutIn(form);
  const gapMm = gapIn(form);
  askAboutStack(form);
  const layers: LayerDrawn[] = [];
  const leftOut: string[] = [];
  for (const row of rows) {
    const layer = read[row] ?? null;
    const why = faultAmong(form, boxesOf(LAYER, { row }));
    if (why !== null) leftOut.push(`Layer ${row + 1} is not drawn. ${why}`);
    else if (layer !== null) layers.push(layer);
  }
  const whole = leftOut.length === 0;
  const ofNut = faultAmong(form, NUT_BOXES);
  if (ofNut !== null) leftOut.push(`The nut is not drawn. ${ofNut}`);
  const ofGap = faultAmong(form, [CATALOGUE_STACK.pullForwardMm.box]);
  if (ofGap !== null) leftOut.push(`The gap is not drawn. ${ofGap}`);
  return {
    layers,
    whole,
    nut: ofNut === null ? nut : null,
    gapMm: ofGap === null ? gapMm : null,
    usualHoleMm: usualHoleMm(form.text(NUT_THREAD_BOX)),
    leftOut,
  };
}

/** Why what these boxes hold is not drawn: the question alone where one is asked. */
function faultAmong(form: TypedForm, boxes: readonly string[]): string | null {
  const fault = form.faults.find(({ path }) => boxes.includes(path));
  if (fault === undefined) return null;
  return form.doubts.find(({ name }) => name === fault.path)?.question ?? fault.message;
}

/** One row; null with a sentence in the form where it cannot be drawn. */
function layerIn(form: TypedForm, row: number): LayerDrawn | null {
  const { layer } = readLayer(form, row);
  if (faultAmong(form, boxesOf(LAYER, { row })) !== null) return null;
  const parsed = layerSchema.safeParse(layer);
  if (parsed.success) return { ...parsed.data, kind: layerKind(parsed.data) };
  form.addFaults(
    faultsOf(parsed.error),
    (path) => boxAt(LAYER, path, { row }) ?? `${LAYER.thicknessMm.box}.${row}`,
  );
  return null;
}

function gapIn(form: TypedForm): number | null {
  const gapMm = readGap(form, null);
  const parsed = studSurroundings.pullForwardMm.safeParse(gapMm);
  if (!parsed.success) form.addFaults(faultsOf(parsed.error), () => CATALOGUE_STACK.pullForwardMm.box);
  return gapMm;
}

/** The nut with its thread, which its bore is drawn by; null where it cannot be drawn. */
function nutIn(form: TypedForm): Nut | null {
  if (!anyTyped(form, NUT) && !form.has(NUT_THREAD_BOX)) return null;
  const thread = readThreadField(form, NUT_THREAD_BOX, 'internal');
  const read = readBody(form, NUT);
  if (thread === null) form.needed(null, NUT_THREAD_BOX, NUT.thread.label);
  if (faultAmong(form, NUT_BOXES) !== null) return null;
  const parsed = stackNutSchema.safeParse({ ...read, thread });
  if (parsed.success) return { ...parsed.data, thread };
  form.addFaults(faultsOf(parsed.error), (path) => boxAt(NUT, path) ?? NUT.heightMm.box);
  return null;
}
