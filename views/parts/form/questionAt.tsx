import type { ComponentChildren } from 'preact';
import { useContext } from 'preact/hooks';
import { MINUS } from '../../../shared/words/print.ts';
import { Asked, type DoubtedLength } from './askedHere.ts';
import { Tick } from './tick.tsx';

/** Before the name of a box: the button that puts the value meant into it. */
export const MEANT = 'set.';

/** Boxes as they were kept: nothing of them is asked about again while it is not typed anew. */
export function asConfirmed(typed: Readonly<Record<string, string>>): Record<string, string> {
  const filled = Object.entries(typed).filter(([, text]) => text !== '');
  return { ...typed, ...Object.fromEntries(filled.map(([name, text]) => [`ok.${name}`, text])) };
}

export interface QuestionsProps {
  readonly doubts: readonly DoubtedLength[];
  readonly fields: Readonly<Record<string, string>>;
  readonly children?: ComponentChildren;
}

/**
 * Round the boxes of a form: each question stands at its box, with the buttons that answer it. What was confirmed stays
 * so while it is not typed anew.
 */
export function Questions({ doubts, fields, children }: QuestionsProps) {
  const confirmed = Object.keys(fields)
    .filter((name) => /^ok\.[a-z]/.test(name))
    .map((name) => name.slice('ok.'.length))
    .filter((name) => fields[name] !== '' && fields[name]?.trim() === fields[`ok.${name}`]);
  return (
    <Asked.Provider value={{ doubts, put: new Set() }}>
      {doubts.some(({ meant = [] }) => meant.length > 0) && <DefaultSubmit />}
      {children}
      <AtTheFoot confirmed={confirmed} fields={fields} />
    </Asked.Provider>
  );
}

/** Drawn after the boxes: what none of them asked. */
function AtTheFoot({
  confirmed,
  fields,
}: {
  confirmed: readonly string[];
  fields: QuestionsProps['fields'];
}) {
  const { doubts, put } = useContext(Asked);
  return (
    <>
      {doubts
        .filter(({ name }) => !put.has(name))
        .map((doubt) => (
          <Answers doubt={doubt} />
        ))}
      {confirmed
        .filter((name) => !put.has(name))
        .map((name) => (
          <input type="hidden" name={`ok.${name}`} value={fields[name]} />
        ))}
    </>
  );
}

/** At a box, below what is wrong with it: the value that may be meant, or that it is right as typed. */
export function QuestionAt({ name, describedBy }: { name: string; describedBy?: string | undefined }) {
  const { doubts, put } = useContext(Asked);
  const doubt = doubts.find((one) => one.name === name);
  if (doubt === undefined || put.has(name)) return null;
  put.add(name);
  return <Answers doubt={doubt} describedBy={describedBy} />;
}

function Answers({ doubt, describedBy }: { doubt: DoubtedLength; describedBy?: string | undefined }) {
  const { name, says, typed, over, meant = [] } = doubt;
  return (
    <div class="question">
      {over !== undefined && <p>{over}</p>}
      {meant.length > 0 && (
        <div class="actions meant">
          {meant.map((value) => (
            <button
              class="button"
              type="submit"
              name={`${MEANT}${name}`}
              value={value}
              aria-describedby={describedBy}
            >
              Use {value.replace(/^-(?=[\d.])/, MINUS)}
            </button>
          ))}
        </div>
      )}
      {says !== null && <Tick label={says} name={`ok.${name}`} value={typed} />}
    </div>
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
