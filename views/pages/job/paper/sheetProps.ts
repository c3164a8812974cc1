import type { Bending } from '../../../../shared/words/bending/bending.ts';
import type { CoverCheck, CutPlanAnswer } from '../../../../shared/words/cover.ts';
import type { Job } from '../../../../shared/words/job.ts';
import type { PaperFindings, PaperWalls } from '../../../../shared/words/paper.ts';
import type { Photo } from '../../../../shared/words/photo.ts';
import type { CoverDrawingShape } from '../../../parts/coverAnswer.tsx';
import type { QrModules } from '../../../parts/qr.tsx';
import type { Printing } from './paperDocument.tsx';

export interface SheetProps {
  readonly printing: Printing;
  readonly job: Job;
  readonly shape: CoverDrawingShape | null;
  /** The one kept with the decision that stands, else as the readings were worked out under the limits of that day. */
  readonly check: CoverCheck | null;
  readonly walls: PaperWalls;
  readonly findings: PaperFindings;
  /** As it is set, with its unit; null where nothing is to be cut. */
  readonly cut: string | null;
  readonly plan: CutPlanAnswer | null;
  /** How it bends, in a line; null where that was not worked out. */
  readonly bending: Bending | null;
  /** The limits the answers stand on, field by field. */
  readonly limits: readonly { readonly label: string; readonly value: string }[];
  /** The cover type's figures are the demo's, though the job is the shop's own. */
  readonly madeUpCover: boolean;
  readonly photos: readonly Photo[];
  readonly qr: QrModules;
  readonly asItWas: number | null;
}
