import type { Finding } from '../../shared/words/finding.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { FindingList } from './findingList.tsx';

export interface FindingsFoldedProps {
  readonly findings: readonly Finding[];
  /** Ids of those seen at once whatever they say; a failing or cautioning one always is. */
  readonly lead: readonly string[];
  readonly unit: LengthUnit;
  readonly id: string;
  /** Which page of "how it is worked out" they belong to. */
  readonly subject: 'cover' | 'studs';
}

/** What decides, in sight; everything else that was looked at, one press away. */
export function FindingsFolded({ findings, lead, unit, id, subject }: FindingsFoldedProps) {
  const inSight = (finding: Finding) =>
    finding.status === 'fail' || finding.status === 'caution' || lead.includes(finding.id);
  const rest = findings.filter((finding) => !inSight(finding));
  const notChecked = rest.filter((finding) => finding.status === 'not-checked').length;
  return (
    <>
      <FindingList findings={findings.filter(inSight)} unit={unit} id={id} />
      {rest.length > 0 && (
        <details class="more-findings">
          <summary>
            {rest.length} more looked at{notChecked > 0 && `, ${notChecked} of them not checked`}
          </summary>
          <FindingList findings={rest} unit={unit} id={id} />
        </details>
      )}
      <p>
        <a class="button quiet" href={`/how/${subject}`}>
          How it is worked out
        </a>
      </p>
    </>
  );
}
