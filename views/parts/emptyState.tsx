import type { ComponentChildren } from 'preact';
import { type Action, Actions } from './form/actions.tsx';

export interface EmptyStateProps {
  readonly title: string;
  readonly children?: ComponentChildren;
  readonly actions?: readonly Action[];
}

/** Where a list would be: why there is nothing, and what to do about it. */
export function EmptyState({ title, children, actions = [] }: EmptyStateProps) {
  return (
    <section class="empty">
      <h2 data-tell>{title}</h2>
      {children && <p>{children}</p>}
      {actions.length > 0 && <Actions actions={actions} />}
    </section>
  );
}
