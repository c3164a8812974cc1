import type { ComponentChildren } from 'preact';
import type { Answer } from '../../shared/words/answer.ts';
import type { Status } from '../../shared/words/finding.ts';
import { Sign } from './form/sign.tsx';
import { HowFigure } from './how/howFigure.tsx';

export interface KeyFigure {
  readonly label: string;
  /** The figure alone, already rounded for the eye. */
  readonly value: string;
  readonly unit?: string;
  readonly note?: ComponentChildren;
  readonly status?: Status;
  /** Its working: the figure leads there. */
  readonly how?: Answer | null | undefined;
}

/** A few numbers that matter, large. */
export function KeyFigures({ figures }: { figures: readonly KeyFigure[] }) {
  return (
    <dl class="key-figures">
      {figures.map((figure) => (
        <div>
          <dt>
            {figure.status && <Sign status={figure.status} />} {figure.label}
          </dt>
          <dd>
            <HowFigure how={figure.how}>
              <span class="figure">{figure.value}</span>
              {figure.unit && <span class="figure-unit"> {figure.unit}</span>}
            </HowFigure>
            {figure.note && <small>{figure.note}</small>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
