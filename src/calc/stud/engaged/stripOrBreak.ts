import type { Answer } from '../../../../shared/words/answer.ts';
import { FORCE, type LengthUnit, printAs, printLength, printNumber } from '../../../../shared/words/print.ts';
import type { Nut, StudCheck } from '../../../../shared/words/stud/stud.ts';
import { type Checked, notKnown } from '../numbers/checked.ts';
import { atLeast } from '../numbers/inWords.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';
import { threadShearAreas } from '../thread/threadShearAreas.ts';
import { neededEngagement } from './neededEngagement.ts';
import type { Engagement } from './threadEngagement.ts';

const SOURCE = 'FED-STD-H28/2B; ASME B1.1-2003, Appendix B';
const SHEAR_OF_TENSILE = 0.5;

/**
 * Does the stud break before a thread strips, and at what load does the first of the three go?
 *   stud At Rm,stud   its thread As ½ Rm,stud   the nut's thread An ½ Rm,nut; the least is the breaking load
 *   Fails if the nominal engagement is below the needed, cautions if only the least is.
 *   Valid: steady load, threads within their class.   Source: FED-STD-H28/2B; see neededEngagement.ts
 *   Example: 3/8-24, 8.1 mm engaged, 827 MPa both → the stud goes first, 46.9 kN (calc/stud/thread/strength.test.ts)
 */
export function stripOrBreak(
  numbers: StudNumbers,
  nut: Nut,
  engagement: Engagement,
  unit: LengthUnit,
): {
  readonly checks: readonly Checked[];
  readonly strength: StudCheck['strength'];
  readonly neededMm: number;
} {
  const { stud } = numbers.input;
  const { thread, nutThread } = numbers;
  const { needed, J } = neededEngagement({
    stud: thread,
    nut: nutThread,
    studTensileMPa: stud.tensileMPa,
    nutTensileMPa: nut.tensileMPa,
  });
  const areas = threadShearAreas({ stud: thread, nut: nutThread, lengthMm: engagement.nominalMm });
  const At = thread.tensileStressAreaMm2;
  const first = firstToGo(At, areas.studMm2, areas.nutMm2, stud.tensileMPa, nut.tensileMPa);
  const strip: Checked = {
    ...againstNeeded(engagement, needed, first.loadN, unit),
    answers: {
      neededEngagementMm: needed,
      studShearAreaMm2: areas.studArea,
      nutShearAreaMm2: areas.nutArea,
      ...(first.answer ? { breakingLoadN: first.answer } : {}),
    },
  };
  return {
    checks: J === null ? [strip, nutNotChecked(stud.tensileMPa === null)] : [strip],
    strength: {
      tensileAreaMm2: At,
      studShearAreaMm2: areas.studMm2,
      nutShearAreaMm2: areas.nutMm2,
      weakest: first.weakest,
      breakingLoadN: first.loadN,
    },
    neededMm: needed.value,
  };
}

/** The engagement there is against the one needed, nominal and with every size at its worst. */
function againstNeeded(
  engagement: Engagement,
  needed: Answer & { readonly value: number },
  loadN: number | null,
  unit: LengthUnit,
): Omit<Checked, 'answers'> {
  const { nominalMm, leastMm, outer, inner } = engagement;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const failed = nominalMm < needed.value - 1e-9;
  const low = leastMm < needed.value - 1e-9;
  const missMm = failed ? needed.value - nominalMm : low ? needed.value - leastMm : 0;
  const byNut = outer.nominalMm >= 0 && inner.nominalMm >= 0;
  const load = loadN === null ? '' : `, at about ${printAs(loadN, FORCE[unit])}`;
  const sentence = failed
    ? `${mm(nominalMm)} of thread is engaged; ${mm(needed.value)} is needed for the stud to break first. A thread would strip first${load}.`
    : low
      ? `${mm(nominalMm)} of thread is engaged; ${mm(needed.value)} is needed for the stud to break before a thread strips. Worst case: only ${mm(leastMm)} is engaged.`
      : `${mm(nominalMm)} of thread is engaged; ${mm(needed.value)} is needed. The stud would break before a thread strips${load}.`;
  return {
    finding: {
      id: 'strip-or-break',
      title: 'Thread strength',
      status: failed ? 'fail' : low ? 'caution' : 'pass',
      value: nominalMm,
      limit: needed.value,
      unit: 'mm',
      sentence,
      source: SOURCE,
      answer: needed,
    },
    field: byNut ? 'heightMm' : inner.nominalMm < 0 ? 'threadStartMm' : 'threadEndMm',
    missMm,
    short: 'a thread would strip before the stud breaks',
    mend: byNut
      ? `Needs a nut at least ${atLeast(missMm, unit)} taller, or a stronger one.`
      : `Needs at least ${atLeast(missMm, unit)} more thread engaged.`,
    counts: true,
  };
}

/** Which fails first, the stud, its thread or the nut's, among those whose strength is known. */
function firstToGo(
  At: number,
  As: number,
  An: number,
  studMPa: number | null,
  nutMPa: number | null,
): { weakest: NonNullable<StudCheck['strength']['weakest']>; loadN: number | null; answer: Answer | null } {
  if (studMPa === null) {
    return { weakest: SHEAR_OF_TENSILE * As < At - 1e-9 ? 'stud-thread' : 'stud', loadN: null, answer: null };
  }
  const ways = [
    { weakest: 'stud', loadN: At * studMPa },
    { weakest: 'stud-thread', loadN: As * SHEAR_OF_TENSILE * studMPa },
    ...(nutMPa === null ? [] : [{ weakest: 'nut-thread', loadN: An * SHEAR_OF_TENSILE * nutMPa } as const]),
  ] as const;
  const first = ways.reduce((least, way) => (way.loadN < least.loadN - 1e-6 ? way : least));
  const p = (x: number) => printNumber(x, 1);
  const numbers = [
    `stud ${p(At)} · ${studMPa} = ${p(ways[0].loadN)} N`,
    `its thread ${p(As)} · ½ · ${studMPa} = ${p(ways[1].loadN)} N`,
    nutMPa === null
      ? 'the nut’s thread not known'
      : `the nut’s thread ${p(An)} · ½ · ${nutMPa} = ${p(An * SHEAR_OF_TENSILE * nutMPa)} N`,
  ].join('; ');
  return {
    ...first,
    answer: {
      symbol: 'F_m',
      value: first.loadN,
      unit: 'N',
      how: [{ formula: 'F_m = min(At Rm,stud, As ½ Rm,stud, An ½ Rm,nut)', numbers, source: SOURCE }],
      warnings: [],
    },
  };
}

function nutNotChecked(studMissing: boolean): Checked {
  const whose = studMissing ? 'stud' : 'nut';
  return notKnown(
    { id: 'nut-strip', title: 'Nut thread strength', limit: null, unit: 'mm', source: SOURCE },
    {
      sentence: `Nut thread strength can’t be checked: the ${whose}’s tensile strength is missing.`,
      field: 'tensileMPa',
      short: `the ${whose}’s tensile strength`,
      mend: '',
    },
  );
}
