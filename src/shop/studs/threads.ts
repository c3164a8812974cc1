import { readThread } from '../../../shared/quantity/readThread.ts';
import { METRIC_PITCHES, UNIFIED_SIZES } from '../../../shared/quantity/threadTables.ts';
import type { ThreadFound, ThreadsFound, ThreadTwin } from '../../../shared/words/stud/choices.ts';
import type { ThreadGeometry, ThreadReading, ThreadSpec } from '../../../shared/words/stud/thread.ts';
import { threadGeometry } from '../../calc/stud/thread/threadGeometry.ts';
import { threadMeasured } from '../../calc/stud/thread/threadMeasured.ts';
import { goesOnByHand, wrongNut } from '../../calc/stud/thread/wrongNut.ts';

/** A thread of the tables, on a stud and in a nut. */
interface Standard {
  readonly thread: ThreadSpec;
  readonly geometry: ThreadGeometry;
  readonly nut: ThreadGeometry;
}

const CALLOUTS: readonly string[] = [
  ...UNIFIED_SIZES.flatMap(({ written, UNC, UNF, UNEF, UN }) =>
    [UNC, UNF, UNEF, ...UN].flatMap((perInch) => (perInch === null ? [] : [`${written}-${perInch}`])),
  ),
  ...[...METRIC_PITCHES].flatMap(([size, pitches]) => pitches.map((pitch) => `M${size}x${pitch}`)),
];

/** Every thread of the tables of ASME B1.1 and ISO 261 that can be read, worked out once. */
const STANDARD: readonly Standard[] = CALLOUTS.map((callout) => {
  const [stud, nut] = [readThread(callout, 'external'), readThread(callout, 'internal')];
  if (!stud.ok || !nut.ok) throw new Error(`${callout} stands in the tables and can't be read.`);
  return {
    thread: stud.thread,
    geometry: threadGeometry(stud.thread),
    nut: threadGeometry(nut.thread),
  };
});

/** The nearest that it is not are told too, so that a reading that suits none can be judged. */
const NEAREST_TOLD = 3;

/** The threads a stud may have by a caliper: nearest first, each with its near twins; then the nearest it is not. */
export function threadsLike(reading: ThreadReading): ThreadsFound {
  const found = threadMeasured(reading, STANDARD);
  const mayBe = found.filter(({ within }) => within);
  if (reading.overMm === null) mayBe.sort((a, b) => rank(a.of.thread) - rank(b.of.thread));
  const nearest = found.filter(({ within }) => !within).slice(0, NEAREST_TOLD);
  const told = ({ of, ...candidate }: (typeof found)[number]): ThreadFound => ({
    ...candidate,
    thread: of.thread,
    twins: twinsOf(of),
  });
  return { mayBe: mayBe.map(told), nearest: nearest.map(told) };
}

/** Threads whose nut a hand may take for the right one, on this stud or the other way round. */
function twinsOf(one: Standard): ThreadTwin[] {
  return STANDARD.flatMap((other): ThreadTwin[] => {
    if (other === one || !isUsual(other.thread)) return [];
    const onThis = wrongNut(one.geometry, other.nut);
    const onOther = wrongNut(other.geometry, one.nut);
    const threads = Math.max(onThis, onOther);
    return goesOnByHand(threads) ? [{ thread: other.thread, threads, nutIsTwins: onThis >= onOther }] : [];
  }).sort((a, b) => b.threads - a.threads);
}

/** ISO 261, third choice; from memory. */
const THIRD_CHOICE_MM = [9, 11];

/** Constant-pitch and extra-fine series and third-choice sizes are no stock of a shop (common practice, no source). */
function isUsual(thread: ThreadSpec): boolean {
  return thread.system === 'metric'
    ? !THIRD_CHOICE_MM.includes(thread.majorMm)
    : thread.series === 'UNC' || thread.series === 'UNF';
}

function rank(thread: ThreadSpec): number {
  return isUsual(thread) ? 0 : 1;
}

/** Same size and pitch, whatever the class. */
export function sameThread(a: ThreadSpec | null, b: ThreadSpec): boolean {
  if (a?.system === 'unified' && b.system === 'unified')
    return a.majorInch === b.majorInch && a.threadsPerInch === b.threadsPerInch;
  return (
    a?.system === 'metric' && b.system === 'metric' && a.majorMm === b.majorMm && a.pitchMm === b.pitchMm
  );
}
