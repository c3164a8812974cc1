import { type LengthUnit, printLength } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';

/**
 * Is the pull-forward gap what this flexplate wants?   least ≤ g ≤ most
 *   the stack's own figures, the maker's, else the shop's; without any there is no finding
 *   Valid: g measured with the converter fully back on the pump.   Source: the maker's figure, else the shop's limit
 *   Example: g 5.0, wanted 3.175 to 4.7625 → caution, 0.24 mm over (calc/stud/reach/gapWanted.test.ts)
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
        sentence: `The pull-forward gap is ${mm(g)}; ${wanted} is wanted.${off ? ' Measure yours again, and use shims under every pad.' : ''}`,
        source: own ? 'the maker’s figure for this flexplate' : 'the shop’s limit',
        answer: null,
      },
      field: 'pullForwardMm',
      missMm: Math.max(low, high),
      short: 'the pull-forward gap is not what is wanted',
      mend: '',
      counts: true,
      answers: {},
    },
  ];
}
