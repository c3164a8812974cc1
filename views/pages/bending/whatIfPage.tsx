import type { Bending } from '../../../shared/words/bending/bending.ts';
import type { MeasuredCheck } from '../../../shared/words/cover.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { WhatIfAnswer } from '../../parts/whatIfPart.tsx';

export interface WhatIfPageProps {
  readonly frame: Frame;
  readonly check: MeasuredCheck | null;
  readonly bending: Bending | null;
  readonly back: string;
}

/** Another cut than the one planned, for those without a script; with one only its answer is taken. */
export function WhatIfPage({ frame, check, bending, back }: WhatIfPageProps) {
  return (
    <Layout title="Try another cut" here="jobs" {...frame}>
      <h1>Try another cut</h1>
      {check ? (
        <WhatIfAnswer check={check} bending={bending} unit={frame.lengthUnit} />
      ) : (
        <div id="what-if-answer">
          <p>Measure the wall first. Then a cut can be tried here.</p>
        </div>
      )}
      <p>Nothing is saved by trying.</p>
      <div class="actions">
        <a class="button first" href={back}>
          Back
        </a>
      </div>
    </Layout>
  );
}
