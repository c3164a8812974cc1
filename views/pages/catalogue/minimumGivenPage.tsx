import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { type MinimumGiven, MinimumGivenNow } from '../../parts/minimumGivenPart.tsx';

/** What a minimum wall that is typed gives for every cover type: the limits’ form takes the table alone. */
export function MinimumGivenPage({ frame, given }: { frame: Frame; given: MinimumGiven | null }) {
  return (
    <Layout title="Minimum wall by cover type" here="criteria" {...frame}>
      <h1>Minimum wall by cover type</h1>
      {given === null && <p>No formula is entered.</p>}
      <MinimumGivenNow given={given} />
      <div class="actions">
        <a class="button first" href="/criteria">
          Back to the limits
        </a>
      </div>
    </Layout>
  );
}
