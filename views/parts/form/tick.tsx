import type { ComponentChildren } from 'preact';
import type { InputExtra } from '../extra.ts';
import { usePutBy } from './askedHere.ts';
import { useFieldIds } from './inForm.ts';

export interface TickProps {
  readonly label: ComponentChildren;
  readonly name: string;
  readonly value?: string;
  readonly checked?: boolean;
  readonly id?: string;
  readonly input?: InputExtra;
}

/** Yes or no. */
export function Tick({ label, name, value = 'yes', checked, id: own, input }: TickProps) {
  const fieldId = useFieldIds();
  usePutBy(name);
  const id = own ?? fieldId(name);
  return (
    <label class="radio tick" for={id}>
      <input type="checkbox" id={id} name={name} value={value} checked={checked} {...input} />
      <span>{label}</span>
    </label>
  );
}
