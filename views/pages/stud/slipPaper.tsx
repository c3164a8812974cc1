import { type KeptSlip, slipName } from '../../../shared/words/stud/slip.ts';
import type { Frame } from '../../frame.ts';
import { PaperDocument } from '../job/paper/paperDocument.tsx';
import { SlipSheet } from './slipSheet.tsx';

/** A slip as a document of its own: it is saved as this, whole. */
export function SlipPaper({ frame, slip, styleHash }: { frame: Frame; slip: KeptSlip; styleHash: string }) {
  const number = slipName(slip.number);
  return (
    <PaperDocument
      printing={{ frame, styleHash, asSigned: true }}
      number={number}
      paper="slip"
      title={`Counter slip ${number}`}
    >
      <SlipSheet
        slip={slip.answered}
        unit={slip.asked.unit}
        shopName={frame.shopName}
        customerReference={slip.customerReference}
        who={slip.who}
        at={slip.at}
        number={number}
      />
    </PaperDocument>
  );
}
