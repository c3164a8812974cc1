import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import { Field } from './fieldBox.tsx';

/** Which zone holds: the setting's, where somebody set it, else the shop's, else the computer's. */
export interface ZoneHeld {
  readonly holds: string;
  readonly by: 'setting' | 'shop' | 'computer';
}

export const ZONE_SAYS: Readonly<Record<ZoneHeld['by'], string>> = {
  setting:
    'TIME_ZONE in the program’s settings says so, and comes first: this box counts once it is removed there.',
  shop: 'The shop chose it.',
  computer: 'That is this computer’s; nobody chose another.',
};

const ZONES = Intl.supportedValuesOf('timeZone');

/** The zone of the shop, typed or taken from the list. */
export function ZoneField({
  value,
  error,
  zone,
}: {
  readonly value: string | undefined;
  readonly error: string | null;
  readonly zone: ZoneHeld;
}) {
  return (
    <>
      <Field
        label={CRITERIA.timeZone.label}
        name="timeZone"
        value={value}
        error={error}
        optional
        hint={`Days and times go by ${zone.holds}. ${ZONE_SAYS[zone.by]}`}
        input={{ list: 'zones', maxLength: CRITERIA.timeZone.most }}
      />
      <datalist id="zones">
        {ZONES.map((name) => (
          <option value={name} />
        ))}
      </datalist>
    </>
  );
}
