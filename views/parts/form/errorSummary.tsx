import type { Fault } from '../../../shared/words/refusal.ts';
import { useFieldIds } from './inForm.ts';

export interface ErrorSummaryProps {
  readonly faults: readonly Fault[];
  /** Names a field's id from a fault's path, where they differ from what the form makes of it. */
  readonly idOf?: (path: string) => string | undefined;
  /** Goes to it when the page opens: where the form is not at the head of the page. */
  readonly goTo?: boolean;
}

/** Everything that was not taken, at the head of the form; each line leads to its field. */
export function ErrorSummary({ faults, idOf, goTo = false }: ErrorSummaryProps) {
  const fieldId = useFieldIds();
  if (faults.length === 0) return null;
  const lines = faults.map(({ path, message }) => ({
    message,
    id: idOf?.(path) ?? (path === '' ? null : fieldId(path)),
  }));
  // On a phone a long one scrolls by itself: where no line leads anywhere, the keyboard reaches the whole.
  const led = lines.some(({ id }) => id !== null);
  return (
    <section
      class="faults"
      role="alert"
      aria-labelledby="faults-title"
      id="faults"
      tabindex={led ? -1 : 0}
      autofocus={goTo}
    >
      <h2 id="faults-title">{faults.length === 1 ? 'One thing to fix' : `${faults.length} things to fix`}</h2>
      <ul>
        {lines.map(({ id, message }) => (
          <li>{id === null ? message : <a href={`#${id}`}>{message}</a>}</li>
        ))}
      </ul>
    </section>
  );
}
