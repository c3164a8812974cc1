import type { Bending } from '../../../shared/words/bending.ts';
import type { CoverCheck } from '../../../shared/words/cover.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { WhatIfAnswer } from '../../parts/whatIfPart.tsx';

export interface WhatIfPageProps {
  readonly frame: Frame;
  readonly check: CoverCheck | null;
  readonly bending: Bending | null;
  readonly back: string;
}

/** Another cut than the one planned, for those without a script; with one only its answer is taken. */
export function WhatIfPage({ frame, check, bending, back }: WhatIfPageProps) {
  return (
    <Layout title="What if" here="jobs" {...frame}>
      <h1>What if another cut were taken</h1>
      {check ? (
        <WhatIfAnswer check={check} bending={bending} unit={frame.lengthUnit} />
      ) : (
        <div id="what-if-answer">
          <p>Nothing can be worked out yet: measure the wall first.</p>
        </div>
      )}
      <p>Nothing is kept by looking.</p>
      <div class="actions">
        <a class="button first" href={back}>
          Back
        </a>
      </div>
    </Layout>
  );
}
