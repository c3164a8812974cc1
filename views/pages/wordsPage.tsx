import type { Frame } from '../frame.ts';
import { Layout } from '../layout.tsx';

export interface WordsProps {
  readonly frame: Frame;
  readonly terms: readonly { readonly word: string; readonly is: string }[];
  /** The boxes of each form, with their units. */
  readonly forms: readonly {
    readonly name: string;
    readonly fields: readonly { readonly label: string; readonly unit: string; readonly help: string }[];
  }[];
}

/** Every word of the screens and what it is. */
export function WordsPage({ frame, terms, forms }: WordsProps) {
  return (
    <Layout title="Words used here" here="worked-out" {...frame}>
      <p class="back">
        <a href="/how">How it is worked out</a>
      </p>
      <h1>Words used here</h1>
      <table>
        <thead>
          <tr>
            <th scope="col">Word</th>
            <th scope="col">What it is</th>
          </tr>
        </thead>
        <tbody>
          {terms.map(({ word, is }) => (
            <tr>
              <th scope="row">{word}</th>
              <td>{is}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h2>What is typed</h2>
      {forms.map(({ name, fields }) => (
        <details class="more-findings">
          <summary>{name}</summary>
          <table>
            <thead>
              <tr>
                <th scope="col">Box</th>
                <th scope="col">Unit</th>
                <th scope="col">What to type</th>
              </tr>
            </thead>
            <tbody>
              {fields.map(({ label, unit, help }) => (
                <tr>
                  <th scope="row">{label}</th>
                  <td>{unit}</td>
                  <td>{help}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      ))}
    </Layout>
  );
}
