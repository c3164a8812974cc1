import type { Writing } from '../../../../shared/quantity/fieldText.ts';
import { UNIT_WORD } from '../../../../shared/words/print.ts';
import type { CatalogueKind } from '../../../../shared/words/terms.ts';
import type { ImportFault, ImportSeen } from '../../../../views/pages/catalogue/importPage.tsx';
import { differences } from '../../request/fieldLines.ts';
import { entryFields } from '../entryFields.ts';
import type { Preview } from './importPreview.ts';
import type { RowFault, RowRead } from './readRow.ts';

/** A page shows so many rows of each sort. */
const MOST_SHOWN = { added: 1000, changed: 100, asked: 100, refused: 200 };

type Refused = Extract<RowRead<CatalogueKind>, { is: 'refused' }>;

/** A preview as its page shows it, in the reader’s units. */
export function importSeen({ kind, mark, heads, rows }: Preview, writing: Writing): ImportSeen {
  const of = <Is extends RowRead<CatalogueKind>['is']>(is: Is) =>
    rows.filter((row): row is Extract<RowRead<CatalogueKind>, { is: Is }> => row.is === is);
  const isAsked = ({ faults }: Refused) => faults.every(({ confirms }) => confirms !== null);
  const [added, changed] = [of('added'), of('changed')];
  const asked = of('refused').filter(isAsked);
  const refused = of('refused').filter((row) => !isAsked(row));
  const { lengthUnit, decimalSign } = heads.writing;
  return {
    mark,
    writing: `lengths in ${UNIT_WORD[lengthUnit]} where nothing else is given, decimals with a ${decimalSign}`,
    unread: heads.unread,
    unchanged: of('unchanged').length,
    added: added.slice(0, MOST_SHOWN.added),
    changed: changed.slice(0, MOST_SHOWN.changed).map(({ row, name, entry, body, retired }) => ({
      row,
      name,
      href: `/catalogue/${kind}/${encodeURIComponent(entry.id)}`,
      lines: [
        ...(retired === entry.retired
          ? []
          : [{ label: 'In use', before: retired ? 'yes' : 'no', after: retired ? 'no' : 'yes' }]),
        ...differences(entryFields(kind, entry.body, writing), entryFields(kind, body, writing)),
      ],
    })),
    asked: asked.slice(0, MOST_SHOWN.asked).map(({ row, name, faults }) => ({
      row,
      name,
      faults: faults.map((fault) => faultSeen(fault, row)),
    })),
    refused: refused.slice(0, MOST_SHOWN.refused).map(({ row, name, faults }) => ({
      row,
      name,
      faults: faults.map((fault) => faultSeen(fault, row)),
    })),
    counts: {
      added: added.length,
      changed: changed.length,
      asked: asked.length,
      refused: refused.length,
    },
  };
}

function faultSeen({ column, head, sentence, confirms }: RowFault, row: number): ImportFault {
  return {
    where: [column, head].filter((part) => part !== null).join(', '),
    sentence,
    confirm: confirms && { name: `ok.${row}.${confirms.box}`, typed: confirms.text },
  };
}
