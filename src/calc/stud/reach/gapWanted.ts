import { type LengthUnit, printLength } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

/** A shim under a pad takes its thickness from the gap. */
const TOO_LARGE = ' Measure yours again, then put the same shim under every pad.';
const TOO_SMALL =
  ' Measure yours again. Shims only make it smaller: find what keeps the converter off the pump.';

/**
 * Is the pull-forward gap within its limits?   least ≤ g ≤ most
 *   the stack's own figures, the maker's, else the shop's; without any there is no finding
 *   Valid: g measured with the converter fully back on the pump.   Source: the maker's figure, else the shop's limit
 *   Example: g 5.0, allowed 3.175 to 4.7625 → caution, 0.24 mm over (calc/stud/reach/gapWanted.test.ts)
 */
export function gapWanted({ input }: Pick<StudNumbers, 'input'>, unit: LengthUnit): Checked[] {
  const { stack, criteria, pullForwardMm: g } = input;
  const own = stack.leastPullForwardMm != null || stack.mostPullForwardMm != null;
  const { leastPullForwardMm: least = null, mostPullForwardMm: most = null } = own ? stack : criteria;
  if (g === null || (least === null && most === null)) return [];
  const low = least !== null && g < least - 1e-9 ? least - g : 0;
  const high = most !== null && g > most + 1e-9 ? g - most : 0;
  const off = low > 0 || high > 0;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const wanted =
    least === null
      ? `at most ${mm(most!)}`
      : most === null
        ? `at least ${mm(least)}`
        : `${mm(least)} to ${mm(most)}`;
  return [
    {
      finding: {
        id: 'pull-forward',
        title: 'Pull-forward gap',
        status: off ? 'caution' : 'pass',
        value: g,
        limit: high > 0 ? most : (least ?? most),
        unit: 'mm',
        sentence: `The pull-forward gap is ${mm(g)}; ${wanted} is allowed.${low > 0 ? TOO_SMALL : off ? TOO_LARGE : ''}`,
        source: own ? 'the maker’s figure for this flexplate' : 'the shop’s limit',
        answer: null,
      },
      field: 'pullForwardMm',
      missMm: Math.max(low, high),
      short: 'the pull-forward gap is outside its limits',
      mend: '',
      counts: true,
      answers: {},
    },
  ];
}
