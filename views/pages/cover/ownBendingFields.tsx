import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';

/** What the bending needs of a cover that is of no family. */
export const OWN_BENDING = [
  { key: 'bossDiameterMm', name: 'bend.boss', label: 'Boss Ø', unit: null },
  { key: 'rimDiameterMm', name: 'bend.rim', label: 'Rim Ø', unit: null },
  { key: 'padDiameterMm', name: 'bend.pad', label: 'Pad Ø', unit: null },
  { key: 'padThicknessMm', name: 'bend.padThickness', label: 'Pad thickness', unit: null },
  { key: 'sideWallMm', name: 'bend.sideWall', label: 'Side wall thickness', unit: null },
  { key: 'pistonSealDiameterMm', name: 'bend.seal', label: 'Piston seal Ø', unit: null },
  { key: 'hubDiameterMm', name: 'bend.hub', label: 'Hub Ø', unit: null },
  { key: 'lockUpPressureMPa', name: 'bend.pressure', label: 'Lock-up pressure', unit: 'MPa' },
] as const;

export function OwnBendingFields(props: {
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly unit: LengthUnit;
}) {
  const error = errorsOf(props.faults);
  const typed = OWN_BENDING.some(({ name }) => (props.fields[name] ?? '') !== '');
  return (
    <details class="twin" open={typed} id="own-bending">
      <summary>For bending and heat: boss, rim, pads, side wall, seal, hub, pressure</summary>
      <div class="fields">
        {OWN_BENDING.map(({ name, label, unit }) => (
          <Field
            label={label}
            name={name}
            value={props.fields[name]}
            unit={unit ?? props.unit}
            error={error(name)}
            optional
          />
        ))}
      </div>
    </details>
  );
}
