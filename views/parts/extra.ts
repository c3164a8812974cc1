/** What else an element may carry: what htmx and our own script read. */
export interface Extra {
  readonly [name: `hx-${string}` | `data-${string}` | `aria-${string}`]: string | undefined;
  readonly form?: string;
}

export interface InputExtra extends Extra {
  readonly min?: string | number;
  readonly max?: string | number;
  readonly step?: string | number;
  readonly list?: string;
  readonly maxLength?: number;
  readonly accept?: string;
  /** On a phone: the camera, rather than a list of files. */
  readonly capture?: 'environment';
  readonly placeholder?: string;
  readonly autofocus?: boolean;
  readonly autocomplete?: string;
  readonly multiple?: boolean;
  readonly readonly?: boolean;
  readonly enterkeyhint?: 'done' | 'next' | 'go' | 'search';
}
