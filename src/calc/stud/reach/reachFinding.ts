import type { Status } from '../../../../shared/words/finding.ts';
import { type LengthUnit, printLength, printNumber } from '../../../../shared/words/print.ts';
import type { Checked } from '../numbers/checked.ts';
import type { StudNumbers } from '../numbers/studNumbers.ts';
import { type Reach, reach } from './reach.ts';

const STATUS = { 'starts-by-hand': 'pass', 'pilot-shows': 'caution', blind: 'fail' } as const;
const RANK = { 'starts-by-hand': 2, 'pilot-shows': 1, blind: 0 } as const;

/** Can the nut be started with the converter pushed back? The grade is nominal; a lower worst case is a caution. */
export function reachFinding(numbers: StudNumbers, unit: LengthUnit): Checked & { reach: Reach | null } {
  const { stud, nut, criteria, pullForwardMm: g } = numbers.input;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const base = { id: 'reach', title: 'Reach, pushed back', limit: criteria.startThreads, unit: 'threads' };
  const source = 'threads to start a nut by hand: the shop’s criterion';
  if (g === null) {
    return {
      reach: null,
      finding: {
        ...base,
        status: 'not-checked',
        value: null,
        sentence:
          'Whether the nut can be started is not known: the pull-forward gap was not given. Measure it with the converter fully back on the pump.',
        source,
        answer: null,
      },
      field: 'pullForwardMm',
      missMm: null,
      short: 'the pull-forward gap is not known',
      mend: 'Measure the pull-forward gap to know whether the nut can be started.',
      counts: true,
      answers: {},
    };
  }
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
  const status: Status = found.grade === 'starts-by-hand' && lower ? 'caution' : STATUS[found.grade];
  const shortOfStart = (one: Reach) => (criteria.startThreads - one.threadsShowing) * numbers.pitchMm;
  const pushed = `With the converter pushed back ${mm(g)}`;
  const t = (x: number) => printNumber(x, 1);
  const showing =
    found.threadsShowing > 0
      ? `${t(found.threadsShowing)} threads stand out of the flexplate`
      : `the last full thread lies ${mm(-found.threadsShowing * numbers.pitchMm)} inside the stack`;
  const told = {
    'starts-by-hand': {
      sentence: `${pushed}, ${showing}; ${t(criteria.startThreads)} start the nut by hand${lower ? `, but with every size at its worst only ${worst.grade === 'blind' ? 'the stack’s face is reached' : `${t(Math.max(0, worst.threadsShowing))} do`}` : ''}.`,
      field: 'threadEndMm',
      missMm: lower ? shortOfStart(worst) : 0,
      short: 'at its worst the nut may not start by hand',
      mend: `A thread reaching ${mm(Math.max(0, shortOfStart(worst)))} farther would do.`,
    },
    'pilot-shows': {
      sentence: `${pushed}, the tip stands ${mm(Math.max(0, found.tipBeyondMm))} out of the flexplate and ${showing}; ${
        lengths.prevailing
          ? 'a prevailing-torque nut cannot be run on by hand'
          : `${t(criteria.startThreads)} threads showing would start the nut by hand`
      }. The pilot finds its hole; the nut is started as the converter is drawn forward${lower ? ', and with every size at its worst the tip stays inside the stack' : ''}.`,
      field:
        lengths.prevailing && found.threadsShowing >= criteria.startThreads ? 'prevailing' : 'threadEndMm',
      missMm:
        lengths.prevailing && found.threadsShowing >= criteria.startThreads
          ? null
          : Math.max(0, shortOfStart(found)),
      short: lengths.prevailing
        ? 'a prevailing-torque nut does not start by hand'
        : 'only its pilot shows when the converter is pushed back',
      mend: '',
    },
    blind: {
      sentence: `${pushed}, the tip lies ${mm(Math.max(0, -found.tipBeyondMm))} inside the stack: the nut cannot be started.`,
      field: 'projectionMm',
      missMm: Math.max(0, -found.tipBeyondMm),
      short: 'its tip stays inside the stack when the converter is pushed back',
      mend: `A stud more than ${mm(Math.max(0, -found.tipBeyondMm))} longer would show its pilot.`,
    },
  }[found.grade];
  return {
    reach: found,
    finding: {
      ...base,
      status,
      value: found.threadsShowing,
      sentence: told.sentence,
      source,
      answer: found.answer,
    },
    field: told.field,
    missMm: told.missMm,
    short: told.short,
    mend: told.mend,
    counts: true,
    answers: { pushedBackMm: found.answer },
  };
}
