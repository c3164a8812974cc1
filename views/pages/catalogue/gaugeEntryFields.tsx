import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { GAUGE } from '../../../shared/words/fields/gauge.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { BodyFields, Boxes } from '../../parts/form/bodyFields.tsx';

export interface GaugeEntryFieldsProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly kept: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly writing: Writing;
}

const { dueOn, checkEveryDays, note, ...READS } = GAUGE;

/** How it reads, beside what that comes to; when it is due, and a note. */
export function GaugeEntryFields(boxes: GaugeEntryFieldsProps) {
  return (
    <>
      <div class="drawn-boxes">
        <BodyFields of={READS} {...boxes} />
      </div>
      <div class="more-boxes">
        <div class="fields">
          <Boxes of={{ dueOn, checkEveryDays, note }} {...boxes} />
        </div>
      </div>
    </>
  );
}
