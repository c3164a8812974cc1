import { readThread } from '../../../shared/quantity/readThread.ts';
import type { NamedStud } from '../../../shared/words/stud/stud.ts';

export function catalogue(): NamedStud[] {
  const read = readThread('3/8-24', 'external');
  if (!read.ok) throw new Error(read.message);
  const stud = {
    thread: read.thread,
    threadStartMm: 1,
    threadEndMm: 20,
    lengthToleranceMm: 0.25,
    pilotDiameterMm: 8,
    tensileMPa: 1035,
    proofMPa: 827,
    filletMm: null,
  };
  return [
    { id: 'short', stud: { ...stud, projectionMm: 23.15 } },
    { id: 'long', stud: { ...stud, projectionMm: 29.5 } },
  ];
}
