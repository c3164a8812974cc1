import type { ComponentChildren } from 'preact';

export interface DrawnAsTypedProps {
  /** Of the figure among the children; the answer of `from` holds one of the same id, which takes its place. */
  readonly id: string;
  readonly from: string;
  /** Which typing draws it anew: that of its form, where nothing else is said. */
  readonly on?: string | undefined;
  /** The entry of the catalog that is changed; what it keeps is not asked about. */
  readonly entryId?: string | undefined;
  readonly children: ComponentChildren;
}

/** A drawing beside the boxes it is made from, and anew when one of them changes. */
export function DrawnAsTyped({ id, from, on, entryId, children }: DrawnAsTypedProps) {
  return (
    <div
      class="beside-boxes"
      hx-get={from}
      hx-include="closest form"
      hx-params="not who,why,note,back"
      {...(entryId !== undefined && { 'hx-vals': JSON.stringify({ entry: entryId }) })}
      hx-trigger={on ?? 'input from:closest form delay:300ms'}
      hx-target={`#${id}`}
      hx-select={`#${id}`}
      hx-select-oob="unset"
      hx-swap="outerHTML"
      hx-push-url="false"
      hx-sync="this:queue last"
    >
      {children}
    </div>
  );
}
