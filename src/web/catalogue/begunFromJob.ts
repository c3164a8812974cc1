import { asTyped, type Writing } from '../../../shared/quantity/fieldText.ts';
import { withSign } from '../../../shared/quantity/plainNumber.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import type { Job } from '../../../shared/words/job.ts';
import { MM_PER_UNIT } from '../../../shared/words/print.ts';
import type { Fields } from '../request/typed.ts';

const { studCount, studCircleDiameterMm, trackInnerDiameterMm, trackOuterDiameterMm } = FAMILY;
const { make, sideWall, bossDiameterMm, rimDiameterMm, padDiameterMm, padThicknessMm } = FAMILY;
/** What of a cover type can be seen and measured on the cover itself. */
const SEEN = {
  ...{ make, sideWall, studCount, studCircleDiameterMm, trackInnerDiameterMm, trackOuterDiameterMm },
  ...{ bossDiameterMm, rimDiameterMm, padDiameterMm, padThicknessMm },
};

/** The form of a new cover type, as far as a new cover measured in a job fills it, and how many walls it rests on. */
export interface BegunFromJob {
  readonly fields: Fields;
  readonly job: string;
  readonly walls: number;
}

/** As fine as a wall is read. */
const DECIMALS = { mm: 3, in: 4 };

/** null where no wall of the job was measured before the cut: the wall is what a type is begun for. */
export function begunFromJob(job: Job, writing: Writing): BegunFromJob | null {
  const family = job.sections.received?.body.family;
  const walls = job.readings.flatMap(({ pass, kind, valueMm, doubtful }) =>
    pass === 'before' && kind === 'wall' && valueMm !== null && !doubtful ? [valueMm] : [],
  );
  if (family === undefined || walls.length === 0) return null;
  const meanMm = walls.reduce((sum, mm) => sum + mm, 0) / walls.length;
  const { lengthUnit, decimalSign } = writing;
  const wall = String(Number((meanMm / MM_PER_UNIT[lengthUnit]).toFixed(DECIMALS[lengthUnit])));
  return {
    fields: {
      ...asTyped(SEEN, family, writing),
      [FAMILY.nominalWallMm.box]: withSign(wall, decimalSign),
      job: job.number,
    },
    job: job.number,
    walls: walls.length,
  };
}
