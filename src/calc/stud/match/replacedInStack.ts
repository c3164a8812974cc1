import type { StudSettingLimits } from '../../../../shared/words/catalogue.ts';
import type { Finding } from '../../../../shared/words/finding.ts';
import type { ReplacedStudAsked } from '../../../../shared/words/job.ts';
import type { LengthUnit } from '../../../../shared/words/print.ts';
import type { StudCheckInput } from '../../../../shared/words/stud/stud.ts';
import { filletClearsChamfer } from '../holes/filletClearsChamfer.ts';
import { holes } from '../holes/holes.ts';
import { replacedStud } from '../holes/replacedStud.ts';
import { studNumbers } from '../numbers/studNumbers.ts';

/**
 * A replaced stud, checked against the stack it goes through and the shop's limits.
 * Throws: a Refusal of a thread or a measurement that cannot be worked with.
 */
export function replacedInStack(
  input: StudCheckInput,
  { stud: _number, note: _note, ...found }: ReplacedStudAsked,
  limits: StudSettingLimits | null,
  unit: LengthUnit,
): readonly Finding[] {
  const numbers = studNumbers({ ...input, stud: { ...input.stud, filletMm: found.filletMm } });
  const { tightest, studMm } = holes(numbers, unit);
  const all = input.stack.layers.every((layer) => layer.holeDiameterMm !== null);
  const fillet = filletClearsChamfer(numbers, unit)?.finding ?? {
    id: 'fillet',
    title: 'Weld fillet at the hole',
    status: 'not-checked' as const,
    value: null,
    limit: null,
    unit: 'mm',
    sentence: 'The weld fillet is not measured, so its clearance can’t be checked.',
    source: 'first principles',
    answer: null,
  };
  const [clear, ...rest] = replacedStud(
    {
      ...found,
      stackMm: numbers.stackMm.nominal,
      tightestHoleMm: all ? (tightest?.holeMm ?? null) : null,
      studMostMm: studMm,
      limits,
    },
    unit,
  );
  return [clear!, fillet, ...rest];
}
