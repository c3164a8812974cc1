import type { ComponentChildren } from 'preact';
import type { Status } from '../../shared/words/finding.ts';
import { AdviceSign, Sign } from './form/sign.tsx';

export interface AnswerRowProps {
  /** Whether it is open is kept by it while the answer is shown anew. */
  readonly id: string;
  /** null for advice, which is judged by nothing. */
  readonly status: Status | null;
  readonly title: string;
  /** The answer in one sentence. */
  readonly says: ComponentChildren;
  /** The one figure of it, with its unit. */
  readonly figure?: string | null;
  readonly unit?: string;
  readonly open?: boolean;
  /** Open, the sentence is found again in what stands under it. */
  readonly saidBelow?: boolean;
  readonly level?: 2 | 3;
  readonly children: ComponentChildren;
}

/** What else was looked at: a row a subject, closed unless something in it is not OK. */
export function AnswerRows({ label, children }: { label: string; children: ComponentChildren }) {
  return (
    <section class="answer-rows" aria-label={label}>
      {children}
    </section>
  );
}

/** One subject: sign, word, one sentence and its figure; the rest one press away. */
export function AnswerRow(props: AnswerRowProps) {
  const {
    id,
    status,
    title,
    says,
    figure = null,
    unit,
    open = false,
    saidBelow,
    level = 2,
    children,
  } = props;
  const Heading = level === 2 ? 'h2' : 'h3';
  return (
    <details
      class={`answer-row row-${status ?? 'advice'}`}
      id={id}
      data-status={status ?? 'advice'}
      open={open}
    >
      <summary>
        {status === null ? <AdviceSign /> : <Sign status={status} word="shown" />}
        <Heading>{title}</Heading>
        <span class={saidBelow ? 'row-says said-below' : 'row-says'}>{says}</span>
        {figure !== null && (
          <span class="row-figure">
            <b>{figure}</b>
            {unit !== undefined && <small> {unit}</small>}
          </span>
        )}
        <svg class="row-mark" viewBox="0 0 12 12" width="12" height="12" aria-hidden="true" focusable="false">
          <path d="M1.5 3.5L6 8l4.5-4.5" />
        </svg>
      </summary>
      <div class="row-body">{children}</div>
    </details>
  );
}
