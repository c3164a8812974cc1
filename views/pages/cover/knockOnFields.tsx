import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { BodyFields } from '../../parts/form/bodyFields.tsx';
import { anyWrong, EnteredCount } from '../../parts/form/entered.tsx';

const { releaseClearanceMm, knockOn } = SETUP;

interface KnockOnProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly writing: Writing;
  /** What is kept, box by box: a fold with nothing else in it tells it and stays folded. */
  readonly kept?: Readonly<Record<string, string>>;
}

/** What was measured round the face, each subject folded under when it is needed: what is not given is not spoken of. */
export function KnockOnBoxes(boxes: KnockOnProps) {
  return (
    <>
      <BodyFields of={{ releaseClearanceMm }} {...boxes} />
      <BodyFields of={knockOn.fields} at={knockOn.at} {...boxes} />
    </>
  );
}

/** The same behind one line. */
export function KnockOnFields(props: KnockOnProps) {
  const { fields, faults } = props;
  const names = Object.keys(fields).filter(
    (name) => (name.startsWith(knockOn.at) || name === releaseClearanceMm.box) && fields[name] !== '',
  );
  return (
    <details class="change" id="knock-on" open={anyWrong(faults, names)}>
      <summary>
        If measured: pads, hub, pilot, heights, clearances
        <EnteredCount fields={fields} names={names} />
      </summary>
      <KnockOnBoxes {...props} />
    </details>
  );
}
