import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { CATALOGUE_STUD, STUD } from '../../../shared/words/fields/stud.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { BodyFields, Boxes } from '../../parts/form/bodyFields.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice } from '../../parts/form/fieldBox.tsx';

export interface StudFieldsProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly kept?: Readonly<Record<string, string>> | undefined;
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

const { thread: _made, ...MADE } = STUD;
const { projectionMm: _asked, ...IN_HAND } = MADE;
const { stud: _part, stock, shelf, note, ...NAMED } = CATALOGUE_STUD;
const KEYS = Object.keys(MADE);
/** Up to the stud pilot: what its drawing is lettered by. */
const FIRST = KEYS.slice(0, KEYS.indexOf('tensileMPa'));

/** A stud measured from the pad's seating face toward the engine: the figures beside its drawing, and its strength. */
export function StudFields({ inHand = false, ...boxes }: StudFieldsProps) {
  const before = { tensileMPa: <Grade {...boxes} /> };
  // Length from pad and thread are asked before.
  if (inHand) return <BodyFields of={IN_HAND} {...boxes} before={before} />;
  return (
    <>
      <div class="drawn-boxes">
        <BodyFields of={NAMED} {...boxes} />
        <BodyFields of={MADE} {...boxes} only={FIRST} lettered />
      </div>
      <div class="more-boxes">
        <BodyFields of={MADE} {...boxes} without={FIRST} before={before} lettered />
      </div>
      <div class="fold-list">
        <div class="fields">
          <Boxes of={{ stock, shelf, note }} {...boxes} />
        </div>
      </div>
    </>
  );
}

function Grade({ fields, faults }: Omit<StudFieldsProps, 'inHand'>) {
  return (
    <Choice
      label="Strength class or grade"
      name="grade"
      value={fields.grade ?? ''}
      error={errorsOf(faults)('grade')}
      hint="Read the head mark; don’t guess. Typed figures win."
      options={[
        { value: '', label: 'not known, or entered as figures' },
        ...GRADES.map((grade) => ({ value: grade, label: grade })),
      ]}
    />
  );
}
