import type { Bending } from '../../shared/words/bending/bending.ts';
import { rangeThanNew, timesNew } from '../../shared/words/bending/thanNew.ts';
import type { MeasuredCheck } from '../../shared/words/cover.ts';
import { printCut, printSure } from '../../shared/words/cut.ts';
import { type LengthUnit, lengthFigure, MM_PER_UNIT } from '../../shared/words/print.ts';
import { type KeyFigure, KeyFigures } from './keyFigures.tsx';

export interface WhatIfProps {
  /** Where the slider asks: the page's own address for it. */
  readonly action: string;
  /** What goes along with the cut: a form's fields. */
  readonly include?: string;
  readonly check: MeasuredCheck;
  readonly bending: Bending | null;
  readonly unit: LengthUnit;
  readonly level: 2 | 3;
}

/** In the unit of the reader. */
const STEP: Readonly<Record<LengthUnit, number>> = { mm: 0.01, in: 0.0005 };

/** The slider goes from no cut to well past the one that cleans up, and never deeper than the thinnest wall. */
function sliderRange(
  check: MeasuredCheck,
  unit: LengthUnit,
): { readonly mostMm: number; readonly stepMm: number; readonly valueMm: number } {
  const stepMm = STEP[unit] * MM_PER_UNIT[unit];
  const onStep = (mm: number, round: (steps: number) => number) =>
    Number((round(mm / stepMm - 1e-6) * stepMm).toFixed(6));
  const enough = Math.max(2 * check.cut.cleanUpMm, check.cut.dialledMm + 0.5, 0.5);
  const mostMm = Math.min(enough, 0.9 * check.leastWall.beforeMm);
  return { mostMm: onStep(mostMm, Math.ceil), stepMm, valueMm: onStep(check.cut.dialledMm, Math.round) };
}

/** Another cut tried: nothing is saved by moving the slider. */
export function WhatIf({ action, include, check, bending, unit, level }: WhatIfProps) {
  const { mostMm, stepMm, valueMm } = sliderRange(check, unit);
  const Heading = level === 2 ? 'h2' : 'h3';
  return (
    <section class="what-if" aria-labelledby="what-if-head">
      <Heading id="what-if-head">Try another cut</Heading>
      <form method="get" action={action} id="what-if-form">
        <label class="slider" for="what-if">
          <span>Depth of cut</span>
          <input
            id="what-if"
            name="try"
            type="range"
            min="0"
            max={mostMm}
            step={stepMm}
            value={valueMm}
            aria-describedby="what-if-answer"
            hx-get={action}
            hx-include={include}
            hx-trigger="input changed delay:40ms"
            hx-target="#what-if-answer"
            hx-select="#what-if-answer"
            hx-swap="outerHTML"
            hx-sync="this:replace"
          />
        </label>
        <noscript>
          <button class="button" type="submit">
            Show this cut
          </button>
        </noscript>
      </form>
      <WhatIfAnswer check={check} bending={bending} unit={unit} />
    </section>
  );
}

/** What a cut would leave, and what would be said of it. */
export function WhatIfAnswer({
  check,
  bending,
  unit,
}: {
  check: MeasuredCheck;
  bending: Bending | null;
  unit: LengthUnit;
}) {
  const { leastWall, conformanceProbability, cutsLeft, cut } = check;
  return (
    <div id="what-if-answer">
      <p data-tell class={`what-if-verdict verdict-${check.verdict}`}>
        <b>{printCut(cut.dialledMm, unit)}:</b> {check.headline} {check.because}
      </p>
      <KeyFigures
        figures={[
          {
            label: 'Thinnest wall left',
            value: lengthFigure(leastWall.afterMm, unit),
            unit,
            how: check.answers.leastWallAfterMm,
          },
          ...(conformanceProbability === null
            ? []
            : [
                {
                  label: 'Chance that no station is below the minimum',
                  value: printSure(conformanceProbability),
                  how: check.answers.conformanceProbability,
                },
              ]),
          ...(cutsLeft === null
            ? []
            : [{ label: 'More cuts after it', value: String(cutsLeft), how: check.answers.cutsLeft }]),
          { label: 'Cleans up', value: cut.cleansUp ? 'yes' : 'no' },
          ...bendingFigures(bending),
        ]}
      />
    </div>
  );
}

/** From the stiffest piston to the most flexible one. */
function bendingFigures(bending: Bending | null): KeyFigure[] {
  const of = (id: 'new' | 'after') => bending?.cases.find((one) => one.id === id);
  const [fresh, after] = [of('new'), of('after')];
  if (!fresh || !after) return [];
  return [
    {
      label: 'Friction-surface waviness (advice)',
      value: rangeThanNew(timesNew(after.rippleMm, fresh.rippleMm)),
    },
    {
      label: 'Peak lining pressure (advice)',
      value: rangeThanNew(timesNew(after.peakOverMean, fresh.peakOverMean)),
    },
  ];
}
