import type { Chosen } from '../../shared/words/catalogue.ts';
import type { CutPlanAnswer } from '../../shared/words/cover.ts';
import { passFigures } from '../../shared/words/cut.ts';
import {
  type LengthUnit,
  lengthFigure,
  printAs,
  printNumber,
  ROUGHNESS,
  SURFACE_SPEED,
  UNIT_WORD,
} from '../../shared/words/print.ts';
import { Caution } from './caution.tsx';
import { HowFigure } from './how/howFigure.tsx';

const KIND = { roughing: 'roughing', finishing: 'finishing, last' } as const;

/** `2 min 5 s`, `48 s`. */
export function cuttingTime(seconds: number): string {
  const whole = Math.max(1, Math.round(seconds));
  const minutes = Math.floor(whole / 60);
  return minutes === 0 ? `${whole} s` : `${minutes} min ${whole % 60} s`;
}

/** The passes of a cut on the lathe chosen, or the shop's, as advice. */
export function CutPlanPart(props: {
  plan: CutPlanAnswer | null;
  unit: LengthUnit;
  id: string;
  level: 2 | 3;
  /** Chosen for it; left out: the shop's. */
  lathe?: Chosen<'lathe'> | null | undefined;
}) {
  const { plan, unit, id, level, lathe } = props;
  const Heading = level === 2 ? 'h2' : 'h3';
  if (plan === null) {
    return (
      <p class="hint" id={`${id}-cut-plan`}>
        No passes are planned: the lathe is not described yet. Describe it under{' '}
        <a href="/criteria">shop limits</a>.
      </p>
    );
  }
  return (
    <section id={`${id}-cut-plan`} class="cut-plan">
      <Heading>Cut plan (advice)</Heading>
      <p>
        <HowFigure how={plan.answers.spindleRpm}>{printNumber(plan.spindleRpm, 0)} rpm</HowFigure>:{' '}
        {printAs(plan.cuttingSpeedMPerMin, SURFACE_SPEED[unit])} at the outside of the friction surface. About{' '}
        <HowFigure how={plan.answers.finishingTimeS}>{cuttingTime(plan.timeS)}</HowFigure> of cutting. Finish
        from feed and nose radius: Ra about{' '}
        <HowFigure how={plan.answers.finishRaUm}>{printAs(plan.finishRaUm, ROUGHNESS[unit])}</HowFigure>, Rt{' '}
        <HowFigure how={plan.answers.finishRtUm}>{printAs(plan.finishRtUm, ROUGHNESS[unit])}</HowFigure>.
      </p>
      {lathe && (
        <p>
          Lathe: {lathe.lathe.name}, the catalog’s revision {lathe.revision}.
        </p>
      )}
      <PassTable plan={plan} unit={unit} />
      {plan.warnings.map((warning) => (
        <p class="note">{warning.text}</p>
      ))}
      <Caution kind="lathe" />
    </section>
  );
}

function PassTable({ plan, unit }: { plan: CutPlanAnswer; unit: LengthUnit }) {
  const figures = passFigures(plan.passes, unit);
  return (
    <section class="table-box" tabindex={0} aria-label="The passes">
      <table class="figures">
        <caption>
          From first touch at the highest point, in {UNIT_WORD[unit]}. After every pass, look and measure
          again.
        </caption>
        <thead>
          <tr>
            <th scope="col">Pass</th>
            <th scope="col">Depth of cut</th>
            <th scope="col">Total</th>
            <th scope="col">Feed per turn</th>
            <th scope="col">Time</th>
          </tr>
        </thead>
        <tbody>
          {plan.passes.map((pass, i) => (
            <tr>
              <th scope="row">
                {i + 1} {KIND[pass.kind]}
              </th>
              <td>{figures[i]!.depth}</td>
              <td>{figures[i]!.total}</td>
              <td>{lengthFigure(pass.feedMm, unit)}</td>
              <td>{cuttingTime(pass.timeS)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
