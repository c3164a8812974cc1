import { boxOf, unitShown, type Writing } from '../../../shared/quantity/fieldText.ts';
import { entriesOf } from '../../../shared/words/fields/field.ts';
import { CATALOGUE_STACK, LAYER } from '../../../shared/words/fields/stud.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { EntryTable } from '../../parts/entryTable.tsx';
import { BodyFields, Boxes } from '../../parts/form/bodyFields.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { StackDrawnPart, type StackTyped } from '../../parts/stackDrawnPart.tsx';
import { NutClass } from './nutFields.tsx';

export interface StackFieldsProps {
  readonly fields: Readonly<Record<string, string>>;
  readonly rows: number;
  readonly faults: readonly Fault[];
  readonly writing: Writing;
  readonly typedStack: StackTyped;
  /** The entry of the catalog that is changed. */
  readonly entryId?: string | undefined;
  /** Only what it measures: it is in no catalog. */
  readonly inHand?: boolean;
}

const { name, pullForwardMm, makerTorqueNm, makerTorqueSource, note, ...MEASURED } = CATALOGUE_STACK;
const OF_ENTRY = { pullForwardMm, makerTorqueNm, makerTorqueSource, note };

const KINDS = [
  { value: '', label: LAYER.kind.unsaid },
  ...Object.entries(LAYER.kind.options).map(([value, label]) => ({ value, label })),
];

/** A stack layer by layer from the pad toward the engine, and the nut that clamps it. */
export function StackFields({ rows, typedStack, entryId, inHand = false, ...boxes }: StackFieldsProps) {
  const { fields, faults, writing } = boxes;
  const error = errorsOf(faults);
  const layer = entriesOf(LAYER);
  return (
    <div id="stack-boxes">
      {!inHand && (
        <div class="fields">
          <Boxes of={{ name }} {...boxes} />
        </div>
      )}
      <EntryTable
        id="layers"
        caption="Layers at the stud hole, converter side first: shim, plate, casting"
        headLabel="Layer"
        columns={layer.map(([key, field]) => {
          const unit = unitShown(field, writing);
          const label = field === LAYER.name ? 'What it is' : field.label;
          return unit === undefined ? { key, label, inputmode: 'text' as const } : { key, label, unit };
        })}
        rows={Array.from({ length: rows }, (_, row) => ({
          id: `layer-${row}`,
          head: `${row + 1}`,
          spoken: `of layer ${row + 1}`,
          cells: Object.fromEntries(
            layer.map(([key, field]) => {
              const box = boxOf(key, field, { row }) ?? key;
              return [
                key,
                {
                  name: box,
                  value: fields[box] ?? '',
                  error: error(box),
                  ...(field.kind === 'choice' && { options: KINDS }),
                },
              ];
            }),
          ),
        }))}
      />
      <StackDrawnPart typed={typedStack} unit={writing.lengthUnit} entryId={entryId} />
      <BodyFields
        of={MEASURED}
        {...boxes}
        after={{
          bearingOuterDiameterMm: <NutClass value={fields.nutClass} error={error('nutClass')} />,
        }}
      />
      {!inHand && <BodyFields of={OF_ENTRY} {...boxes} />}
    </div>
  );
}
