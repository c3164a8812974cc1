import type { ComponentChildren } from 'preact';

export interface ChangeFormProps {
  readonly action: string;
  /** Whether whoever looks may change it; others see the same, and no form. */
  readonly mayChange: boolean;
  readonly children: ComponentChildren;
}

/** What a keeper changes by form, and everybody else reads. */
export function ChangeForm({ action, mayChange, children }: ChangeFormProps) {
  if (mayChange) {
    return (
      <form method="post" action={action}>
        {children}
      </form>
    );
  }
  return (
    <>
      <p class="note">Only a manager can change this.</p>
      {children}
    </>
  );
}
