import { FORCE, type LengthUnit, printAs, printNumber } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';

/**
 * Does the nut carry the greatest preload?   share = F_most/(S_p,nut At)
 *   F_most greatest preload [N] · S_p,nut the nut's proof stress, by its class [MPa] · At the stud's stress area [mm²]
 *   Valid: a nut of full height; a thin nut carries less than its class says.
 *   Source: ISO 898-2:2012: a nut's proof load is its proof stress on the stress area. Above it: advice, a caution
 *   Example: 24 278 N on 3/8-24, S_p 827 → 0.518 (calc/stud/joint/joint.test.ts)
 */
export function nutProof(
  {
    mostN,
    nutProofMPa,
    areaMm2,
  }: {
    mostN: number;
    nutProofMPa: number;
    areaMm2: number;
  },
  unit: LengthUnit,
): Checked {
  const loadN = nutProofMPa * areaMm2;
  const share = mostN / loadN;
  const carries = share <= 1 + 1e-9;
  const force = (x: number) => printAs(x, FORCE[unit]);
  const answer = {
    symbol: 'F/F_p,nut',
    value: share,
    unit: '',
    how: [
      {
        formula: 'share = F_most/(S_p,nut At)',
        numbers: `${printNumber(mostN, 0)}/(${nutProofMPa} · ${printNumber(areaMm2, 1)}) = ${printNumber(share, 3)}`,
        source: 'ISO 898-2:2012',
      },
    ],
    warnings: [],
  } as const;
  return {
    finding: {
      id: 'joint-nut',
      title: 'Nut proof load',
      status: carries ? 'pass' : 'caution',
      value: share,
      limit: 1,
      unit: '',
      sentence: `The highest preload is ${force(mostN)}; the nut’s proof load is ${force(loadN)}${carries ? '' : ', so the nut yields first'}.`,
      source: 'proof stress of the nut’s class, ISO 898-2; advice',
      answer,
    },
    field: 'proofMPa',
    missMm: null,
    short: 'the preload is too great for the nut',
    mend: '',
    counts: false,
    answers: { nutProofShare: answer },
  };
}
