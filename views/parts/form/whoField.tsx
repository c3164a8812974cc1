import { Field } from './fieldBox.tsx';

export interface WhoFieldProps {
  /** Who works here in this sitting; '' until somebody has said. */
  readonly known: string;
  readonly typed: string | undefined;
  readonly error: string | null | undefined;
}

/** Asked for once a sitting: after that a line says who signs, and opens for somebody else. */
export function WhoField({ known, typed = known, error = null }: WhoFieldProps) {
  const box = (
    <Field
      label="Your initials"
      name="who"
      value={typed}
      error={error}
      size="figure"
      input={{ maxLength: 8, autocomplete: 'off' }}
    />
  );
  if (known === '' || error !== null || typed.trim() !== known) return box;
  return (
    <details class="who-known">
      <summary>
        Signing as <b>{known}</b> <u>Change initials</u>
      </summary>
      {box}
    </details>
  );
}
