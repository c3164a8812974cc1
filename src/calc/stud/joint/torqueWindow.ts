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
 *   r bolt circle radius [mm] · F_Z embedding loss [N] · S_p proof stress [MPa] · A_t stress area [mm²]
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
  const below = enough !== null && torqueNm < enough.value - 1e-9;
  const above = most !== null && torqueNm > most.value + 1e-9;
  const known = enough !== null && most !== null;
  return {
    finding: {
      id: 'joint-torque',
      title: 'Tightening torque',
      status: below || above ? 'fail' : known ? 'pass' : 'not-checked',
      value: torqueNm,
      limit: below ? enough.value : above ? most.value : null,
      unit: 'N·m',
      sentence: `${inWords(enough?.value ?? null, most?.value ?? null, Nm)} ${Nm(torqueNm)} is ${placed(below, above, known)}.`,
      source: 'advice: what holds at the least preload, and 75 % of proof at the most',
      answer: enough ?? most,
    },
    field: 'torqueNm',
    missMm: null,
    short: below ? 'the torque is too little to hold' : 'the torque is too much for the stud',
    mend: '',
    counts: false,
    answers: {
      ...(enough ? { torqueEnoughNm: enough } : {}),
      ...(most ? { torqueMostNm: most } : {}),
    },
  };
}

function inWords(enough: number | null, most: number | null, Nm: (x: number) => string): string {
  if (enough === null && most === null) return 'The torque range can’t be worked out.';
  if (enough === null) return `The stud should get at most ${Nm(most!)}; the least that holds is not known.`;
  if (most === null) return `At least ${Nm(enough)} holds; the most for the stud is not known.`;
  return enough > most
    ? `No torque works: at least ${Nm(enough)} holds, but the stud should get at most ${Nm(most)}. Use more or stronger studs.`
    : `From ${Nm(enough)} to ${Nm(most)} holds and is not too much for the stud.`;
}

function placed(below: boolean, above: boolean, known: boolean): string {
  if (below && above) return 'too little to hold and too much for the stud';
  if (below) return 'too little to hold';
  if (above) return 'too much for the stud';
  return known ? 'in that range' : 'not checked against both';
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
