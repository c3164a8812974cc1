import type { SignedPrint } from '../../../shared/words/paper.ts';
import { listInWords } from '../../../shared/words/print.ts';
import { When } from '../../parts/when.tsx';
import type { RevisionTold } from './section.tsx';

interface Chapter {
  readonly title: string;
  readonly who: readonly string[];
  readonly from: RevisionTold;
  readonly to: RevisionTold;
}

const TITLE: Partial<Record<RevisionTold['what'], string>> = {
  received: 'Received',
  looked: 'Inspected',
  decision: 'Decided',
  cuts: 'Cut',
  studs: 'Studs',
  signature: 'Signed',
};

/** By the summary of its revision. */
const CLOSING: Readonly<Record<string, string>> = { closed: 'Closed', 'opened again': 'Opened again' };
const SAYS_WHY: readonly string[] = ['Amended', 'Closed', 'Opened again'];

/** What happened, oldest first: one entry for all that was done of a kind without anything else between. */
function chaptersOf(revisions: readonly RevisionTold[]): readonly Chapter[] {
  const chapters: Chapter[] = [];
  let [cut, signed] = [false, false];
  for (const one of revisions) {
    const measured = one.what === 'reading' ? (cut ? 'Re-measured' : 'Measured') : undefined;
    const title =
      one.what === 'closed'
        ? CLOSING[one.summary]
        : signed && one.what !== 'signature'
          ? 'Amended'
          : (measured ?? TITLE[one.what]);
    if (one.what === 'cuts') cut = true;
    if (one.what === 'signature') signed = true;
    if (title === undefined) continue;
    const last = chapters.at(-1);
    if (last?.title === title && title !== 'Signed') {
      chapters[chapters.length - 1] = { ...last, who: [...new Set([...last.who, one.who])], to: one };
    } else chapters.push({ title, who: [one.who], from: one, to: one });
  }
  return chapters;
}

/** The job's story first: who did what and when, in a line each, with the papers as they were signed. */
export function JobStory(props: {
  /** Oldest first. */
  revisions: readonly RevisionTold[];
  prints: readonly SignedPrint[];
  href: string;
}) {
  const { revisions, prints, href } = props;
  return (
    <ol class="history" id="story">
      {chaptersOf(revisions).map(({ title, who, from, to }) => (
        <li>
          <b>{title}</b> by {listInWords(who)}, <When at={to.at} />
          {title === 'Decided' && <>: {to.summary}</>}
          {SAYS_WHY.includes(title) && to.why !== '' && <>: {to.why}</>}{' '}
          <a href={`${href}/history/${to.revision}`}>
            {from === to ? `revision ${to.revision}` : `revisions ${from.revision} to ${to.revision}`}
          </a>
          {title === 'Signed' && prints.some(({ revision }) => revision === to.revision) && (
            <>
              {' · '}
              <a href={`${href}/sheet/signed?revision=${to.revision}`}>sheet as signed</a>
              {' · '}
              <a href={`${href}/tag/signed?revision=${to.revision}`}>tag as signed</a>
            </>
          )}
        </li>
      ))}
    </ol>
  );
}
