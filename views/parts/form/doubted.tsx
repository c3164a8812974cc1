import { MINUS } from '../../../shared/words/print.ts';
import { Tick } from './fieldBox.tsx';

/** A value that looks like a slip. */
export interface DoubtedLength {
  /** Of its field; `ok.` before it is the field that confirms it. */
  readonly name: string;
  readonly typed: string;
  /** "The pull-forward gap is 0.465 mm, as typed"; null where it cannot be taken so. */
  readonly says: string | null;
  /** Said over the buttons, where nothing else there names the field. */
  readonly over?: string;
  /** What may be meant instead, each with a button. */
  readonly meant?: readonly string[];
}

/** Before the name of a box: the button that puts the value meant into it. */
export const MEANT = 'set.';

/** Boxes as they were kept: nothing of them is asked about again while it is not typed anew. */
export function asConfirmed(typed: Readonly<Record<string, string>>): Record<string, string> {
  const filled = Object.entries(typed).filter(([, text]) => text !== '');
  return { ...typed, ...Object.fromEntries(filled.map(([name, text]) => [`ok.${name}`, text])) };
}

export interface DoubtedProps {
  readonly doubts: readonly DoubtedLength[];
  readonly fields: Readonly<Record<string, string>>;
}

/** What looks like a slip is confirmed here; what was confirmed stays so while it is not typed anew. */
export function Doubted({ doubts, fields }: DoubtedProps) {
  const confirmed = Object.entries(fields).filter(
    ([name, typed]) => /^ok\.[a-z]/.test(name) && typed !== '' && fields[name.slice(3)]?.trim() === typed,
  );
  return (
    <>
      {doubts.some(({ meant = [] }) => meant.length > 0) && <DefaultSubmit />}
      {doubts.map(({ name, says, typed, over, meant = [] }) => (
        <>
          {over !== undefined && <p>{over}</p>}
          {meant.length > 0 && (
            <div class="actions meant">
              {meant.map((value) => (
                <button class="button" type="submit" name={`${MEANT}${name}`} value={value}>
                  Use {value.replace(/^-(?=[\d.])/, MINUS)}
                </button>
              ))}
            </div>
          )}
          {says !== null && <Tick label={says} name={`ok.${name}`} value={typed} />}
        </>
      ))}
      {confirmed.map(([name, typed]) => (
        <input type="hidden" name={name} value={typed} />
      ))}
    </>
  );
}

/** Enter in a box presses the first button of its form: this one, which sends what was typed and answers no question. */
export function DefaultSubmit({ form }: { form?: string }) {
  return (
    <button type="submit" form={form} class="unseen" tabindex={-1}>
      Send as typed
    </button>
  );
}
