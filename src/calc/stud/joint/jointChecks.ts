import type { Answer } from '../../../../shared/words/answer.ts';
import { type LengthUnit, listInWords, printTorque } from '../../../../shared/words/print.ts';
import type { Holds, Joint, StudCheck } from '../../../../shared/words/stud/stud.ts';
import { nutProof } from '../engaged/nutProof.ts';
import type { Checked } from '../numbers/checked.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';
import { bearingPressure } from './bearingPressure.ts';
import { clampedResilience } from './clampedResilience.ts';
import { embeddingLoss } from './embeddingLoss.ts';
import { preload } from './preload.ts';
import { proofShare } from './proofShare.ts';
import { reusedParts } from './reusedParts.ts';
import { slipTorque } from './slipTorque.ts';
import { studResilience } from './studResilience.ts';
import { studShear } from './studShear.ts';
import { torqueWindow } from './torqueWindow.ts';

/** Young's modulus of steel, used where the joint gives none. */
const STEEL_MPA = 205_000;

export interface JointChecks {
  readonly joint: StudCheck['joint'];
  readonly holds: Holds;
  readonly checks: readonly Checked[];
}

/** Does the tightened joint carry the engine's torque by friction, without overloading the stud? Judged on the least. */
export function jointChecks(numbers: StudNumbers, unit: LengthUnit): JointChecks {
  const { joint, stud, nut } = numbers.input;
  if (!joint) return { joint: null, holds: 'not-checked', checks: [noJoint()] };
  const areaMm2 = numbers.thread.tensileStressAreaMm2;
  const shared = { ...joint, prevailingNm: joint.prevailingNm ?? 0, diameterMm: numbers.diameterMm };
  const radiusMm = joint.studCircleDiameterMm / 2;
  const F = preload(shared);
  const loss = embedding(numbers, joint);
  const FZ = loss.answer?.value ?? null;
  const least = FZ === null ? null : Math.max(0, F.lowN - FZ);
  const slipAt = (preloadN: number) => slipTorque({ ...joint, preloadN, radiusMm });
  const nominalSlip = FZ === null ? null : slipAt(F.nominalN - FZ);
  const leastSlip = least === null ? null : slipAt(least);
  const lockingUnknown = (nut?.prevailing ?? false) && joint.prevailingNm == null;
  const proof = proofShare({ mostN: F.highN, proofMPa: stud.proofMPa, tensileMPa: stud.tensileMPa, areaMm2 });
  const slip = slipFinding(joint, nominalSlip, leastSlip, loss.missing, lockingUnknown, unit);
  const torque = torqueWindow({
    ...shared,
    unit,
    radiusMm,
    askedNm: joint.engineTorqueNm * joint.serviceFactor,
    embeddingLossN: FZ,
    proofMPa: stud.proofMPa,
    areaMm2,
  });
  const worked = { preloadN: F.answer, ...(loss.answer ? { embeddingLossN: loss.answer } : {}) };
  const statuses = [proof.finding.status, slip.finding.status];
  return {
    joint: {
      preloadN: { nominal: F.nominalN, least, most: F.highN },
      embeddingLossN: FZ,
      proofShare: proof.share,
      slipTorqueNm: { nominal: nominalSlip?.value ?? null, least: leastSlip?.value ?? null },
    },
    holds: statuses.includes('fail') ? 'no' : statuses.includes('not-checked') ? 'not-checked' : 'yes',
    checks: [
      { ...proof, answers: { ...proof.answers, ...worked } },
      slip,
      torque,
      ...(slip.finding.status === 'fail' ? [shearAfterSlip(numbers, joint, unit)] : []),
      ...underNut(numbers, F.highN, unit),
      ...reusedParts(joint, nut, unit),
    ],
  };
}

/** What the greatest preload does to the nut, and to the layer under it, where they are known. */
function underNut(
  { input: { nut, stack }, thread }: StudNumbers,
  mostN: number,
  unit: LengthUnit,
): Checked[] {
  if (!nut) return [];
  const { proofMPa, bearingOuterDiameterMm } = nut;
  const { holeDiameterMm } = stack.layers.at(-1)!;
  const proof =
    proofMPa === null
      ? []
      : [nutProof({ mostN, nutProofMPa: proofMPa, areaMm2: thread.tensileStressAreaMm2 }, unit)];
  if (
    bearingOuterDiameterMm === null ||
    holeDiameterMm === null ||
    bearingOuterDiameterMm <= holeDiameterMm
  ) {
    return proof;
  }
  return [...proof, bearingPressure({ mostN, bearingOuterDiameterMm, holeDiameterMm }, unit)];
}

function embedding(
  numbers: StudNumbers,
  joint: Joint,
): { readonly answer: (Answer & { value: number }) | null; readonly missing: string } {
  const { stud, nut, stack } = numbers.input;
  const without = (missing: string) => ({ answer: null, missing });
  const dW = nut?.bearingOuterDiameterMm ?? null;
  if (!nut) return without('the nut');
  if (dW === null) return without('the nut’s washer-face diameter');
  const unmeasured = stack.layers.filter((layer) => layer.holeDiameterMm === null);
  if (unmeasured.length > 0) {
    return without(`the hole diameter of ${listInWords(unmeasured.map((layer) => `the ${layer.name}`))}`);
  }
  const youngMPa = joint.youngMPa ?? STEEL_MPA;
  const d = numbers.diameterMm;
  const S = studResilience({
    diameterMm: d,
    minorMm: d - (stud.thread.system === 'metric' ? 1.226869 : 1.19078) * numbers.pitchMm,
    threadStartMm: stud.threadStartMm,
    gripMm: numbers.gripMm,
    youngMPa,
  });
  const layers = [...stack.layers]
    .reverse()
    .map((layer) => ({ thicknessMm: layer.thicknessMm, holeDiameterMm: layer.holeDiameterMm! }));
  const washer =
    nut.washerMm > 0 ? [{ thicknessMm: nut.washerMm, holeDiameterMm: layers[0]!.holeDiameterMm }] : [];
  const P = clampedResilience({ bearingOuterDiameterMm: dW, slices: [...washer, ...layers], youngMPa });
  if (!P) return without('a nut that covers the hole');
  const interfaces = stack.layers.length + washer.length;
  const answer = embeddingLoss({
    interfaces,
    studMmPerN: S.mmPerN,
    clampedMmPerN: P.mmPerN,
    steps: [S.step, P.step],
    retorqued: joint.retightened ?? false,
    ...(joint.surface && { surface: joint.surface }),
  });
  return { answer, missing: '' };
}

function slipFinding(
  joint: Joint,
  nominal: Answer | null,
  least: (Answer & { value: number }) | null,
  missing: string,
  lockingUnknown: boolean,
  unit: LengthUnit,
): Checked {
  const limit = joint.engineTorqueNm * joint.serviceFactor;
  const Nm = (x: number) => printTorque(x, unit);
  const holds = least !== null && least.value >= limit - 1e-9;
  // The locking nut's own torque can only lower the preload, so a fail stays a fail.
  const known = least !== null && !(holds && lockingUnknown);
  const asked = `${Nm(limit)} is needed (engine ${Nm(joint.engineTorqueNm)} × ${joint.serviceFactor} for shock load)`;
  return {
    finding: {
      id: 'joint-slip',
      title: 'Slip torque',
      status: !known ? 'not-checked' : holds ? 'pass' : 'fail',
      value: least?.value ?? null,
      limit,
      unit: 'N·m',
      sentence:
        least === null
          ? `The torque at which the joint slips can’t be worked out. Missing: ${missing}.`
          : known
            ? `At the lowest preload the joint ${holds ? 'holds' : 'slips at'} ${Nm(least.value)}; ${asked}.`
            : `Enter the locking nut’s prevailing torque. Without it the joint would hold ${Nm(least.value)} at most; ${asked}.`,
      source: 'engine torque times the allowance for shock load, as entered',
      answer: least,
    },
    field: 'torqueNm',
    missMm: null,
    short: 'the joint slips',
    mend: '',
    counts: false,
    answers: {
      ...(nominal ? { slipTorqueNominalNm: nominal } : {}),
      ...(least ? { slipTorqueLeastNm: least } : {}),
    },
  };
}

function shearAfterSlip(numbers: StudNumbers, joint: Joint, unit: LengthUnit): Checked {
  const { stud } = numbers.input;
  return studShear(
    {
      torqueNm: joint.engineTorqueNm * joint.serviceFactor,
      studCount: joint.studCount,
      radiusMm: joint.studCircleDiameterMm / 2,
      areaMm2:
        stud.threadStartMm > 0
          ? (Math.PI / 4) * numbers.diameterMm ** 2
          : numbers.thread.tensileStressAreaMm2,
      tensileMPa: stud.tensileMPa,
    },
    unit,
  );
}

function noJoint(): Checked {
  return {
    finding: {
      id: 'joint',
      title: 'Joint',
      status: 'not-checked',
      value: null,
      limit: null,
      unit: '',
      sentence:
        'No tightening torque is entered, so whether the joint holds the engine’s torque can’t be checked.',
      source: '',
      answer: null,
    },
    field: 'joint',
    missMm: null,
    short: 'the tightening torque',
    mend: '',
    counts: false,
    answers: {},
  };
}
