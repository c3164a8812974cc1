import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { CATALOGUE_STUD, STUD } from '../../../shared/words/fields/stud.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { BodyFields } from '../../parts/form/bodyFields.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice } from '../../parts/form/fieldBox.tsx';

export interface StudFieldsProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly writing: Writing;
  /** Only what it measures: it is in no catalog. */
  readonly inHand?: boolean;
}

/** As marked on the stud; ISO 898-1 and SAE J429. */
const GRADES = [
  '8.8',
  '9.8',
  '10.9',
  '12.9',
  'grade 5',
  'grade 8',
  '4.6',
  '4.8',
  '5.6',
  '5.8',
  '6.8',
  'grade 1',
  'grade 2',
];

const { threadStartMm, threadEndMm, lengthToleranceMm, pilotDiameterMm, ...STRENGTH } = STUD;
const { thread: _made, projectionMm: _asked, ...STRONG } = STRENGTH;
/** Length from pad and thread are asked before. */
const MEASURED = { threadStartMm, threadEndMm, lengthToleranceMm, pilotDiameterMm, ...STRONG };

/** A stud measured from the pad's seating face toward the engine. */
export function StudFields({ inHand = false, ...boxes }: StudFieldsProps) {
  return (
    <BodyFields
      of={inHand ? MEASURED : CATALOGUE_STUD}
      {...boxes}
      after={{
        pilotDiameterMm: (
          <Choice
            label="Strength class or grade"
            name="grade"
            value={boxes.fields.grade ?? ''}
            error={errorsOf(boxes.faults)('grade')}
            hint="Read the head mark; don’t guess. Typed figures win."
            options={[
              { value: '', label: 'not known, or entered as figures' },
              ...GRADES.map((grade) => ({ value: grade, label: grade })),
            ]}
          />
        ),
      }}
    />
  );
}
