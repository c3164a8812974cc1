import { dayIn } from '../../../../shared/words/day.ts';
import { UNIT_WORD } from '../../../../shared/words/print.ts';
import { TitleBlock } from '../../../parts/titleBlock.tsx';
import { day } from '../../../parts/when.tsx';
import type { SheetProps } from './sheetProps.ts';

/** The foot of a sheet, after ISO 7200. */
export function SheetTitleBlock({
  printing,
  job,
  sheet,
}: Pick<SheetProps, 'printing' | 'job'> & { sheet: string }) {
  const { frame } = printing;
  const { received, decision, signature } = job.sections;
  const coverNumber = received?.body.coverNumber ?? '';
  const by = (kept: { readonly who: string; readonly at: string } | null) =>
    kept === null ? '' : `${kept.who}, ${day(dayIn(frame.timeZone, kept.at))}`;
  return (
    <TitleBlock
      cells={[
        { label: 'Shop', value: frame.shopName },
        {
          label: coverNumber === '' ? 'Cover type' : 'Cover type, cover number',
          value: [received?.body.family.name ?? '', coverNumber].filter((one) => one !== '').join(', '),
        },
        { label: 'Customer', value: received?.body.customerReference ?? '' },
        { label: 'Job', value: <b>{job.number}</b> },
        { label: 'Sheet', value: sheet },
        { label: 'Received', value: received ? `${received.who}, ${day(received.body.receivedOn)}` : '' },
        { label: 'Decided', value: job.outcome === null ? '' : by(decision) },
        { label: 'Signed', value: job.stage === 'signed' ? by(signature) : '' },
        { label: 'Document, units', value: `Job sheet, ${UNIT_WORD[frame.lengthUnit]}` },
        { label: 'Revision', value: `${job.revision}, ${day(dayIn(frame.timeZone, job.changedAt))}` },
      ]}
    />
  );
}
