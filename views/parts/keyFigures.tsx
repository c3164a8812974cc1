import type { ComponentChildren } from 'preact';
import type { Status } from '../../shared/words/finding.ts';
import { Sign } from './form/sign.tsx';

export interface KeyFigure {
  readonly label: string;
  /** The figure alone, already rounded for the eye. */
  readonly value: string;
  readonly unit?: string;
  readonly note?: ComponentChildren;
  readonly status?: Status;
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
            <span class="figure">{figure.value}</span>
            {figure.unit && <span class="figure-unit"> {figure.unit}</span>}
            {figure.note && <small>{figure.note}</small>}
          </dd>
        </div>
      ))}
    </dl>
  );
}
