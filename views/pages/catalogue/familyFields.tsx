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
  readonly toName: ToName;
}

/** What a cover type may name of the catalog, by kind, each with its revision. */
export type ToName = Readonly<Record<'steel' | 'lining', readonly string[]>>;

const KEYS = Object.keys(FAMILY);
/** Up to the pads: what every cover type has, and what its drawing is lettered by. */
const FIRST = KEYS.slice(0, KEYS.indexOf('sideWallMm'));
/** Bending, the ring, and limits of what jobs measure. */
const FOLDED = KEYS.slice(KEYS.indexOf('sideWallMm'), KEYS.indexOf('makerMinimumWallMm'));

const HINT = {
  steel: 'Bending and heat take its figures from the catalog',
  lining: 'Bending takes its modulus from the catalog',
} as const;

/** One of the catalog, or as it was when the type was saved. */
function Named({
  kind,
  fields,
  faults,
  kept,
  toName,
}: Pick<FamilyFieldsProps, 'fields' | 'faults' | 'kept' | 'toName'> & { kind: keyof ToName }) {
  const { label, box } = FAMILY[kind];
  const names = new Set([...toName[kind], kept[box] ?? '', fields[box] ?? '']);
  names.delete('');
  return (
    <Choice
      label={label}
      name={box}
      value={fields[box] ?? ''}
      error={errorsOf(faults)(box)}
      hint={HINT[kind]}
      options={[
        { value: '', label: 'not chosen: the shop’s figures' },
        ...[...names].map((name) => ({ value: name, label: name })),
      ]}
    />
  );
}

/** The figures beside their drawing; the minimum wall and what few need below it. */
export function FamilyFields({ people, toName, ...boxes }: FamilyFieldsProps) {
  const { fields, faults } = boxes;
  const { shopMinimumWallBy: by, shopMinimumWallSource: before } = FAMILY;
  return (
    <>
      <div class="drawn-boxes">
        <BodyFields of={FAMILY} {...boxes} only={FIRST} lettered />
      </div>
      <div class="more-boxes">
        <div class="fields">
          <Named kind="steel" {...boxes} toName={toName} />
          <Named kind="lining" {...boxes} toName={toName} />
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
