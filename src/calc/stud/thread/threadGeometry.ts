import { Refusal } from '../../../../shared/words/refusal.ts';
import type { ThreadGeometry, ThreadSpec } from '../../../../shared/words/stud/thread.ts';
import { metricGeometry } from './metricGeometry.ts';
import { unifiedGeometry } from './unifiedGeometry.ts';

/** Largest pitch, as a share of the major diameter, that still leaves a core. */
const COARSEST = 0.5;

/**
 * Basic and limiting diameters and the stress area of any Unified or ISO metric thread of classes 2A, 3A, 2B, 3B,
 * 6g, 6H, in mm; a limit the class does not set is null. The minor diameter's `basic` is that of the basic profile
 * (ISO 68-1), for stud and nut alike.
 *   Formulas, symbols, sources: unifiedGeometry.ts, metricGeometry.ts, tensileStressArea.ts
 *   Valid: pitch up to half the major diameter; inch majors 0.06 to 14 in, metric over 0.99 to 355 mm.
 *   Throws: a Refusal of a size or a pitch outside these.
 */
export function threadGeometry(spec: ThreadSpec): ThreadGeometry {
  const sizes =
    spec.system === 'unified'
      ? `${spec.majorInch} ${spec.threadsPerInch} ${spec.series}`
      : `${spec.majorMm} ${spec.pitchMm}`;
  const key = `${spec.system} ${sizes} ${spec.class} ${spec.designation}`;
  const known = geometries.get(key);
  if (known !== undefined) return known;
  const found = workedOut(spec);
  if (geometries.size >= MOST_KEPT) geometries.clear();
  geometries.set(key, found);
  return found;
}

/** Kept, because each check of a stud asks for the same two threads several times. */
const geometries = new Map<string, ThreadGeometry>();
const MOST_KEPT = 500;

function workedOut(spec: ThreadSpec): ThreadGeometry {
  const refuse = (message: string): never => {
    throw new Refusal('thread', [{ path: 'thread', message }]);
  };
  if (spec.system === 'unified') {
    const { majorInch, threadsPerInch } = spec;
    if (!(majorInch >= 0.06 && majorInch <= 14)) {
      refuse(`The thread's major diameter is ${majorInch} in; it must be from 0.06 in to 14 in.`);
    }
    if (
      !(threadsPerInch > 0 && Number.isFinite(threadsPerInch) && 1 / threadsPerInch <= COARSEST * majorInch)
    ) {
      refuse(
        `${threadsPerInch} threads per inch leave no core in a ${majorInch} in thread; check the callout.`,
      );
    }
    return unifiedGeometry(spec);
  }
  const { majorMm, pitchMm } = spec;
  if (!(majorMm > 0.99 && majorMm <= 355)) {
    refuse(`The thread's major diameter is ${majorMm} mm; it must be over 0.99 mm and up to 355 mm.`);
  }
  if (!(pitchMm >= 0.2 && pitchMm <= COARSEST * majorMm)) {
    refuse(
      `A pitch of ${pitchMm} mm does not suit a ${majorMm} mm thread; it must be from 0.2 mm to half the diameter.`,
    );
  }
  return metricGeometry(spec);
}
