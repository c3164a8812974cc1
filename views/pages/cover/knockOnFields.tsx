import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { BodyFields } from '../../parts/form/bodyFields.tsx';
import { anyWrong, EnteredCount } from '../../parts/form/entered.tsx';

const { releaseClearanceMm, knockOn } = SETUP;

/** What was measured round the face, all of it optional: what is not given is not spoken of. */
export function KnockOnFields(props: {
  fields: Readonly<Record<string, string>>;
  faults: readonly Fault[];
  writing: Writing;
}) {
  const { fields, faults, writing } = props;
  const names = Object.keys(fields).filter(
    (name) => (name.startsWith(knockOn.at) || name === releaseClearanceMm.box) && fields[name] !== '',
  );
  return (
    <details class="change" id="knock-on" open={anyWrong(faults, names)}>
      <summary>
        If measured: pads, hub, pilot, heights, clearances
        <EnteredCount fields={fields} names={names} />
      </summary>
      <BodyFields of={{ releaseClearanceMm }} fields={fields} faults={faults} writing={writing} />
      <BodyFields of={knockOn.fields} at={knockOn.at} fields={fields} faults={faults} writing={writing} />
    </details>
  );
}
