import type { Frame } from '../../../views/frame.ts';
import { SlipPaper } from '../../../views/pages/stud/slipPaper.tsx';
import { renderPage } from '../../../views/render.ts';
import type { PrintSlip } from '../../records/slips/slips.ts';
import { slipPartsToday } from '../job/printedParts.ts';

/** The paper a slip is saved as. */
export function printsWith(frame: Frame): PrintSlip {
  return (slip) => {
    const { styleHash, parts } = slipPartsToday();
    return { html: renderPage(SlipPaper({ frame, slip, styleHash })), parts };
  };
}
