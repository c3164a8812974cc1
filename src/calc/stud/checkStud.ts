import type { Answer } from '../../../shared/words/answer.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { listInWords } from '../../../shared/words/print.ts';
import type { Fits, Nut, StudCheck, StudCheckInput } from '../../../shared/words/stud/stud.ts';
import { engagementFinding } from './engaged/engagementFinding.ts';
import { nutClamps } from './engaged/nutClamps.ts';
import { nutThread } from './engaged/nutThread.ts';
import { protrusion } from './engaged/protrusion.ts';
import { stripOrBreak } from './engaged/stripOrBreak.ts';
import { threadEngagement } from './engaged/threadEngagement.ts';
import { filletClearsChamfer } from './holes/filletClearsChamfer.ts';
import { fixedFastenerPosition } from './holes/fixedFastenerPosition.ts';
import { holeCircle } from './holes/holeCircle.ts';
import { holes } from './holes/holes.ts';
import { nutSeat } from './holes/nutSeat.ts';
import { pilotLinesUp } from './holes/pilotLinesUp.ts';
import { jointChecks } from './joint/jointChecks.ts';
import type { Checked } from './numbers/checked.ts';
import { fits } from './numbers/fits.ts';
import { type StudNumbers, studNumbers } from './numbers/studNumbers.ts';
import { wornThreadFinding } from './numbers/wornThread.ts';
import { gapWanted } from './reach/gapWanted.ts';
import { pilotEntersHole } from './reach/pilotEntersHole.ts';
import { pilotPassesNut } from './reach/pilotPassesNut.ts';
import { reachFinding } from './reach/reachFinding.ts';
import { tipClearance } from './reach/tipClearance.ts';
import { refuseStud } from './refuseStud.ts';
import { tensileStressArea } from './thread/tensileStressArea.ts';
import { threadGeometry } from './thread/threadGeometry.ts';

/** Kept with every choice of studs; raised whenever a calculation gives another number. */
export const STUD_CALC_VERSION = 'stud-3';

/** The checks that say whether a stud fits, in order; the joint is judged apart. */
export interface StudFit {
  readonly numbers: StudNumbers;
  readonly onNut: ReturnType<typeof nutChecks> | null;
  readonly pushed: ReturnType<typeof reachFinding>;
  readonly linesUp: ReturnType<typeof pilotLinesUp>;
  readonly checks: readonly Checked[];
  readonly judged: ReturnType<typeof fits>;
}

/**
 * A stud against a stack of layers and a nut: whether it fits, and every number behind that.
 * Throws: a Refusal that names each field it cannot work with (refuseStud.ts).
 */
export function checkStud(input: StudCheckInput, unit: LengthUnit = 'mm'): StudCheck {
  return inFull(fitOf(input, unit), unit);
}

/** Whether it fits, without its joint. Throws: a Refusal, as checkStud. */
export function fitOf(input: StudCheckInput, unit: LengthUnit): StudFit {
  refuseStud(input, unit);
  const numbers = studNumbers(input);
  const onNut = input.nut !== null && numbers.nutGoesOn ? nutChecks(numbers, input.nut, unit) : null;
  const pushed = reachFinding(numbers, unit);
  const linesUp = pilotLinesUp(numbers, unit);
  const checks: readonly Checked[] = [
    nutThread(numbers),
    ...wornThreadFinding(threadGeometry(input.stud.thread), input.stud.pitchDiameterMeasuredMm ?? null, unit),
    nutClamps(numbers, unit),
    ...(onNut?.checks ?? WITH_A_NUT.map(([id, title]) => withoutNut(id, title, numbers))),
    pushed,
    ...gapWanted(numbers, unit),
    pilotEntersHole(numbers, unit),
    linesUp,
    pilotPassesNut(numbers, unit),
    tipClearance(numbers, unit),
    ...holeChecks(numbers, unit),
  ];
  return { numbers, onNut, pushed, linesUp, checks, judged: fits(checks) };
}

/** The whole answer on a stud whose fit is known: with its joint, and in words. */
export function inFull(
  { numbers, onNut, pushed, linesUp, checks: ofFit, judged }: StudFit,
  unit: LengthUnit,
): StudCheck {
  const joined = jointChecks(numbers, unit);
  const checks = [...ofFit, ...joined.checks];
  return {
    fits: judged.fits,
    holds: joined.holds,
    ...inWords(judged, ofFit),
    decidedBy: judged.decides?.field ?? null,
    byMm: judged.decides?.missMm ?? null,
    stackMm: numbers.stackMm,
    engagement: onNut?.engagement ?? null,
    protrusionThreads: onNut?.protrusionThreads ?? null,
    reach: {
      seatedMm: numbers.input.stud.projectionMm - numbers.stackMm.nominal,
      pushedBackMm: pushed.reach?.tipBeyondMm ?? null,
      threadsShowing: pushed.reach?.threadsShowing ?? null,
      grade: pushed.reach?.grade ?? null,
    },
    pilot: linesUp.pilot,
    strength: onNut?.strength ?? {
      tensileAreaMm2: numbers.thread.tensileStressAreaMm2,
      studShearAreaMm2: null,
      nutShearAreaMm2: null,
      weakest: null,
      breakingLoadN: null,
    },
    joint: joined.joint,
    findings: checks.map((check) => check.finding),
    answers: Object.assign(
      { stackMm: numbers.stackAnswer, tensileAreaMm2: areaAnswer(numbers) },
      ...checks.map((check) => check.answers),
    ),
  };
}

/** What is checked of a nut that goes on the stud's thread, in this order. */
const WITH_A_NUT = [
  ['engagement', 'Thread engagement'],
  ['protrusion', 'Threads past the nut'],
  ['strip-or-break', 'Thread strength'],
] as const;

function nutChecks(
  numbers: StudNumbers,
  nut: Nut,
  unit: LengthUnit,
): Pick<StudCheck, 'engagement' | 'protrusionThreads' | 'strength'> & {
  readonly checks: readonly Checked[];
} {
  const { stud } = numbers.input;
  const engagement = threadEngagement({
    threadStartMm: stud.threadStartMm,
    threadEndMm: stud.threadEndMm,
    lengthToleranceMm: stud.lengthToleranceMm,
    gripMm: numbers.gripMm,
    layerTolerancesMm: numbers.layerTolerancesMm,
    nutHeightMm: nut.heightMm,
    nutToleranceMm: nut.toleranceMm,
    countersinkMm: nut.countersinkMm,
  });
  const out = protrusion(numbers, nut, unit);
  const { checks, strength, neededMm } = stripOrBreak(numbers, nut, engagement, unit);
  return {
    checks: [engagementFinding(numbers, engagement, unit), out, ...checks],
    engagement: {
      nominalMm: engagement.nominalMm,
      leastMm: engagement.leastMm,
      threads: engagement.nominalMm / numbers.pitchMm,
      diameters: engagement.nominalMm / numbers.diameterMm,
      neededMm,
    },
    protrusionThreads: out.threads,
    strength,
  };
}

function holeChecks(numbers: StudNumbers, unit: LengthUnit): readonly Checked[] {
  const through = holes(numbers, unit);
  const circles = holeCircle(numbers, unit);
  const seat = nutSeat(numbers, unit);
  const fillet = filletClearsChamfer(numbers, unit);
  return [
    through,
    fixedFastenerPosition(through, circles, unit),
    circles.count,
    circles.circle,
    ...(seat ? [seat] : []),
    ...(fillet ? [fillet] : []),
  ];
}

/** The stress area of the thread's callout, or what wear left of it. */
function areaAnswer({ input, thread }: StudNumbers): Answer {
  const whole = tensileStressArea(input.stud.thread);
  const value = thread.tensileStressAreaMm2;
  return whole.value === value ? whole : { ...whole, value, how: thread.how };
}

/** Without a nut it cannot be worked out; with a nut that does not go on the stud, nothing is engaged. */
function withoutNut(id: string, title: string, numbers: StudNumbers): Checked {
  const given = numbers.input.nut !== null;
  return {
    finding: {
      id,
      title,
      status: given ? 'fail' : 'not-checked',
      value: null,
      limit: null,
      unit: '',
      sentence: given
        ? 'Nothing is engaged: the nut does not go on the stud.'
        : 'No nut is entered, so this can’t be checked.',
      source: 'the thread callouts',
      answer: null,
    },
    field: given ? 'thread' : 'nut',
    missMm: null,
    short: given ? 'its thread is not the nut’s' : 'the nut',
    mend: '',
    counts: true,
    answers: {},
  };
}

function inWords(
  { fits, decides }: { readonly fits: Fits; readonly decides: Checked | null },
  checks: readonly Checked[],
): { readonly headline: string; readonly because: string } {
  const reach = checks.find((check) => check.finding.id === 'reach')!.finding.sentence;
  if (decides === null) return { headline: 'Fits: the nut starts by hand.', because: reach };
  const because = [decides.finding.sentence, decides.mend].filter((part) => part !== '').join(' ');
  if (fits === 'no') return { headline: `Does not fit: ${decides.short}.`, because };
  if (decides.finding.status === 'caution') return { headline: `Fits with care: ${decides.short}.`, because };
  const missing = checks.filter((check) => check.counts && check.finding.status === 'not-checked');
  return {
    headline: 'Fits as far as it could be checked.',
    because: `Missing: ${listInWords([...new Set(missing.map((check) => check.short))])}. Measure it before you count on the answer.`,
  };
}
