import type { JointFrom } from '../../../../shared/words/job.ts';
import type { Joint } from '../../../../shared/words/stud/stud.ts';

/** A figure to choose for a joint, with its source. */
export interface NamedFigure {
  readonly id: string;
  readonly value: number;
  readonly says: string;
  readonly source: string;
}

const SHIGLEY = 'Shigley, 9th ed., table 8-15';
const EN = 'EN 1090-2, slip factor of the class, from memory';

/**
 * Nut factors K of T = K d F by finish; torque-wrench scatter; friction between pad and plate.
 *   Valid: K hangs on the finish and the oil really there; the table gives middle values. Friction is for bare steel,
 *   oil or paint between the faces makes it less.
 *   Source: Shigley's Mechanical Engineering Design, 9th ed., tables 8-15 and 8-14 (two standard deviations of ten
 *   lubricated bolts); EN 1090-2, table 17 (from memory); the others common practice, no source
 *   Example: table 8-15, zinc plated → 0.20; table 8-14 → 17 % (published/studJoints.test.ts)
 */
export const NUT_FACTORS: readonly NamedFigure[] = [
  { id: 'black', value: 0.3, says: 'not plated, black', source: SHIGLEY },
  { id: 'zinc', value: 0.2, says: 'zinc plated', source: SHIGLEY },
  { id: 'oiled', value: 0.18, says: 'lubricated', source: SHIGLEY },
  { id: 'cadmium', value: 0.16, says: 'cadmium plated', source: SHIGLEY },
  { id: 'anti-seize', value: 0.12, says: 'with an anti-seize compound', source: SHIGLEY },
  { id: 'low-friction', value: 0.09, says: 'with a friction-reducing nut', source: SHIGLEY },
];

export const SCATTERS: readonly NamedFigure[] = [
  {
    id: 'wrench',
    value: 0.25,
    says: 'wrench as found',
    source: 'common practice, no source',
  },
  {
    id: 'ten-bolts',
    value: 0.17,
    says: 'wrench clean and lubricated',
    source: 'Shigley, 9th ed., table 8-14, twice the standard deviation of ten bolts',
  },
];

export const FRICTIONS: readonly NamedFigure[] = [
  { id: 'oily', value: 0.1, says: 'oily', source: 'common practice, no source' },
  { id: 'clean', value: 0.15, says: 'wiped clean', source: 'common practice, no source' },
  { id: 'bare', value: 0.2, says: 'bare and dry', source: `${EN} D` },
  { id: 'brushed', value: 0.3, says: 'wire brushed, bare and dry', source: `${EN} C` },
];

/** Where the figures of a joint come from: those of the lists by their source, any other as typed. */
export function jointFrom(joint: Joint, torque: JointFrom['torque']): JointFrom {
  const said = (known: readonly NamedFigure[], value: number) => {
    const one = known.find((figure) => figure.value === value);
    return one ? `${one.says} (${one.source})` : 'typed; no source given';
  };
  return {
    torque,
    nutFactor: said(NUT_FACTORS, joint.nutFactor),
    scatter: said(SCATTERS, joint.scatter),
    friction: said(FRICTIONS, joint.friction),
  };
}
