import { type LengthUnit, printLength, printTorque } from '../../../shared/words/print.ts';
import type { CounterSlip } from '../../../shared/words/stud/slip.ts';

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

function torqueSaid({ input: { joint }, check, torqueFrom }: CounterSlip, unit: LengthUnit): string {
  if (joint === null) return 'Look up the vehicle maker’s torque.';
  const torque = printTorque(joint.torqueNm, unit)
    .replace('lb·ft', 'pound-feet')
    .replace('N·m', 'newton-meters');
  const against = check.holds === 'no' ? `; ${torque} does not hold by our calculation` : '';
  if (torqueFrom === 'maker')
    return check.holds === 'no'
      ? `The vehicle maker’s torque is ${torque}${against.replace(`; ${torque}`, '; it')}. Ask before you close it up.`
      : `Tighten to ${torque}, the vehicle maker’s figure.`;
  return `Look up the vehicle maker’s torque${against}.`;
}
