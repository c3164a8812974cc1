import type { CoverCheck } from '../../../shared/words/cover.ts';
import type { DecisionKind, Job } from '../../../shared/words/job.ts';
import type { Costs, WayCost } from '../../../shared/words/trends/costs.ts';
import { expectedCost } from '../../calc/judge/expectedCost.ts';
import { wilsonInterval } from '../../calc/measure/wilsonInterval.ts';
import type { Db } from '../../records/database/database.ts';
import { costHistory } from '../../records/trends/costs.ts';
import { releasedByDecision } from '../../records/trends/trendFigures.ts';

/**
 * What each way would cost on a cover, as advice; none where the cover can only be replaced, or nothing is entered.
 * A ring is set beside only where its cover type allows one.
 */
export async function wayCosts(db: Db, job: Job, check: CoverCheck | null): Promise<readonly WayCost[]> {
  if (check === null || check.verdict === 'replace') return [];
  const costs = (await costHistory(db)).at(-1)?.body;
  if (costs === undefined || costs.comeback === null) return [];
  const history = await releasedByDecision(db);
  const ringAllowed = job.sections.received?.body.family.ringAllowed ?? false;
  const ways: readonly DecisionKind[] = ringAllowed
    ? ['face', 'face-and-ring', 'replace']
    : ['face', 'replace'];
  return ways.flatMap((way) => wayCost(way, costs, costs.comeback!, history));
}

function wayCost(
  way: DecisionKind,
  costs: Costs,
  comeback: number,
  history: Awaited<ReturnType<typeof releasedByDecision>>,
): readonly WayCost[] {
  const cost = costOf(way, costs);
  if (cost === null) return [];
  const chance = { face: costs.facedBack, 'face-and-ring': costs.ringedBack, replace: costs.newBack }[way];
  const { released = 0, back = 0 } = history.find(({ decision }) => decision === way) ?? {};
  const interval = released === 0 ? null : wilsonInterval(back, released);
  const expected = (share: number) => expectedCost({ cost, comeback, chance: share });
  return [
    {
      way,
      cost,
      judged: chance === null ? null : { chance, expected: expected(chance) },
      shown: interval && {
        released,
        back,
        interval,
        low: expected(interval.low),
        high: expected(interval.high),
      },
    },
  ];
}

function costOf(way: DecisionKind, { facing, ring, newCover }: Costs): number | null {
  if (way === 'replace') return newCover;
  if (way === 'face') return facing;
  return facing === null || ring === null ? null : facing + ring;
}
