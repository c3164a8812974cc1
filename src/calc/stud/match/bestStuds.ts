import type { LengthUnit } from '../../../../shared/words/print.ts';
import type { NamedStud, Stud, StudMatch } from '../../../../shared/words/stud/stud.ts';
import { fitOf } from '../checkStud.ts';
import { sameThread } from '../numbers/studNumbers.ts';
import { byRank, isFlawless, matched, type Rank, rankOf, worstMargin } from './bestFirst.ts';
import type { MatchStudsInput } from './matchStuds.ts';
import { asksOf, type StackAsks } from './studWanted.ts';

/** Of those that surely do not fit, how many of the nearest are checked for each that is wanted. */
const NEAREST = 3;
const DUST = 1e-6;

/**
 * The first of `matchStuds`, without checking every stud in full: those that fit are exactly its first. Where they are
 * fewer than `most`, the nearest misses by length follow them, of those whose thread goes on the nut first.
 *
 * Studs are looked at in the order of the margin that is left with every size at its worst, which needs no check. Of two
 * studs without a failure or a caution the one with more margin goes first, so that once `most` such are found none of
 * the rest can go before them. A stud whose sizes as drawn already miss, or whose thread is another, is no match
 * whatever else is checked: it is looked at last.
 *
 *   Valid: studs whose figures can be (studFaults); one that cannot is refused only where it comes to be checked.
 *   Source: this program's own rule
 *   Throws: a Refusal, as checkStud.
 *   Example: of a thousand studs the same first ones as matchStuds (tests/laws/studs.test.ts)
 */
export function bestStuds(
  { studs, ...surroundings }: MatchStudsInput,
  most: number,
  unit: LengthUnit = 'mm',
): StudMatch[] {
  const asks = asksOf(surroundings);
  const fitAt = (at: number) => fitOf({ ...surroundings, stud: studs[at]!.stud }, unit);
  // Only what the order goes by is kept of each: hundreds of fits with their workings are more than they cost to redo.
  const found: { at: number; rank: Rank }[] = [];
  let [flawless, fitting, missing] = [0, 0, 0];
  for (const { at, sureNo } of inOrder(studs, asks)) {
    if (flawless >= most) break;
    if (sureNo && (fitting >= most || missing >= NEAREST * most)) break;
    const fit = fitAt(at);
    const rank = rankOf(fit);
    found.push({ at, rank });
    if (fit.judged.fits === 'no') missing++;
    else fitting++;
    if (isFlawless(rank)) flawless++;
  }
  const first = found.sort((a, b) => byRank(a.rank, b.rank)).slice(0, most);
  return matched(
    first.map(({ at }) => ({ id: studs[at]!.id, fit: fitAt(at) })),
    unit,
  );
}

/** Those that may fit first, then sure misses, then other threads; each by margin, then the shorter first. */
function inOrder(studs: readonly NamedStud[], asks: StackAsks) {
  const nutThread = asks.surroundings.nut?.thread ?? null;
  return studs
    .map(({ stud }, at) => {
      const goesOn = nutThread === null || sameThread(stud.thread, nutThread);
      const misses = drawnMargin(asks, stud) < -DUST;
      return {
        at,
        margin: worstMargin(asks, stud),
        lengthMm: stud.projectionMm,
        rank: goesOn ? (misses ? 1 : 0) : 2,
        sureNo: misses || !goesOn,
      };
    })
    .sort((a, b) => a.rank - b.rank || b.margin - a.margin || a.lengthMm - b.lengthMm || a.at - b.at);
}

/** What the sizes as drawn leave over where a miss always fails: the nut’s thread, the stud end’s room, its reach. */
function drawnMargin({ surroundings, gripMm, stackMm }: StackAsks, stud: Stud): number {
  const { stack, nut, pullForwardMm: g } = surroundings;
  const any = Number.POSITIVE_INFINITY;
  return Math.min(
    nut ? gripMm + nut.countersinkMm - stud.threadStartMm : any,
    nut ? stud.threadEndMm - (gripMm + nut.heightMm - nut.countersinkMm) : any,
    stack.tipRoomMm === null ? any : stack.tipRoomMm - stud.projectionMm,
    g === null ? any : stud.projectionMm - stackMm.nominal - g,
  );
}
