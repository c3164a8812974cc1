import type { ComponentChildren } from 'preact';
import type { InputExtra } from './extra.ts';
import { FieldError } from './form/fieldBox.tsx';
import { useFieldIds } from './form/inForm.ts';
import { QuestionAt } from './form/questionAt.tsx';

export interface EntryColumn {
  readonly key: string;
  readonly label: string;
  readonly unit?: string;
  readonly inputmode?: 'decimal' | 'numeric' | 'text';
}

export interface EntryCell {
  readonly name: string;
  readonly value: string | null;
  readonly error?: string | null;
  readonly readonly?: boolean;
  readonly input?: InputExtra;
  /** A list to choose from, instead of a box to type in. */
  readonly options?: readonly { readonly value: string; readonly label: string }[];
}

export interface EntryRow {
  readonly id: string;
  /** What the row is about, seen: "1 · behind stud 1". */
  readonly head: ComponentChildren;
  /** The same for a listener, after each column's label: "at station 1". */
  readonly spoken: string;
  readonly cells: Readonly<Record<string, EntryCell | undefined>>;
  /** Stands at the end of the row: an answer, a button to take it out. */
  readonly end?: ComponentChildren;
}

export interface EntryTableProps {
  readonly caption: string;
  readonly headLabel: string;
  readonly columns: readonly EntryColumn[];
  readonly rows: readonly EntryRow[];
  readonly endLabel?: string;
  readonly id?: string;
}

/** A table of boxes. On a phone each row becomes a block, so that the page never scrolls sideways. */
export function EntryTable({ caption, headLabel, columns, rows, endLabel, id }: EntryTableProps) {
  const fieldId = useFieldIds();
  return (
    <div class="entry-box" id={id}>
      <table class="entry">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">{headLabel}</th>
            {columns.map((column) => (
              <th scope="col">
                {column.label}
                {column.unit && <span class="unit-in-head">, {column.unit}</span>}
              </th>
            ))}
            {endLabel !== undefined && <th scope="col">{endLabel}</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr id={row.id}>
              <th scope="row">{row.head}</th>
              {columns.map((column) => {
                const cell = row.cells[column.key];
                if (cell === undefined) return <td class="nothing" />;
                const inputId = fieldId(cell.name);
                return (
                  <td class={cell.error ? 'field-wrong' : undefined}>
                    <label for={inputId}>
                      <span class="cell-label">
                        {column.label}
                        {column.unit && `, ${column.unit}`}
                      </span>
                      <span class="unseen"> {row.spoken}</span>
                    </label>
                    {cell.options ? (
                      <select id={inputId} name={cell.name}>
                        {cell.options.map(({ value, label }) => (
                          <option value={value} selected={value === (cell.value ?? '')}>
                            {label}
                          </option>
                        ))}
                      </select>
                    ) : (
                      <input
                        id={inputId}
                        name={cell.name}
                        type="text"
                        inputmode={column.inputmode ?? 'decimal'}
                        autocomplete="off"
                        value={cell.value ?? ''}
                        readOnly={cell.readonly}
                        aria-invalid={cell.error ? 'true' : undefined}
                        aria-describedby={cell.error ? `${inputId}-error` : undefined}
                        {...cell.input}
                      />
                    )}
                    {cell.error && <FieldError id={`${inputId}-error`} text={cell.error} />}
                    <QuestionAt name={cell.name} describedBy={cell.error ? `${inputId}-error` : undefined} />
                  </td>
                );
              })}
              {endLabel !== undefined && <td class="row-end">{row.end}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
