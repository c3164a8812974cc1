import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { CoverDrawnNow, type CoverTyped } from '../../parts/coverDrawnPart.tsx';

/** A cover type as it is typed, drawn: a form takes the drawing alone. */
export function CoverDrawnPage({ frame, typed }: { frame: Frame; typed: CoverTyped }) {
  return (
    <Layout title="Cover type, drawn" here="catalogue" {...frame}>
      <h1>Cover type, drawn</h1>
      <CoverDrawnNow typed={typed} unit={frame.lengthUnit} />
      <div class="actions">
        <a class="button first" href="/catalogue?shelf=family">
          Back to the catalog
        </a>
      </div>
    </Layout>
  );
}
