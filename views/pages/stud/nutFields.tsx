import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { CATALOGUE_NUT, CATALOGUE_WASHER } from '../../../shared/words/fields/stud.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { BodyFields, Boxes } from '../../parts/form/bodyFields.tsx';
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

interface PartFieldsProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly kept: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly writing: Writing;
}

const { nut, stock, shelf, note, ...NAMED_NUT } = CATALOGUE_NUT;
const { heightMm, toleranceMm, bearingOuterDiameterMm, countersinkMm, prevailing, ...NUT_STRENGTH } =
  nut.fields;
const NUT_MEASURED = { heightMm, toleranceMm, countersinkMm, bearingOuterDiameterMm, prevailing };

/** A nut on the shelf. */
export function NutFields(boxes: PartFieldsProps) {
  const error = errorsOf(boxes.faults)('nutClass');
  return (
    <>
      <div class="drawn-boxes">
        <BodyFields of={NAMED_NUT} {...boxes} />
        <BodyFields of={NUT_MEASURED} {...boxes} lettered />
      </div>
      <div class="more-boxes">
        <div class="fields">
          <NutClass value={boxes.fields.nutClass} error={error} />
          <Boxes of={NUT_STRENGTH} {...boxes} />
        </div>
      </div>
      <div class="fold-list">
        <div class="fields">
          <Boxes of={{ stock, shelf, note }} {...boxes} />
        </div>
      </div>
    </>
  );
}

const { stock: count, shelf: place, note: words, ...WASHER } = CATALOGUE_WASHER;

/** A washer or shim on the shelf. */
export function WasherFields(boxes: PartFieldsProps) {
  return (
    <>
      <div class="drawn-boxes">
        <BodyFields of={WASHER} {...boxes} lettered />
      </div>
      <div class="more-boxes">
        <div class="fields">
          <Boxes of={{ stock: count, shelf: place, note: words }} {...boxes} />
        </div>
      </div>
    </>
  );
}
