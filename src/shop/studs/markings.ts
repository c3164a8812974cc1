import type { ThreadSpec } from '../../../shared/words/thread.ts';
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
