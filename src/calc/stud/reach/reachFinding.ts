import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import type { ReachGrade } from '../../../../shared/words/stud.ts';
import { type Checked, notKnown } from '../numbers/checked.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';
import { type Reach, type ReachLengths, reach } from './reach.ts';

const STATUS = { 'starts-by-hand': 'pass', 'pilot-shows': 'caution', blind: 'fail' } as const;
const RANK = { 'starts-by-hand': 2, 'pilot-shows': 1, blind: 0 } as const;

/** Can the nut be started with the converter pushed back? The grade is nominal; a lower worst case is a caution. */
export function reachFinding(numbers: StudNumbers, unit: LengthUnit): Checked & { reach: Reach | null } {
  const { stud, nut, criteria, pullForwardMm: g } = numbers.input;
  const base = {
    id: 'reach',
    title: 'Reach, pushed back',
    limit: criteria.startThreads,
    unit: 'threads',
    source: 'threads to start a nut by hand: the shop’s criterion',
  };
  if (g === null) return { ...notKnown(base, NO_GAP), reach: null };
  const lengths = {
    projectionMm: stud.projectionMm,
    threadEndMm: stud.threadEndMm,
    stackMm: numbers.stackMm.nominal,
    gapMm: g,
    pitchMm: numbers.pitchMm,
    startThreads: criteria.startThreads,
    prevailing: nut?.prevailing ?? false,
  };
  const found = reach(lengths);
  const worst = reach({
    ...lengths,
    projectionMm: stud.projectionMm - stud.lengthToleranceMm,
    threadEndMm: stud.threadEndMm - stud.lengthToleranceMm,
    stackMm: numbers.stackMm.most,
  });
  const lower = RANK[worst.grade] < RANK[found.grade];
  const { sentence, ...told } = TOLD[found.grade]({ lengths, found, worst: lower ? worst : null, unit });
  return {
    reach: found,
    finding: {
      ...base,
      status: found.grade === 'starts-by-hand' && lower ? 'caution' : STATUS[found.grade],
      value: found.threadsShowing,
      sentence: `With the converter pushed back ${printLength(g, unit, 'coarse')}, ${sentence}`,
      answer: found.answer,
    },
    ...told,
    counts: true,
    answers: { pushedBackMm: found.answer },
  };
}

const NO_GAP = {
  sentence:
    'Whether the nut can be started is not known: the pull-forward gap was not given. Measure it with the converter fully back on the pump.',
  field: 'pullForwardMm',
  short: 'the pull-forward gap is not known',
  mend: 'Measure the pull-forward gap to know whether the nut can be started.',
};

interface Found {
  readonly lengths: ReachLengths;
  readonly found: Reach;
  /** The reach with every size at its worst; null where its grade is no lower. */
  readonly worst: Reach | null;
  readonly unit: LengthUnit;
}

type Told = Pick<Checked, 'field' | 'missMm' | 'short' | 'mend'> & { readonly sentence: string };

const TOLD: Readonly<Record<ReachGrade, (found: Found) => Told>> = {
  'starts-by-hand': startsByHand,
  'pilot-shows': pilotShows,
  blind,
};

const threads = (x: number) => printNumber(x, 1);

function showing({ found, lengths, unit }: Found): string {
  return found.threadsShowing > 0
    ? `${threads(found.threadsShowing)} threads stand out of the flexplate`
    : `the last full thread lies ${printLength(-found.threadsShowing * lengths.pitchMm, unit, 'coarse')} inside the stack`;
}

/** How much farther the thread would have to reach to start the nut by hand. */
function shortOfStart({ startThreads, pitchMm }: ReachLengths, one: Reach): number {
  return (startThreads - one.threadsShowing) * pitchMm;
}

function startsByHand(of: Found): Told {
  const { lengths, worst, unit } = of;
  const atWorst =
    worst === null
      ? ''
      : `, but with every size at its worst only ${worst.grade === 'blind' ? 'the stack’s face is reached' : `${threads(Math.max(0, worst.threadsShowing))} do`}`;
  const farther = Math.max(0, shortOfStart(lengths, worst ?? of.found));
  return {
    sentence: `${showing(of)}; ${threads(lengths.startThreads)} start the nut by hand${atWorst}.`,
    field: 'threadEndMm',
    missMm: worst === null ? 0 : shortOfStart(lengths, worst),
    short: 'at its worst the nut may not start by hand',
    mend: `A thread reaching ${printLength(farther, unit, 'coarse')} farther would do.`,
  };
}

function pilotShows(of: Found): Told {
  const { lengths, found, worst, unit } = of;
  const { prevailing, startThreads } = lengths;
  const onlyPrevailing = prevailing && found.threadsShowing >= startThreads;
  const why = prevailing
    ? 'a prevailing-torque nut cannot be run on by hand'
    : `${threads(startThreads)} threads showing would start the nut by hand`;
  const atWorst = worst === null ? '' : ', and with every size at its worst the tip stays inside the stack';
  return {
    sentence: `the tip stands ${printLength(Math.max(0, found.tipBeyondMm), unit, 'coarse')} out of the flexplate and ${showing(of)}; ${why}. The pilot finds its hole; the nut is started as the converter is drawn forward${atWorst}.`,
    field: onlyPrevailing ? 'prevailing' : 'threadEndMm',
    missMm: onlyPrevailing ? null : Math.max(0, shortOfStart(lengths, found)),
    short: prevailing
      ? 'a prevailing-torque nut does not start by hand'
      : 'only its pilot shows when the converter is pushed back',
    mend: '',
  };
}

function blind({ found, unit }: Found): Told {
  const missMm = Math.max(0, -found.tipBeyondMm);
  const mm = printLength(missMm, unit, 'coarse');
  return {
    sentence: `the tip lies ${mm} inside the stack: the nut cannot be started.`,
    field: 'projectionMm',
    missMm,
    short: 'its tip stays inside the stack when the converter is pushed back',
    mend: `A stud more than ${mm} longer would show its pilot.`,
  };
}
