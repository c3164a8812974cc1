import type { Writing } from '../../../shared/quantity/fieldText.ts';
import type { JobSections, Reading, RevisionShown, SectionName } from '../../../shared/words/job.ts';
import { DECISION_WORD, FIT_WORD, VERDICT_WORD } from '../../../shared/words/verdicts.ts';
import type { RevisionTold } from '../../../views/pages/job/section.tsx';
import { SECTION_WORD } from '../../../views/pages/job/stepWords.ts';
import { differences } from '../request/fieldLines.ts';
import { readingChanges } from './readingChanges.ts';
import { isSection, sectionFields } from './sectionFields.ts';

/** What every revision of a job changed, in plain words, oldest first. */
export function revisionsInWords(revisions: readonly RevisionShown[], writing: Writing): RevisionTold[] {
  const all = revisions.flatMap((one) => (one.what === 'reading' ? (one.body as readonly Reading[]) : []));
  const newest: Partial<Record<SectionName, JobSections[SectionName]>> = {};
  return revisions.map(({ body, ...line }): RevisionTold => {
    if (line.what === 'reading') {
      const cover = (newest.received as JobSections['received'] | undefined)?.family;
      return { ...line, ...readingChanges(body as readonly Reading[], all, cover, writing) };
    }
    const section = line.what;
    if (!isSection(section)) return { ...line, summary: SECTION_WORD[section], changes: [] };
    const was = newest[section] ?? null;
    const is = body as JobSections[SectionName];
    newest[section] = is;
    return {
      ...line,
      summary: summaryOf(section, is),
      changes: differences(sectionFields(section, was, writing), sectionFields(section, is, writing)),
    };
  });
}

/** What kind of change it was, and for a decision its verdict, in one line. */
function summaryOf(section: SectionName, body: JobSections[SectionName]): string {
  if (section === 'decision') {
    const { decision, check, reason } = body as JobSections['decision'];
    const because = reason === '' ? '' : `, because: ${reason}`;
    return `decision: ${DECISION_WORD[decision]}; the verdict was: ${VERDICT_WORD[check.verdict]}${because}`;
  }
  if (section === 'studs') {
    const { stud, stack, check } = body as JobSections['studs'];
    return `studs: ${stud.name} in ${stack.name}, ${FIT_WORD[check.fits]}`;
  }
  if (section === 'closed') return (body as JobSections['closed']).closed ? 'closed' : 'opened again';
  return SECTION_WORD[section];
}
