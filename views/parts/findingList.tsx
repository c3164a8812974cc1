import type { ComponentChildren } from 'preact';
import type { Answer } from '../../shared/words/answer.ts';
import type { Finding, Status } from '../../shared/words/finding.ts';
import { type LengthUnit, printShare } from '../../shared/words/print.ts';
import { printQuantity } from './form/quantity.ts';
import { Sign } from './form/sign.tsx';
import { formulaHref, PageAddress } from './pageAddress.ts';
import { workingIn } from './workingIn.ts';

const WEIGHT: Readonly<Record<Status, number>> = { fail: 0, caution: 1, 'not-checked': 2, pass: 3 };

/** Those that stop the work first; otherwise in the order given. */
function byWeight(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort((a, b) => WEIGHT[a.status] - WEIGHT[b.status]);
}

/** An answer's working: formula, the same with its numbers, source; then what a reader must know of it. */
export function Working({
  answer,
  unit,
  formula = (text) => text,
}: {
  answer: Answer;
  unit: LengthUnit;
  /** How a formula is set, where it is more than a line of text. */
  formula?: (text: string) => ComponentChildren;
}) {
  return (
    <div class="working-out">
      <ol class="steps-of-working">
        {answer.how.map((step) => {
          const told = workingIn(step.numbers, unit);
          return (
            <li>
              <span class="formula">{formula(step.formula)}</span>
              {told === null ? (
                <span class="numbers in-si">
                  {step.numbers} <small>(metric, as the formula is)</small>
                </span>
              ) : (
                <span class="numbers">{told}</span>
              )}
              <small>{step.source}</small>
            </li>
          );
        })}
      </ol>
      <p class="result">
        {answer.symbol === '' ? 'Result' : answer.symbol} ={' '}
        {answer.value === null ? 'cannot be computed' : printQuantity(answer.value, answer.unit, unit)}
      </p>
      {answer.warnings.map((warning) => (
        <p class="warning">
          <Sign status="caution" /> {warning.text}
        </p>
      ))}
      <FormulaLink answer={answer} />
    </div>
  );
}

/** One press to the formula, its symbols and its source, with these values. */
function FormulaLink({ answer }: { answer: Answer }) {
  const [step] = answer.how;
  if (step === undefined) return null;
  return (
    <PageAddress.Consumer>
      {(address) => {
        const href = formulaHref(step.formula, address);
        return href === null ? null : (
          <p>
            <a
              href={href}
              aria-label={`Symbols and source of ${answer.symbol === '' ? 'this result' : answer.symbol}`}
            >
              Symbols and source
            </a>
          </p>
        );
      }}
    </PageAddress.Consumer>
  );
}

/** A limit without a unit between 0 and 1 is a share: how sure, how much of proof. */
function printLimit(limit: number, unit: string, reader: LengthUnit): string {
  return unit === '' && limit > 0 && limit < 1 ? printShare(limit) : printQuantity(limit, unit, reader);
}

function Line({ finding, unit }: { finding: Finding; unit: LengthUnit }) {
  return (
    <>
      <span class="finding-sign">
        <Sign status={finding.status} />
      </span>
      <span class="finding-says">
        <b>{finding.title}</b> <span class="finding-sentence">{finding.sentence}</span>
      </span>
      <span class="finding-limit">
        {finding.limit !== null && (
          <span class="limit-figure">limit {printLimit(finding.limit, finding.unit, unit)}</span>
        )}{' '}
        {finding.source !== '' && <span>{finding.source}</span>}
      </span>
    </>
  );
}

export interface FindingListProps {
  readonly findings: readonly Finding[];
  readonly unit: LengthUnit;
  /** Starts the ids, when a page has two lists. */
  readonly id?: string;
}

/** What was checked, gravest first; each line opens to its working. */
export function FindingList({ findings, unit, id = 'finding' }: FindingListProps) {
  return (
    <ul class="findings">
      {byWeight(findings).map((finding) => (
        <li id={`${id}-${finding.id}`} class={`finding finding-${finding.status}`}>
          {finding.answer === null ? (
            <div class="finding-line">
              <Line finding={finding} unit={unit} />
            </div>
          ) : (
            <details>
              <summary class="finding-line">
                <Line finding={finding} unit={unit} />
                <span class="finding-why">why</span>
              </summary>
              <Working answer={finding.answer} unit={unit} />
            </details>
          )}
        </li>
      ))}
    </ul>
  );
}
