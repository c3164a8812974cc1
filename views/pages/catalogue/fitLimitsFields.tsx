import type { FitLimits } from '../../../shared/words/cover.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';

export const FIT_LIMITS: readonly {
  readonly key: Exclude<keyof FitLimits, 'source'>;
  readonly label: string;
}[] = [
  { key: 'leastPadThicknessMm', label: 'Pad thickness, at least' },
  { key: 'padsCoplanarWithinMm', label: 'Pads may differ by' },
  { key: 'leastPullForwardMm', label: 'Pull-forward gap, at least' },
  { key: 'mostPullForwardMm', label: 'Pull-forward gap, at most' },
  { key: 'leastHubEngagementMm', label: 'Hub in the pump, at least' },
  { key: 'mostPilotClearanceMm', label: 'Crank pilot clearance, at most' },
  { key: 'leastPilotEngagedMm', label: 'Crank pilot engaged, at least' },
  { key: 'leastSideWallHeightMm', label: 'Side wall height, at least' },
  { key: 'mostSideWallHeightMm', label: 'Side wall height, at most' },
  { key: 'leastOverallHeightMm', label: 'Overall height, at least' },
  { key: 'mostOverallHeightMm', label: 'Overall height, at most' },
  { key: 'leastEndPlayMm', label: 'End play, at least' },
  { key: 'mostEndPlayMm', label: 'End play, at most' },
];

/** What the lengths round the face may be: one source for all of them. */
export function FitLimitsFields(props: {
  fields: Readonly<Record<string, string>>;
  faults: readonly Fault[];
  unit: LengthUnit;
}) {
  const { fields, faults, unit } = props;
  const error = errorsOf(faults);
  return (
    <fieldset class="group">
      <legend>Pads, hub, crank pilot, heights and end play</legend>
      <p class="hint">
        Figures a job’s measurements are held against, unless others are typed there. What is left empty is
        not judged.
      </p>
      <div class="fields">
        {FIT_LIMITS.map(({ key, label }) => (
          <Field
            label={label}
            name={`lim.${key}`}
            value={fields[`lim.${key}`]}
            unit={unit}
            error={error(`lim.${key}`)}
            optional
          />
        ))}
        <Field
          label="Where they are printed"
          name="lim.source"
          value={fields['lim.source']}
          error={error('lim.source')}
          size="full"
          optional
        />
      </div>
    </fieldset>
  );
}
