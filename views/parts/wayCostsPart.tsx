import type { DecisionKind } from '../../shared/words/job.ts';
import { printShare } from '../../shared/words/print.ts';
import type { WayCost } from '../../shared/words/trends/costs.ts';
import { tooFew } from '../../shared/words/trends/trendsShown.ts';

const WAY_WORD: Readonly<Record<DecisionKind, string>> = {
  face: 'Face it',
  'face-and-ring': 'Ring, then face',
  replace: 'A new cover',
};

const money = (amount: number) => `$${amount.toLocaleString('en-US', { maximumFractionDigits: 0 })}`;

/** What each way is expected to cost, a comeback counted by its chance: beside the verdict, as advice. */
export function WayCostsPart({ costs }: { readonly costs: readonly WayCost[] }) {
  if (costs.length === 0) return null;
  return (
    <section id="way-costs">
      <h3>What each way is expected to cost</h3>
      <section class="scroll" tabindex={0} aria-label="What each way is expected to cost">
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">Way</th>
              <th scope="col">Here</th>
              <th scope="col">With comebacks, as the shop judges</th>
              <th scope="col">With comebacks, as its jobs show</th>
            </tr>
          </thead>
          <tbody>
            {costs.map(({ way, cost, judged, shown }) => (
              <tr>
                <th scope="row">{WAY_WORD[way]}</th>
                <td>{money(cost)}</td>
                <td>{judged && `${money(judged.expected)}, at ${printShare(judged.chance)}`}</td>
                <td>
                  {shown &&
                    `${money(shown.low)} to ${money(shown.high)}, ${shown.back} of ${shown.released} came back${tooFew(shown.interval) ? ': too few to tell' : ''}`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p class="hint">
        Advice: it counts money alone, and changes no verdict. From{' '}
        <a href="/criteria/costs">the shop’s costs</a>.{' '}
        <a href="/how/judging/expectedCost">How it is worked out</a>
      </p>
    </section>
  );
}
