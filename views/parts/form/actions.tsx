import type { ComponentChildren } from 'preact';
import type { Extra } from '../extra.ts';

export type Action =
  | {
      readonly label: ComponentChildren;
      readonly href: string;
      readonly id?: string;
      readonly link?: Extra;
    }
  | {
      readonly label: ComponentChildren;
      /** A button without an id loses the focus when a part is swapped. */
      readonly id: string;
      readonly type?: 'submit' | 'button';
      readonly name?: string;
      readonly value?: string;
      readonly formaction?: string;
      readonly disabled?: boolean;
      readonly button?: Extra;
    };

export interface ActionsProps {
  /** The first is the next thing to do, and looks it. */
  readonly actions: readonly Action[];
  /** Keeps the row at the foot of the screen on a phone. */
  readonly sticky?: boolean;
  readonly children?: ComponentChildren;
}

export function Actions({ actions, sticky = false, children }: ActionsProps) {
  return (
    <div class={`actions${sticky ? ' sticky' : ''}`}>
      {actions.map((action, index) => {
        const look = index === 0 ? 'button first' : 'button';
        if ('href' in action) {
          return (
            <a class={look} href={action.href} id={action.id} {...action.link}>
              {action.label}
            </a>
          );
        }
        return (
          <button
            class={look}
            type={action.type ?? 'submit'}
            id={action.id}
            name={action.name}
            value={action.value}
            formaction={action.formaction}
            disabled={action.disabled}
            {...action.button}
          >
            {action.label}
          </button>
        );
      })}
      {children}
    </div>
  );
}
