import { boxesOf, type Writing } from '../../../shared/quantity/fieldText.ts';
import { OWN_BENDING, OWN_BENDING_AT } from '../../../shared/words/fields/cover.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { Boxes } from '../../parts/form/bodyFields.tsx';

/** What bending needs of a cover that is of no type in the catalog. */
export function OwnBendingFields(props: {
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly writing: Writing;
}) {
  const typed = boxesOf(OWN_BENDING, { at: OWN_BENDING_AT }).some((box) => (props.fields[box] ?? '') !== '');
  return (
    <details class="twin" open={typed} id="own-bending">
      <summary>For bending and heat: cover center, rim, pads, side wall, seal, hub, pressure</summary>
      <div class="fields">
        <Boxes of={OWN_BENDING} at={OWN_BENDING_AT} {...props} />
      </div>
    </details>
  );
}
