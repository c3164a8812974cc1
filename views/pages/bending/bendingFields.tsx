import { JOINED_TO_PADS } from '../../../shared/words/fields/weld.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';

interface Props {
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly unit: LengthUnit;
}

function fieldOf({ fields, faults }: Props) {
  const error = errorsOf(faults);
  return (label: string, name: string, unit?: string, hint?: string) => (
    <Field
      label={label}
      name={name}
      value={fields[name]}
      error={error(name)}
      {...(unit !== undefined && { unit })}
      {...(hint !== undefined && { hint })}
      optional
    />
  );
}

/** What the bending model needs of a family, and the ring that may be welded to it. */
export function FamilyBendingFields(props: Props) {
  const field = fieldOf(props);
  const { unit } = props;
  return (
    <>
      <fieldset class="group">
        <legend>How it bends</legend>
        <p class="hint">
          With these, boss, rim and pads, the advice on bending and heat can be worked out. What is left empty
          is left out, and said so.
        </p>
        <div class="fields">
          {field('Side wall thickness', 'sideWallThickness', unit, 'It holds the rim against turning')}
          {field('Piston seal Ø', 'seal', unit, 'Where the lock-up piston seals on the hub')}
          {field('Hub Ø', 'hub', unit, "The impeller's, where the oil's head begins")}
          {field(
            'Lock-up pressure',
            'lockUpPressure',
            'MPa',
            "Empty: the shop's figure; psi and bar are read",
          )}
          {field('Yield of its steel', 'yield', 'MPa', "Empty: the shop's figure")}
        </div>
      </fieldset>
      <fieldset class="group">
        <legend>The ring that may be welded to it</legend>
        <p class="hint">
          A flat ring on the engine side, with openings for the pads. All three sizes or none.
        </p>
        <div class="fields">
          {field('Ring inner Ø', 'ringInner', unit)}
          {field('Ring outer Ø', 'ringOuter', unit)}
          {field('Ring thickness', 'ringThickness', unit)}
          <Choice
            label={JOINED_TO_PADS.label}
            name={JOINED_TO_PADS.box}
            value={props.fields.ringJoined ?? ''}
            options={[
              { value: '', label: JOINED_TO_PADS.none },
              { value: 'yes', label: 'yes' },
              { value: 'no', label: 'no' },
            ]}
            error={errorsOf(props.faults)(JOINED_TO_PADS.box)}
            hint={JOINED_TO_PADS.help}
          />
        </div>
      </fieldset>
    </>
  );
}

/** What the shop takes for every cover it reckons, and the limits it sets on bending. */
export function BendingFields(props: Props) {
  const field = fieldOf(props);
  const { unit } = props;
  return (
    <>
      <fieldset class="group">
        <legend>How covers bend</legend>
        <p class="hint">
          The first three or none; without them no advice on bending. Steel is near 206 000 MPa and 0.29
          (handbook values, from memory); the lining's modulus is its maker's figure, or measured.
        </p>
        <div class="fields">
          {field("Lining's modulus", 'liningModulus', 'MPa/mm', 'Pressure per mm it is squeezed')}
          {field("Young's modulus", 'young', 'MPa')}
          {field("Poisson's ratio", 'poisson')}
          {field('Lock-up pressure', 'lockUpPressure', 'MPa', 'Where a family says none')}
          {field('Yield', 'yield', 'MPa', 'Where a family says none')}
          {field('Speed for ballooning', 'bendingSpeed', 'rpm', "Empty: the oil's rotation is left out")}
          {field('Runout allowed of a ring', 'ringRunout', unit, 'Round its rim, as welded')}
        </div>
      </fieldset>
      <fieldset class="group">
        <legend>Limits on bending</legend>
        <p class="hint">
          Empty: advice only. With a limit it becomes a finding, and a cover past it gets a ring or is
          replaced. Both bounds of the piston must keep it. A ring counts at its worse bound, and only welded
          to the pads.
        </p>
        <div class="fields">
          {field('Pressure peak at most', 'peakOverNew', '× new', 'Peak over mean, against the new cover')}
          {field('Ripple at most', 'rippleOverNew', '× new', 'Round the middle of the track')}
        </div>
      </fieldset>
      <fieldset class="group">
        <legend>The heat of one engagement</legend>
        <p class="hint">
          All of it or none, but the temperature. Plain carbon steel is near 51.9 W/(m·K), 7870 kg/m³ and 486
          J/(kg·K) (handbook values).
        </p>
        <div class="fields">
          {field('Share into the cover', 'heatShare', '%')}
          {field('Torque while it slips', 'slipTorque', 'N·m')}
          {field('Slip speed at the start', 'slipSpeed', 'rpm')}
          {field('Slip time', 'slipTime', 's')}
          {field("Steel's conductivity", 'conductivity', 'W/(m·K)')}
          {field("Steel's density", 'density', 'kg/m³')}
          {field("Steel's specific heat", 'specificHeat', 'J/(kg·K)')}
          {field('Temperature before', 'startTemperature', '°C')}
        </div>
      </fieldset>
    </>
  );
}
