import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { BodyFields } from '../../parts/form/bodyFields.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';

export interface FamilyFieldsProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly kept: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly writing: Writing;
  /** Initials and names to choose from, where somebody set a figure. */
  readonly people: readonly string[];
  /** Steels to choose from, each with its revision. */
  readonly steels: readonly string[];
}

const KEYS = Object.keys(FAMILY);
/** Up to the pads: what every cover type has, and what its drawing is lettered by. */
const FIRST = KEYS.slice(0, KEYS.indexOf('sideWallMm'));
/** Bending, the ring, and limits of what jobs measure. */
const FOLDED = KEYS.slice(KEYS.indexOf('sideWallMm'), KEYS.indexOf('makerMinimumWallMm'));

/** What it is made of: one of the catalog, or as it was when the type was saved. */
function Steel({
  fields,
  faults,
  kept,
  steels,
}: Pick<FamilyFieldsProps, 'fields' | 'faults' | 'kept' | 'steels'>) {
  const { label, box } = FAMILY.steel;
  const names = new Set([...steels, kept[box] ?? '', fields[box] ?? '']);
  names.delete('');
  return (
    <Choice
      label={label}
      name={box}
      value={fields[box] ?? ''}
      error={errorsOf(faults)(box)}
      hint="Bending and heat take its figures from the catalog"
      options={[
        { value: '', label: 'not chosen: the shop’s figures' },
        ...[...names].map((name) => ({ value: name, label: name })),
      ]}
    />
  );
}

/** The figures beside their drawing; the minimum wall and what few need below it. */
export function FamilyFields({ people, steels, ...boxes }: FamilyFieldsProps) {
  const { fields, faults } = boxes;
  const { shopMinimumWallBy: by, shopMinimumWallSource: before } = FAMILY;
  return (
    <>
      <div class="drawn-boxes">
        <BodyFields of={FAMILY} {...boxes} only={FIRST} lettered />
      </div>
      <div class="more-boxes">
        <div class="fields">
          <Steel {...boxes} steels={steels} />
        </div>
        <BodyFields
          of={FAMILY}
          {...boxes}
          without={[
            ...FIRST,
            ...FOLDED,
            ...((fields[before.box] ?? '') === '' ? ['shopMinimumWallSource'] : []),
          ]}
          instead={{
            shopMinimumWallBy: (
              <Field
                label={by.label}
                name={by.box}
                value={fields[by.box]}
                error={errorsOf(faults)(by.box)}
                hint={by.help}
                optional
                input={{ list: 'people', maxLength: by.most }}
              />
            ),
          }}
        />
        <datalist id="people">
          {people.map((one) => (
            <option value={one} />
          ))}
        </datalist>
      </div>
      <div class="fold-list">
        <BodyFields of={FAMILY} {...boxes} only={FOLDED} />
      </div>
    </>
  );
}
