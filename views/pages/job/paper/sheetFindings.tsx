import { dayIn } from '../../../../shared/words/day.ts';
import { FOUND_WHEN, type FoundWhen, type PaperFinding } from '../../../../shared/words/paper.ts';
import { Sign } from '../../../parts/form/sign.tsx';
import { day } from '../../../parts/when.tsx';
import type { SheetProps } from './sheetProps.ts';

const WHEN_WORD: Readonly<Record<FoundWhen, string>> = {
  before: 'Before the cut',
  list: 'Inspection list',
  after: 'After the cut',
  studs: 'Studs',
};

/** What is not OK on lines of its own, each with who overruled it; what was not checked, and what is OK by name. */
export function SheetFindings(props: SheetProps) {
  const { notOk, ok } = props.findings;
  // What is said of each replaced stud alike is said once.
  const open = notOk.filter(
    ({ finding }, i) =>
      finding.status === 'not-checked' &&
      notOk.findIndex((one) => one.finding.sentence === finding.sentence) === i,
  );
  const against = notOk.filter(({ finding }) => finding.status !== 'not-checked');
  const passed = FOUND_WHEN.filter((when) => ok[when].length > 0);
  if (notOk.length + passed.length === 0) return null;
  return (
    <section class="found">
      {against.length > 0 && <Against {...props} against={against} />}
      {open.length > 0 && (
        <div class="found-block">
          <Sign status="not-checked" word="shown" />
          <p>
            {open.map(({ finding }) => (
              <>
                <b>{finding.title}:</b> {finding.sentence}{' '}
              </>
            ))}
          </p>
        </div>
      )}
      {passed.length > 0 && (
        <div class="found-block">
          <Sign status="pass" word="shown" />
          <p>
            {passed.map((when) => (
              <>
                {passed.length > 1 && <b>{WHEN_WORD[when]}: </b>}
                {[...new Set(ok[when])].join(' · ')}.{' '}
              </>
            ))}
          </p>
        </div>
      )}
    </section>
  );
}

function Against({ printing, check, against }: SheetProps & { against: readonly PaperFinding[] }) {
  const because = check?.verdict === 'replace' ? check.because : '';
  const overruled = against.some((one) => one.overruled !== null);
  const why = overrulings(against, printing.frame.timeZone);
  return (
    <table>
      <caption class="unseen">What is not OK</caption>
      <thead>
        <tr>
          <th scope="col">State</th>
          <th scope="col">What</th>
          <th scope="col">Found and limit</th>
          {overruled && <th scope="col">Overruled by, and why</th>}
        </tr>
      </thead>
      <tbody>
        {against.map(({ finding, when }, i) => (
          <tr>
            <td>
              <Sign status={finding.status} word="shown" />
            </td>
            <th scope="row">
              {finding.title}
              {when === 'after' && <small>after the cut</small>}
            </th>
            <td>{because.includes(finding.sentence) ? 'See the reason at the top.' : finding.sentence}</td>
            {overruled && <td>{why[i]}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Each reason is quoted once; the signer's words have a place of their own. */
function overrulings(against: readonly PaperFinding[], timeZone: string): readonly string[] {
  const quoted = new Set<string>();
  return against.map(({ when, overruled }) => {
    if (overruled === null) return '';
    const who = `${overruled.who}, ${day(dayIn(timeZone, overruled.at))}`;
    if (when === 'after') return `${who}: see the statement`;
    const again = quoted.has(overruled.why);
    quoted.add(overruled.why);
    return again ? `${who}: as above` : `${who}: “${overruled.why}”`;
  });
}
