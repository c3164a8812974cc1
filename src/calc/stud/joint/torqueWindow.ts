import type { Answer, Warning } from '../../../../shared/words/answer.ts';
import { type LengthUnit, printNumber, printTorque } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';
import { MOST_OF_PROOF } from './proofShare.ts';

const SOURCE = 'T = K d F turned round: Shigley, 9th ed., eq. 8-27';
const ADVICE: Warning = {
  code: 'makers-torque-first',
  text: 'Advice. The vehicle maker’s torque comes first.',
};

/**
 * The torque that is enough to hold, and the torque that is too much for the stud.
 *   enough = K d (M/(µ N r) + F_Z)/(1 − scatter) + T_p      too much = K d · 0.75 S_p A_t/(1 + scatter) + T_p
 *   K nut factor [-] · d basic major diameter [mm] · M engine torque times service factor [N·m] · µ friction [-] · N studs
 *   r stud circle radius [mm] · F_Z embedding loss [N] · S_p proof stress [MPa] · A_t stress area [mm²]
 *   T_p torque that only turns a prevailing-torque nut [N·m]
 *   Valid: as preload.ts, slipTorque.ts and proofShare.ts, whose limits these are; either end is null where its limit is.
 *   Source: Shigley's Mechanical Engineering Design, 9th ed., eq. 8-27, turned round; advice, the maker's torque is first
 *   Example: the joint of the JSON interface, engine 350 N·m twice → 32.4 to 38.0 N·m (calc/stud/joint/torqueWindow.test.ts)
 */
export function torqueWindow(joint: {
  torqueNm: number;
  nutFactor: number;
  diameterMm: number;
  scatter: number;
  friction: number;
  studCount: number;
  radiusMm: number;
  askedNm: number;
  embeddingLossN: number | null;
  proofMPa: number | null;
  areaMm2: number;
  prevailingNm: number;
  unit: LengthUnit;
}): Checked {
  const enough = enoughTorque(joint);
  const most = mostTorque(joint);
  const { torqueNm } = joint;
  const Nm = (x: number) => printTorque(x, joint.unit, 1);
  const none = enough !== null && most !== null && enough.value > most.value;
  const below = enough !== null && torqueNm < enough.value - 1e-9;
  const above = most !== null && torqueNm > most.value + 1e-9;
  const known = enough !== null && most !== null;
  return {
    finding: {
      id: 'joint-torque',
      title: 'Torque: enough, and not too much',
      status: below || above ? 'fail' : known ? 'pass' : 'not-checked',
      value: torqueNm,
      limit: below ? enough.value : above ? most.value : null,
      unit: 'N·m',
      sentence: `${inWords(enough?.value ?? null, most?.value ?? null, none, Nm)} ${Nm(torqueNm)} is ${
        below ? 'not enough' : above ? 'too much' : known ? 'between them' : 'not known to be between them'
      }.`,
      source: 'advice: what holds at the least preload, and 75 % of proof at the most',
      answer: enough ?? most,
    },
    field: 'torqueNm',
    missMm: null,
    short: below ? 'the torque is not enough' : 'the torque is too much',
    mend: '',
    counts: false,
    answers: {
      ...(enough ? { torqueEnoughNm: enough } : {}),
      ...(most ? { torqueMostNm: most } : {}),
    },
  };
}

function inWords(
  enough: number | null,
  most: number | null,
  none: boolean,
  Nm: (x: number) => string,
): string {
  if (enough === null && most === null) return 'Neither what is enough nor what is too much is known.';
  if (enough === null) return `More than ${Nm(most!)} is too much for the stud; what is enough is not known.`;
  if (most === null) return `From ${Nm(enough)} it is enough; what is too much for the stud is not known.`;
  return none
    ? `No torque does both: ${Nm(enough)} would be enough, and ${Nm(most)} is the most the stud should have. More studs, more friction or a stronger stud would open a window.`
    : `From ${Nm(enough)} it is enough, and up to ${Nm(most)} it is not too much.`;
}

type Known = Answer & { readonly value: number };

function enoughTorque(joint: Parameters<typeof torqueWindow>[0]): Known | null {
  const { nutFactor: K, diameterMm: d, friction, studCount, radiusMm, askedNm, embeddingLossN: FZ } = joint;
  if (FZ === null) return null;
  const needN = (1000 * askedNm) / (friction * studCount * radiusMm);
  const value = (K * d * (needN + FZ)) / (1 - joint.scatter) / 1000 + joint.prevailingNm;
  const n = (x: number) => printNumber(x, 0);
  return {
    symbol: 'T_enough',
    value,
    unit: 'N·m',
    how: [
      {
        formula: 'F_needed = M/(µ N r)',
        numbers: `F_needed = ${n(askedNm)} N·m/(${friction} · ${studCount} · ${printNumber(radiusMm, 1)} mm) = ${n(needN)} N`,
        source: 'first principles',
      },
      {
        formula: 'T_enough = K d (F_needed + F_Z)/(1 − scatter) + T_p',
        numbers: `T_enough = ${K} · ${printNumber(d, 3)} mm · (${n(needN)} + ${n(FZ)}) N/${printNumber(1 - joint.scatter, 2)} + ${printNumber(joint.prevailingNm, 1)} = ${printNumber(value, 1)} N·m`,
        source: SOURCE,
      },
    ],
    warnings: [ADVICE],
  };
}

function mostTorque(joint: Parameters<typeof torqueWindow>[0]): Known | null {
  const { nutFactor: K, diameterMm: d, proofMPa, areaMm2 } = joint;
  if (proofMPa === null) return null;
  const mostN = MOST_OF_PROOF * proofMPa * areaMm2;
  const value = (K * d * mostN) / (1 + joint.scatter) / 1000 + joint.prevailingNm;
  const n = (x: number) => printNumber(x, 0);
  return {
    symbol: 'T_most',
    value,
    unit: 'N·m',
    how: [
      {
        formula: 'T_most = K d · 0.75 S_p A_t/(1 + scatter) + T_p',
        numbers: `T_most = ${K} · ${printNumber(d, 3)} mm · ${n(mostN)} N/${printNumber(1 + joint.scatter, 2)} + ${printNumber(joint.prevailingNm, 1)} = ${printNumber(value, 1)} N·m`,
        source: SOURCE,
      },
    ],
    warnings: [ADVICE],
  };
}
