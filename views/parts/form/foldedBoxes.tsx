import type { ComponentChildren } from 'preact';
import { useContext } from 'preact/hooks';
import type { Fault } from '../../../shared/words/refusal.ts';
import { Asked } from './askedHere.ts';
import { useFieldIds } from './inForm.ts';

export interface FoldedBoxesProps {
  readonly head: string;
  /** When these boxes are needed. */
  readonly says: string | undefined;
  readonly names: readonly string[];
  readonly fields: Readonly<Record<string, string>>;
  readonly kept?: Readonly<Record<string, string>> | undefined;
  readonly faults: readonly Fault[];
  /** Whatever stands in them. */
  readonly open?: boolean;
  /** What is kept in them, in words: told while they are folded. */
  readonly told?: string;
  readonly children: ComponentChildren;
}

/**
 * Boxes few need: their head, how many are filled, when they are needed. What was typed, refused or asked about is in
 * sight; what was kept before is told.
 */
export function FoldedBoxes(props: FoldedBoxesProps) {
  const { head, says, names, fields, kept = {}, faults, children } = props;
  const text = (of: Readonly<Record<string, string>>, name: string) => (of[name] ?? '').trim();
  const { doubts } = useContext(Asked);
  const fieldId = useFieldIds();
  const filled = names.filter((name) => text(fields, name) !== '').length;
  const open =
    props.open ||
    names.some(
      (name) =>
        text(fields, name) !== text(kept, name) ||
        doubts.some((doubt) => doubt.name === name) ||
        faults.some(({ path }) => path === name || path === `ok.${name}`),
    );
  return (
    <details class="folded-boxes" id={fieldId(`fold-${names[0]}`)} open={open}>
      <summary>
        <b>{head}</b>
        <span class="fold-count">{filled === 0 ? 'blank' : `${filled} of ${names.length} entered`}</span>
        {says && <span class="hint">{says}</span>}
        {!open && props.told && <span class="fold-told">{props.told}</span>}
      </summary>
      <fieldset>
        <legend class="unseen">{head}</legend>
        <div class="fields">{children}</div>
      </fieldset>
    </details>
  );
}
