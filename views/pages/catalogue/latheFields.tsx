import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';

export interface LatheFieldsProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly unit: LengthUnit;
}

/** What the shop's lathe does, so that a cut is planned in passes; and how well a cover has to be balanced. */
export function LatheFields({ fields, faults, unit }: LatheFieldsProps) {
  const error = errorsOf(faults);
  const field = (label: string, name: string, in_: string, hint?: string) => (
    <Field
      label={label}
      name={name}
      value={fields[name]}
      unit={in_}
      error={error(name)}
      {...(hint !== undefined && { hint })}
      optional
    />
  );
  return (
    <>
      <fieldset class="group">
        <legend>The lathe</legend>
        <p class="hint">All of it or none. Without it no passes are planned.</p>
        <div class="fields">
          {field('Least speed', 'leastRpm', 'rpm')}
          {field('Most speed', 'mostRpm', 'rpm')}
          {field(
            'Cutting speed',
            'cuttingSpeedMPerMin',
            'm/min',
            "The tool maker's figure for it comes first",
          )}
          {field('Nose radius', 'noseRadiusMm', unit)}
          {field('Deepest roughing pass', 'roughingLimitMm', unit)}
          {field('Finishing pass', 'finishingCutMm', unit)}
          {field('Roughing feed', 'roughingFeedMm', unit, 'Per turn')}
          {field('Finishing feed', 'finishingFeedMm', unit, 'Per turn')}
        </div>
      </fieldset>
      <fieldset class="group">
        <legend>Balance, after ISO 21940-11</legend>
        <p class="hint">
          The maker's figure comes first. Without these the unbalance is told and not judged.
        </p>
        <div class="fields">
          {field('Balance quality grade G', 'gradeMmPerS', 'mm/s')}
          {field('Mass balanced', 'massKg', 'kg')}
          {field('Service speed', 'speedRpm', 'rpm')}
        </div>
      </fieldset>
    </>
  );
}
