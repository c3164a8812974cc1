import type { ComponentChildren } from 'preact';
import type { Fault } from '../../../shared/words/refusal.ts';

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
  readonly children: ComponentChildren;
}

/** Boxes few need: their head, how many are filled, when they are needed. What was typed, refused or asked about is in sight. */
export function FoldedBoxes(props: FoldedBoxesProps) {
  const { head, says, names, fields, kept = {}, faults, children } = props;
  const text = (of: Readonly<Record<string, string>>, name: string) => (of[name] ?? '').trim();
  const filled = names.filter((name) => text(fields, name) !== '').length;
  const open =
    props.open ||
    names.some(
      (name) =>
        text(fields, name) !== text(kept, name) ||
        faults.some(({ path }) => path === name || path === `ok.${name}`),
    );
  return (
    <details class="folded-boxes" id={`fold-${names[0]}`} open={open}>
      <summary>
        <b>{head}</b>
        <span class="fold-count">{filled === 0 ? 'blank' : `${filled} of ${names.length} entered`}</span>
        {says && <span class="hint">{says}</span>}
      </summary>
      <fieldset>
        <legend class="unseen">{head}</legend>
        <div class="fields">{children}</div>
      </fieldset>
    </details>
  );
}
