import { upperFirst } from '../../../shared/words/fields/field.ts';
import { ENTRY_WORD } from '../../../shared/words/terms.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { EntryDrawnNow, type EntryTyped } from '../../parts/entryDrawnPart.tsx';

/** An entry of the catalog as it is typed, drawn: a form takes the drawing alone. */
export function EntryDrawnPage({ frame, typed }: { frame: Frame; typed: EntryTyped }) {
  const title = `${upperFirst(ENTRY_WORD[typed.kind].one)}, drawn`;
  return (
    <Layout title={title} here="catalogue" {...frame}>
      <h1>{title}</h1>
      <EntryDrawnNow typed={typed} unit={frame.lengthUnit} />
      <div class="actions">
        <a class="button first" href={`/catalogue?shelf=${typed.kind}`}>
          Back to the catalog
        </a>
      </div>
    </Layout>
  );
}
