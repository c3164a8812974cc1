import { readThread } from '../../../shared/quantity/readThread.ts';
import { catalogueStackSchema } from '../../../shared/schemas/catalogue.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import type { ThreadSpec } from '../../../shared/words/thread.ts';
import { expectedGapMm } from '../../shop/studs/gap.ts';
import { styleOf, usualThicknessMm } from '../../shop/studs/layers.ts';
import { nutMarked } from '../../shop/studs/markings.ts';
import type { TypedForm } from '../request/typed.ts';

const MOST_LAYERS = 12;
const STYLES = ['one-piece', 'two-piece'] as const;

/** How many layer rows the form shows: those typed, at least two, one more when asked for. */
export function layerRows(form: TypedForm): number {
  const typed = Object.keys(form.fields)
    .map((name) => /^l[ntohc]\.(\d{1,2})$/.exec(name)?.[1])
    .filter((index) => index !== undefined)
    .map(Number);
  return Math.min(Math.max(1, ...typed) + 1 + (form.text('add') === 'layer' ? 1 : 0), MOST_LAYERS);
}

/** Inches typed as millimetres or the other way round; a shim may have any thickness. */
export function askAboutLayers(form: TypedForm): void {
  for (let i = 0; i < layerRows(form); i++) {
    const name = form.text(`ln.${i}`) || `layer ${i + 1}`;
    const usualMm = usualThicknessMm(name);
    if (usualMm !== null) form.lengthLike(`lt.${i}`, `Thickness of ${name}`, usualMm, 'unit');
  }
}

/** The gap as typed, in doubt where it is far from the stack's own. */
export function readGap(form: TypedForm, ofStackMm: number | null): number | null {
  return form.lengthLike('pull', 'The pull-forward gap', expectedGapMm(ofStackMm));
}

/**
 * A flexplate stack as typed: layers `ln.0` name, `lt.0` thickness, `lo.0` tolerance, `lh.0` hole, `lc.0` chamfer; the nut; the
 * pull-forward gap. null when something is missing or cannot be used; the form then holds the sentences.
 */
export function readStack(form: TypedForm, name: string): CatalogueStack | null {
  const layers = Array.from({ length: layerRows(form) }, (_, i) => {
    const label = form.text(`ln.${i}`) || `layer ${i + 1}`;
    const typedAny = typedInRow(form, i);
    const thicknessMm = form.length(`lt.${i}`, `Thickness of ${label}`);
    if (typedAny) form.needed(thicknessMm, `lt.${i}`, `Thickness of ${label}`);
    return {
      typedAny,
      name: label,
      thicknessMm,
      toleranceMm: form.length(`lo.${i}`, `Tolerance of ${label}`) ?? 0,
      holeDiameterMm: form.length(`lh.${i}`, `Hole diameter of ${label}`),
      chamferMm: form.length(`lc.${i}`, `Chamfer of ${label}`),
    };
  }).filter((layer) => layer.typedAny);
  const stack = {
    style: form.choice('style', STYLES) ?? styleOf(layers),
    layers: layers.map(({ typedAny: _typed, ...layer }) => layer),
    holeCount: form.count('holeCount', 'Number of holes'),
    holeCircleDiameterMm: form.length('holeCircle', 'Hole circle diameter'),
    tipRoomMm: form.length('tipRoom', 'Room for the tip'),
  };
  const nut = readNut(form);
  const pullForwardMm = form.length('pull', 'The pull-forward gap');
  if (form.faults.length > 0) return null;
  const parsed = catalogueStackSchema.safeParse({
    name,
    stack,
    nut,
    nutThreadTyped: form.text('nutThread') || null,
    pullForwardMm,
    note: form.text('note'),
  });
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), stackFieldOf(form));
  return null;
}

function readNut(form: TypedForm) {
  const heightMm = form.length('nutHeight', 'Height of the nut');
  const toleranceMm = form.length('nutTolerance', 'Tolerance of the nut height') ?? 0;
  const countersinkMm = form.length('nutCountersink', 'Countersink of the nut') ?? 0;
  const washerMm = form.length('washer', 'Thickness of the washer') ?? 0;
  const bearingOuterDiameterMm = form.length('nutBearing', 'Bearing diameter of the nut');
  const tensileMPa = form.pressure('nutTensile', 'Tensile strength of the nut');
  const thread = readThreadField(form, 'nutThread', 'internal');
  const marked = nutClassOf(form, thread);
  const proofMPa = form.pressure('nutProof', 'Proof stress of the nut') ?? marked?.proofMPa ?? null;
  if (heightMm === null) {
    if (form.has('nutThread')) form.needed(heightMm, 'nutHeight', 'Height of the nut');
    return null;
  }
  return {
    heightMm,
    toleranceMm,
    thread,
    proofMPa,
    tensileMPa,
    countersinkMm,
    bearingOuterDiameterMm,
    washerMm,
    prevailing: form.text('prevailing') === '1',
  };
}

/** Proof stress of the class marked on the nut; what is typed beside it counts before. */
function nutClassOf(form: TypedForm, thread: ThreadSpec | null) {
  const name = form.text('nutClass');
  if (name === '') return null;
  if (thread === null) {
    if (!form.faults.some(({ path }) => path === 'nutThread'))
      form.fault('nutThread', 'The nut’s class needs its thread. Type it, as 3/8-24 or M10x1.25.');
    return null;
  }
  const found = nutMarked(name, thread);
  if (found === null)
    form.fault('nutClass', `No proof stress is known for ${name} at this diameter. Type the proof stress.`);
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
  if (read.ok) return read.thread;
  form.fault(name, read.message);
  return null;
}

const LAYER_FIELD: Readonly<Record<string, string>> = {
  name: 'ln',
  thicknessMm: 'lt',
  toleranceMm: 'lo',
  holeDiameterMm: 'lh',
  chamferMm: 'lc',
};

function typedInRow(form: TypedForm, row: number): boolean {
  return ['lt', 'lo', 'lh', 'lc', 'ln'].some((key) => form.has(`${key}.${row}`));
}

/** The field that each place in a stack's body came from: rows left empty are no layers. */
export function stackFieldOf(form: TypedForm): (path: string) => string {
  const rows = Array.from({ length: layerRows(form) }, (_, i) => i).filter((i) => typedInRow(form, i));
  return (path) => stackField(path, rows);
}

function stackField(path: string, rows: readonly number[]): string {
  const layer = /layers\.(\d+)\.(\w+)/.exec(path);
  if (layer) {
    const key = LAYER_FIELD[layer[2] ?? ''] ?? 'lt';
    return `${key}.${rows[Number(layer[1])] ?? layer[1]}`;
  }
  const names: Record<string, string> = {
    name: 'name',
    'stack.layers': 'lt.0',
    'stack.holeCount': 'holeCount',
    'stack.holeCircleDiameterMm': 'holeCircle',
    'stack.tipRoomMm': 'tipRoom',
    'nut.heightMm': 'nutHeight',
    'nut.toleranceMm': 'nutTolerance',
    'nut.countersinkMm': 'nutCountersink',
    'nut.washerMm': 'washer',
    'nut.bearingOuterDiameterMm': 'nutBearing',
    'nut.proofMPa': 'nutProof',
    'nut.tensileMPa': 'nutTensile',
    pullForwardMm: 'pull',
    note: 'note',
  };
  return names[path] ?? (path.startsWith('nut.') ? 'nutThread' : 'lt.0');
}

/** A stack as its form would have it typed. */
export function stackAsTyped(
  { name, stack, nut, nutThreadTyped, pullForwardMm, note }: CatalogueStack,
  text: (mm: number | null) => string,
): Record<string, string> {
  const fields: Record<string, string> = {
    name,
    style: stack.style,
    holeCount: plain(stack.holeCount),
    holeCircle: text(stack.holeCircleDiameterMm),
    tipRoom: text(stack.tipRoomMm),
    pull: text(pullForwardMm),
    note,
  };
  stack.layers.forEach((layer, i) => {
    fields[`ln.${i}`] = layer.name;
    fields[`lt.${i}`] = text(layer.thicknessMm);
    fields[`lo.${i}`] = text(layer.toleranceMm);
    fields[`lh.${i}`] = text(layer.holeDiameterMm);
    fields[`lc.${i}`] = text(layer.chamferMm);
  });
  if (nut) {
    Object.assign(fields, {
      nutThread: nutThreadTyped ?? '',
      nutHeight: text(nut.heightMm),
      nutTolerance: text(nut.toleranceMm),
      nutCountersink: text(nut.countersinkMm),
      nutBearing: text(nut.bearingOuterDiameterMm),
      nutProof: plain(nut.proofMPa),
      nutTensile: plain(nut.tensileMPa),
      washer: text(nut.washerMm),
      prevailing: nut.prevailing ? '1' : '',
    });
  }
  return fields;
}

function plain(value: number | null): string {
  return value === null ? '' : String(value);
}
