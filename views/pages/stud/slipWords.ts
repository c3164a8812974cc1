import { type LengthUnit, printLength, printTorque } from '../../../shared/words/print.ts';
import type { CounterSlip } from '../../../shared/words/stud/slip.ts';
import { slips } from '../../../shared/words/verdicts.ts';

const IN_WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const UNIT_SPOKEN: Readonly<Record<LengthUnit, string>> = { mm: 'millimeters', in: 'inch' };

/** What to say on the phone. A torque worked out here is never said as one to use. */
export function readToCaller(slip: CounterSlip, unit: LengthUnit): string {
  const { stack, stud, input, check, gapMeasured } = slip;
  const { count } = slip.kit;
  const gap = input.pullForwardMm;
  const said = (mm: number) => printLength(mm, unit, 'coarse').replace(/ \w+$/, ` ${UNIT_SPOKEN[unit]}`);
  const many = count === null ? '' : `${IN_WORDS[count] ?? count} `;
  const name = stud.name.charAt(0).toLowerCase() + stud.name.slice(1);
  const what =
    check.fits === 'no'
      ? `Don’t use the ${name}: ${check.because}`
      : `Use ${many}of the ${name}${nutSaid(slip)}.${check.fits === 'with-care' ? ` Take care: ${check.because}` : ''}`;
  return [
    `You have a ${stack.stack.style} flexplate${gap === null || !gapMeasured ? '.' : ` and a pull-forward gap of ${said(gap)}.`}`,
    ...(gapMeasured
      ? []
      : ['Measure your pull-forward gap with the converter fully back before you count on this.']),
    what,
    torqueSaid(slip, unit),
  ].join(' ');
}

function nutSaid({ stack, input: { nut } }: CounterSlip): string {
  if (nut === null) return '';
  const thread = (nut.thread?.designation ?? stack.nutThreadTyped ?? '').replace(/-(2B|3B|6H)$/, '');
  return `, with ${thread} nuts`;
}

/** The vehicle maker's torque, where the shop has it with its source. */
export function makerTorqueOf({
  stack,
}: Pick<CounterSlip, 'stack'>): { torqueNm: number; source: string } | null {
  const { makerTorqueNm: torqueNm, makerTorqueSource: source } = stack;
  return torqueNm == null || source == null ? null : { torqueNm, source };
}

/** Two readings of one torque, in the one unit or the other. */
const SAME_TORQUE = 0.01;

/** Only the vehicle maker's torque is said to be used, with its source. */
function torqueSaid(slip: CounterSlip, unit: LengthUnit): string {
  const { input, check, torqueFrom } = slip;
  const said = (nm: number) =>
    printTorque(nm, unit).replace('lb·ft', 'pound-feet').replace('N·m', 'newton-meters');
  const maker = makerTorqueOf(slip);
  const asked = input.joint?.torqueNm ?? null;
  const failed = asked !== null && check.holds === 'no' ? asked : null;
  const fault = slips(check) ? 'does not hold' : 'is too much for the stud';
  if (maker === null) {
    const look = 'Look up the vehicle maker’s torque';
    if (failed !== null) return `${look}; ${said(failed)} ${fault} by our calculation.`;
    return torqueFrom === 'maker' && asked !== null
      ? `${look}: ${said(asked)} was given as the vehicle maker’s, but we have no source for it.`
      : `${look}.`;
  }
  const same = asked !== null && Math.abs(asked - maker.torqueNm) <= SAME_TORQUE * maker.torqueNm;
  const theirs = `The vehicle maker’s torque is ${said(maker.torqueNm)}, by ${maker.source}`;
  if (failed !== null && same)
    return `${theirs}; it ${fault} by our calculation. Ask before you close it up.`;
  return torqueFrom === 'maker' && asked !== null && !same
    ? `${theirs}; ${said(asked)} was also given as the vehicle maker’s. Look it up before you tighten.`
    : `${theirs}.`;
}
