import { type LengthUnit, printLength } from '../../../../shared/words/print.ts';
import type { ReachGrade } from '../../../../shared/words/stud/stud.ts';
import { type Checked, notKnown } from '../numbers/checked.ts';
import { atLeast, isFlush, threadsInWords } from '../numbers/inWords.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';
import { type Reach, type ReachLengths, reach } from './reach.ts';

const STATUS = { 'starts-by-hand': 'pass', 'pilot-shows': 'caution', blind: 'fail' } as const;
const RANK = { 'starts-by-hand': 2, 'pilot-shows': 1, blind: 0 } as const;

/** Can the nut be started with the converter pushed back? The grade is nominal; a lower worst case is a caution. */
export function reachFinding(numbers: StudNumbers, unit: LengthUnit): Checked & { reach: Reach | null } {
  const { stud, nut, criteria, pullForwardMm: g } = numbers.input;
  const base = {
    id: 'reach',
    title: 'Starting the nut',
    limit: criteria.startThreads,
    unit: 'threads',
    source: 'the shop’s limit for starting the nut by hand',
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
    'The pull-forward gap is missing, so starting the nut can’t be checked. Measure it with the converter fully back on the pump.',
  field: 'pullForwardMm',
  short: 'the pull-forward gap',
  mend: '',
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

/** How much farther the thread would have to reach to start the nut by hand. */
function shortOfStart({ startThreads, pitchMm }: ReachLengths, one: Reach): number {
  return (startThreads - one.threadsShowing) * pitchMm;
}

function startsByHand({ lengths, found, worst, unit }: Found): Told {
  const atWorst =
    worst === null
      ? ''
      : worst.grade === 'blind'
        ? ' Worst case: the stud end does not reach the engine side.'
        : ` Worst case: only ${threadsInWords(Math.max(0, worst.threadsShowing))} show.`;
  const farther = Math.max(0, shortOfStart(lengths, worst ?? found));
  return {
    sentence: `${threadsInWords(found.threadsShowing)} show; the nut needs ${threadsInWords(lengths.startThreads)} to start by hand.${atWorst}`,
    field: 'threadEndMm',
    missMm: worst === null ? 0 : shortOfStart(lengths, worst),
    short: 'in the worst case the nut may not start by hand',
    mend: `Needs a last full thread at least ${atLeast(farther, unit)} farther from the pad.`,
  };
}

function pilotShows({ lengths, found, worst, unit }: Found): Told {
  const { prevailing, startThreads } = lengths;
  const onlyPrevailing = prevailing && found.threadsShowing >= startThreads;
  const shows = isFlush(found.tipBeyondMm, unit)
    ? 'the stud end is flush with the engine side'
    : found.threadsShowing > 0
      ? `only ${threadsInWords(found.threadsShowing)} show`
      : `only the stud pilot shows, ${printLength(found.tipBeyondMm, unit, 'coarse')} of it`;
  const why = onlyPrevailing
    ? `${threadsInWords(found.threadsShowing)} show, but a locking nut can’t be run on by hand`
    : `${shows}; the nut needs ${threadsInWords(startThreads)} to start by hand`;
  const atWorst = worst === null ? '' : ' Worst case: the stud end does not reach the engine side.';
  return {
    sentence: `${why}. Start the nut while you draw the converter forward.${atWorst}`,
    field: onlyPrevailing ? 'prevailing' : 'threadEndMm',
    missMm: onlyPrevailing ? null : Math.max(0, shortOfStart(lengths, found)),
    short: onlyPrevailing
      ? 'a locking nut does not start by hand'
      : found.threadsShowing > 0
        ? 'too few threads show to start the nut by hand'
        : 'only its stud pilot shows with the converter pushed back',
    mend: '',
  };
}

function blind({ found, unit }: Found): Told {
  const missMm = Math.max(0, -found.tipBeyondMm);
  const where = isFlush(missMm, unit)
    ? 'the stud end is flush with the engine side'
    : `the stud end is ${printLength(missMm, unit, 'coarse')} short of the engine side`;
  return {
    sentence: `${where}: the nut can’t be started.`,
    field: 'projectionMm',
    missMm,
    short: 'its end does not reach the engine side with the converter pushed back',
    mend: `Needs a stud at least ${atLeast(missMm, unit, { more: true })} longer.`,
  };
}
