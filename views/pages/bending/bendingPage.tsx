import type { Bending } from '../../../shared/words/bending/bending.ts';
import type { StiffnessAnswer } from '../../../shared/words/bending/stiffness.ts';
import type { Mark } from '../../../shared/words/cover.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { type BentCurve, BentSection } from '../../drawings/bentSection.tsx';
import { PressureMap } from '../../drawings/pressureMap.tsx';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';

export interface BendingDrawn {
  readonly bending: Bending;
  /** The cover as it came in, which made the marks. */
  readonly now: { readonly rigid: StiffnessAnswer; readonly conforming: StiffnessAnswer };
  readonly curves: readonly BentCurve[];
  readonly marks: readonly Mark[];
}

export interface BendingPageProps {
  readonly frame: Frame;
  readonly drawn: BendingDrawn | null;
  readonly why: string | null;
  readonly back: string;
  readonly here: 'covers' | 'jobs';
}

/** The drawings of the advice on bending: a page of its own, or opened in the page they belong to. */
export function BendingPage({ frame, drawn, why, back, here }: BendingPageProps) {
  return (
    <Layout title="How it bends" here={here} {...frame}>
      <h1>How it bends: advice</h1>
      <div id="bending-drawings">
        {drawn ? <Drawn {...drawn} unit={frame.lengthUnit} /> : <p class="hint">{why}</p>}
      </div>
      <div class="actions">
        <a class="button first" href={back}>
          Back
        </a>
      </div>
    </Layout>
  );
}

function Drawn({ bending, now, curves, marks, unit }: BendingDrawn & { unit: LengthUnit }) {
  const { base } = bending;
  const map = (piston: 'conforming' | 'rigid') => (
    <PressureMap
      id={`bending-${piston}`}
      map={now[piston].pressureMap}
      meanPressureMPa={now[piston].meanPressureMPa}
      peakOverMean={now[piston].peakOverMean}
      peakAt={now[piston].peakAt}
      trackInnerDiameterMm={base.trackInnerDiameterMm}
      trackOuterDiameterMm={base.trackOuterDiameterMm}
      studCount={base.studCount}
      studCircleDiameterMm={base.studCircleDiameterMm}
      marks={marks}
      unit={unit}
    />
  );
  return (
    <>
      <p class="hint">Lining pressure on the cover as it came in. A real piston is between these two.</p>
      <div class="two even">
        <div>
          <h3>Most flexible piston</h3>
          {map('conforming')}
        </div>
        <div>
          <h3>Stiffest piston</h3>
          {map('rigid')}
        </div>
      </div>
      <h3>The section bent, most flexible piston</h3>
      <BentSection
        id="bending-section"
        curves={curves}
        trackInnerDiameterMm={base.trackInnerDiameterMm}
        trackOuterDiameterMm={base.trackOuterDiameterMm}
        bossDiameterMm={base.bossDiameterMm}
        rimDiameterMm={base.rimDiameterMm}
        studCircleDiameterMm={base.studCircleDiameterMm}
        unit={unit}
      />
    </>
  );
}
