import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { CATALOGUE_NUT } from '../../../shared/words/fields/stud.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { BodyFields } from '../../parts/form/bodyFields.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice } from '../../parts/form/fieldBox.tsx';

/** ISO 898-2 and SAE J995. */
const NUT_CLASSES = ['8', '10', '12', 'grade 5', 'grade 8', '5', '6', 'grade 2'];

/** What is marked on a nut, in place of its proof stress. */
export function NutClass({ value = '', error }: { value: string | undefined; error: string | null }) {
  return (
    <Choice
      label="Nut class or grade"
      name="nutClass"
      value={value}
      error={error}
      hint="As marked; gives its proof stress. A typed figure wins."
      options={[
        { value: '', label: 'not known, or entered as figures' },
        ...NUT_CLASSES.map((one) => ({ value: one, label: one })),
      ]}
    />
  );
}

/** A nut on the shelf. */
export function NutFields(boxes: {
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly writing: Writing;
}) {
  const error = errorsOf(boxes.faults)('nutClass');
  return (
    <BodyFields
      of={CATALOGUE_NUT}
      {...boxes}
      after={{ bearingOuterDiameterMm: <NutClass value={boxes.fields.nutClass} error={error} /> }}
    />
  );
}
