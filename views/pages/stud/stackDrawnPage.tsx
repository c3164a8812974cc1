import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { StackDrawnNow, type StackTyped } from '../../parts/stackDrawnPart.tsx';

/** A stack as it is typed, drawn: a form takes the drawing alone. */
export function StackDrawnPage({ frame, typed, back }: { frame: Frame; typed: StackTyped; back: string }) {
  return (
    <Layout title="Flexplate stack, drawn" here="studs" {...frame}>
      <h1>Flexplate stack, drawn</h1>
      <StackDrawnNow typed={typed} unit={frame.lengthUnit} />
      <div class="actions">
        <a class="button first" href={back}>
          Back
        </a>
      </div>
    </Layout>
  );
}
