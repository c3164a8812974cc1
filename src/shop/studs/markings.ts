import type { Nut, Stud } from '../../../shared/words/stud/stud.ts';
import type { ThreadSpec } from '../../../shared/words/stud/thread.ts';
import { type NutClass, nutClass } from '../../calc/stud/thread/nutClass.ts';
import { type StrengthClass, strengthClass } from '../../calc/stud/thread/strengthClass.ts';

/** What the class marked on a nut promises with its thread; null where none is known. */
export function nutMarked(name: string, thread: ThreadSpec): NutClass | null {
  const fine = thread.system === 'unified' && thread.designation.includes('UNF');
  return nutClass({ name, diameterMm: majorMmOf(thread), fine });
}

/** What the class or grade marked on a stud promises with its thread; null where none is known. */
export function studMarked(name: string, thread: ThreadSpec): StrengthClass | null {
  return strengthClass({ name, diameterMm: majorMmOf(thread) });
}

function majorMmOf(thread: ThreadSpec): number {
  return thread.system === 'unified' ? thread.majorInch * 25.4 : thread.majorMm;
}

const STUD_MARKS = [
  'grade 8',
  'grade 5',
  '10.9',
  '8.8',
  '12.9',
  '9.8',
  'grade 2',
  '6.8',
  '5.8',
  '5.6',
  '4.8',
  '4.6',
];
const NUT_MARKS = ['grade 8', 'grade 5', '10', '8', '12', 'grade 2', '6', '5'];
/** Stresses that print alike in MPa and in ksi are the same. */
const SAME_MPA = 1.5;

/** The class or grade whose strength a stud has; null where it has that of none. */
export function studClassOf({ thread, tensileMPa, proofMPa }: Stud): string | null {
  return markWith(thread, STUD_MARKS, (name) => {
    const one = studMarked(name, thread);
    return one !== null && same(one.tensileMPa, tensileMPa) && same(one.proofMPa, proofMPa);
  });
}

/** The same of a nut, by its proof stress. */
export function nutClassOf({ thread, proofMPa }: Nut): string | null {
  if (thread === null) return null;
  return markWith(thread, NUT_MARKS, (name) => same(nutMarked(name, thread)?.proofMPa ?? null, proofMPa));
}

/** An inch thread has a grade, a metric one a class. */
function markWith(
  { system }: ThreadSpec,
  marks: readonly string[],
  has: (name: string) => boolean,
): string | null {
  const own = marks.filter((name) => name.startsWith('grade') === (system === 'unified'));
  return own.find(has) ?? marks.find(has) ?? null;
}

function same(a: number | null, b: number | null): boolean {
  return a !== null && b !== null && Math.abs(a - b) <= SAME_MPA;
}
