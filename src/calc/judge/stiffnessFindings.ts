import type {
  Bending,
  BendingBase,
  BendingCase,
  PistonRange,
  RingTold,
} from '../../../shared/words/bending/bending.ts';
import { RING_WIDENED, ringNotJoined } from '../../../shared/words/bending/solid.ts';
import { thanNew } from '../../../shared/words/bending/thanNew.ts';
import { lowerFirst } from '../../../shared/words/fields/field.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, printAs, printLength, STRESS } from '../../../shared/words/print.ts';

const SLACK = 1e-9;
const SOURCE = 'the shop’s limits; thin-plate model, advice that the shop made a limit';

interface Judged extends Pick<Bending, 'cases' | 'welded'> {
  readonly ring?: Pick<RingTold, 'size'> | null;
  readonly base: Pick<BendingBase, 'wallMm' | 'yieldMPa'>;
}

interface Against extends Pick<Judged, 'base'> {
  readonly fresh: BendingCase;
  readonly limits: Bending['limits'];
  readonly unit: LengthUnit;
}

interface Held {
  readonly what: string;
  readonly ratio: number;
  readonly limit: number;
}

/**
 * The shop’s limits on bending as findings: the cover as the cut leaves it, and, where a ring may be welded on, the same
 * with the ring taken as unbonded, its worse bound, widened by what a solid model shows of cut over new. Under both
 * bounds of the piston the limit must be kept, so the larger ratio judges. A ring that is not recorded as welded to the
 * pads all around gets no credit: the cover is judged without it, and the ring is not checked.
 * Beyond yield, or where the center moves more than half the wall, the numbers are not to be relied on: they neither pass
 * nor fail a cover, and a person judges.
 *
 * Valid: as the bending model.   Source: rows 7 and 8 of the table of verdicts (this program’s own rule)
 * Example: tests/calc/judge/stiffnessFindings.test.ts
 */
export function stiffnessFindings({
  limits,
  bending,
  why,
  ringAllowed,
  unit,
}: {
  readonly limits: Bending['limits'];
  readonly bending: Judged | null;
  /** Why there is no bending to judge. */
  readonly why: string | null;
  readonly ringAllowed: boolean;
  readonly unit: LengthUnit;
}): Finding[] {
  if (limits.peakOverNew === null && limits.rippleOverNew === null) return [];
  const found = (id: BendingCase['id']) => bending?.cases.find((one) => one.id === id) ?? null;
  const fresh = found('new');
  const after = found('after');
  if (bending === null || fresh === null || after === null) {
    return [
      finding({
        id: 'stiffness',
        title: 'Stiffness',
        status: 'not-checked',
        sentence: `The shop’s bending limit is not checked. ${why ?? 'Bending was not worked out.'}`,
      }),
    ];
  }
  const { welded, base, ring = null } = bending;
  const against = { fresh, limits, base, unit };
  const bare = judge(
    'stiffness',
    after.ring === null ? 'Stiffness' : 'Stiffness with its stiffening ring',
    after,
    against,
  );
  if (ring !== null && ring.size.joinedToPads !== true && (welded || ringAllowed)) {
    const sentence = ringNotJoined(ring.size.joinedToPads ?? null);
    const unchecked = finding({
      id: 'stiffness-with-ring',
      title: 'Stiffness with a stiffening ring',
      status: 'not-checked',
      sentence,
    });
    return [bare.status === 'fail' ? { ...bare, sentence: `${bare.sentence} ${sentence}` } : bare, unchecked];
  }
  const ringed = found('ring-unbonded');
  if (!ringAllowed || ringed === null || welded) return [bare];
  const told = judge('stiffness-with-ring', 'Stiffness with a stiffening ring', ringed, against);
  if (bare.status !== 'fail') return [bare, told];
  // It decides the verdict then, and has to say that the bare cover fails.
  return [bare, { ...told, sentence: `Without a ring, ${lowerFirst(bare.sentence)} ${told.sentence}` }];
}

function judge(
  id: Finding['id'],
  title: string,
  one: BendingCase,
  { fresh, limits, base, unit }: Against,
): Finding {
  const held: Held[] = [];
  const hold = (
    what: 'peak' | 'ripple',
    of: (one: BendingCase) => PistonRange,
    limit: number | null,
    name: string,
  ) => {
    if (limit === null) return;
    const [is, was] = [of(one), of(fresh)];
    const widened = one.ring === null ? 1 : RING_WIDENED[what];
    const ratio = widened * Math.max(is.rigid / was.rigid, is.conforming / was.conforming);
    held.push({ what: name, ratio, limit });
  };
  hold('peak', ({ peakOverMean }) => peakOverMean, limits.peakOverNew, 'peak lining pressure');
  hold('ripple', ({ rippleMm }) => rippleMm, limits.rippleOverNew, 'friction-surface waviness');
  const over = ({ ratio, limit }: Held) => ratio > limit + SLACK;
  const worst = held.reduce((a, b) => (b.ratio / b.limit > a.ratio / a.limit ? b : a));
  const told = held.map(
    (each) =>
      `${each.what} is ${printAgainstLimit(each)}, ${over(each) ? 'over' : 'within'} the limit of ${printLimit(each.limit)}`,
  );
  const fails = held.some(over);
  const caveat = notReliedOn(one, base, unit) ?? notReliedOn(fresh, base, unit);
  const how = one.ring === null ? 'After the cut' : 'With the ring at its least stiff';
  return finding({
    id,
    title,
    status: caveat !== null ? 'caution' : fails ? 'fail' : 'pass',
    value: worst.ratio,
    limit: worst.limit,
    unit: '× new',
    sentence: `${how}, ${told.map((one, i) => (i === 0 ? one : one[0]!.toUpperCase() + one.slice(1))).join('. ')}.${caveat === null ? '' : ` ${caveat}`}`,
  });
}

/** Why the numbers of a case are not to be relied on, and what to do then; null where they are. */
function notReliedOn(one: BendingCase, base: Judged['base'], unit: LengthUnit): string | null {
  const most = ({ rigid, conforming }: PistonRange) => Math.max(Math.abs(rigid), Math.abs(conforming));
  const why: string[] = [];
  if (one.beyondYield) {
    why.push(
      `the greatest stress reaches ${printAs(most(one.greatestStressMPa), STRESS[unit])}, above the yield strength of ${printAs(base.yieldMPa ?? 0, STRESS[unit])}`,
    );
  }
  if (one.largeDeflection) {
    const wallMm = Math.min(base.wallMm, one.trackWallMm);
    why.push(
      `the center moves ${printLength(most(one.bossDeflectionMm), unit, 'coarse')}, more than half the wall of ${printLength(wallMm, unit, 'coarse')}`,
    );
  }
  if (why.length === 0) return null;
  const whose = one.id === 'new' ? 'of the new cover ' : '';
  return `Do not rely on these numbers: ${whose}${why.join(', and ')}. They decide nothing. Check the cover type’s figures and the shop limits, and judge the cover yourself.`;
}

/** `10 %`: a limit is never less than new. */
function printLimit(limit: number): string {
  return `${Number((100 * (limit - 1)).toFixed(2))} %`;
}

/** Enough digits that a ratio past its limit never reads as the limit itself. */
function printAgainstLimit({ ratio, limit }: Held): string {
  const wanted = 100 * (limit - 1);
  const decimals = [0, 1, 2].find((d) => Math.abs(Number((100 * (ratio - 1)).toFixed(d)) - wanted) > 1e-9);
  return thanNew(ratio, decimals ?? 0);
}

function finding(told: Pick<Finding, 'id' | 'title' | 'status' | 'sentence'> & Partial<Finding>): Finding {
  return { value: null, limit: null, unit: '', source: SOURCE, answer: null, ...told };
}
