import type { ComponentChildren } from 'preact';

export interface TitleCell {
  readonly label: string;
  readonly value: ComponentChildren;
  /** Takes twice the room. */
  readonly wide?: boolean;
}

/** The foot of a sheet, after ISO 7200: job, cover, who, date, revision, sheet. */
export function TitleBlock({ cells }: { cells: readonly TitleCell[] }) {
  return (
    <dl class="title-block">
      {cells.map((cell) => (
        <div class={cell.wide ? 'wide' : undefined}>
          <dt>{cell.label}</dt>
          <dd>{cell.value === '' || cell.value === null ? '—' : cell.value}</dd>
        </div>
      ))}
    </dl>
  );
}
