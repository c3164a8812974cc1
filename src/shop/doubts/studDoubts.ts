import { figureDoubt } from '../../../shared/quantity/figureDoubt.ts';
import { KINDS, type Kind, type UnitName } from '../../../shared/quantity/units.ts';
import { type AnyField, type AnyFields, entriesOf } from '../../../shared/words/fields/field.ts';
import { JOINT } from '../../../shared/words/fields/joint.ts';
import { CATALOGUE_STACK, LAYER, NUT, STACK, STUD } from '../../../shared/words/fields/stud.ts';
import type { DoubtedFigure, Stud, StudCheckInput } from '../../../shared/words/stud/stud.ts';
import {
  type AnyExpected,
  type Expected,
  entryStackExpected,
  jointExpected,
  layerExpected,
  nutExpected,
  stackExpected,
  studExpected,
} from '../studs/expected.ts';

type Asked = Pick<StudCheckInput, 'stack' | 'nut' | 'pullForwardMm' | 'joint'>;

/**
 * What was sent of a stud’s question in plain numbers and looks like a slip, but for what `confirmed` names: of whom
 * nobody can be asked "35 N·m? Did you mean 35 lb·ft?", it is told beside the answer.
 */
export function studDoubts(
  asked: Asked,
  studs: readonly { readonly path: string; readonly stud: Stud }[],
  confirmed: readonly string[],
): readonly DoubtedFigure[] {
  const { stack, nut, pullForwardMm, joint } = asked;
  const thread = nut?.thread?.designation ?? studs[0]?.stud.thread.designation ?? '';
  const all = [
    ...studs.flatMap(({ path, stud }) =>
      figuresDoubted(STUD, stud, studExpected({ thread: stud.thread.designation }), path),
    ),
    ...stack.layers.flatMap((layer, i) =>
      figuresDoubted(LAYER, layer, layerExpected(layer, { thread }), `stack.layers.${i}`),
    ),
    ...figuresDoubted(STACK, stack, stackExpected(), 'stack'),
    ...(nut ? figuresDoubted(NUT, nut, nutExpected({ thread }), 'nut') : []),
    ...figuresDoubted(CATALOGUE_STACK, { pullForwardMm }, entryStackExpected({ thread }), ''),
    ...(joint ? figuresDoubted(JOINT, joint, jointExpected({ thread }), 'joint') : []),
  ];
  return all.filter(({ path }) => !confirmed.includes(path));
}

/** Of a body’s figures those that look like a slip: sent without a unit, in that of the records. */
export function figuresDoubted<F extends AnyFields>(
  fields: F,
  body: object,
  expected: Expected<F>,
  at: string,
): DoubtedFigure[] {
  const values = body as Readonly<Record<string, unknown>>;
  return entriesOf(fields).flatMap(([key, field]) => {
    const usual = (expected as Readonly<Record<string, AnyExpected | undefined>>)[key];
    const value = values[key];
    if (usual === undefined || 'any' in usual || typeof value !== 'number') return [];
    const unit = keptUnit(field);
    const doubt = figureDoubt({ value, typed: String(value), unit, decimalSign: 'point', bare: true }, usual);
    if (doubt === null) return [];
    const path = at === '' ? key : `${at}.${key}`;
    return [{ path, value, probably: doubt.meant, unit, question: doubt.question }];
  });
}

const KEPT: Partial<Record<AnyField['kind'], Kind>> = {
  size: 'length',
  extent: 'length',
  height: 'length',
  stress: 'pressure',
  share: 'number',
};

function keptUnit({ kind }: AnyField): UnitName {
  const of = KEPT[kind] ?? (kind as Kind);
  return KINDS[of].keptIn as UnitName;
}
