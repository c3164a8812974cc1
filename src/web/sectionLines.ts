import type { Job, SectionName } from '../../shared/words/job.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { cutSummary } from '../../views/pages/job/cut.tsx';
import { decisionSummary } from '../../views/pages/job/decide.tsx';
import { lookedSummary } from '../../views/pages/job/look.tsx';
import { measuredSummary } from '../../views/pages/job/measure.tsx';
import { receivedSummary } from '../../views/pages/job/receive.tsx';
import { signSummary } from '../../views/pages/job/sign.tsx';
import { studsSummary } from '../../views/pages/job/studs.tsx';
import { missingOf } from '../records/stage.ts';

/** How a section stands now, in lines to set beside what somebody typed meanwhile. */
export function sectionLines(job: Job, section: SectionName, unit: LengthUnit): string[] {
  const looked = job.sections.looked?.body;
  switch (section) {
    case 'received':
      return [
        receivedSummary(job),
        job.sections.received?.body.customerReference ?? '',
        job.sections.received?.body.note ?? '',
      ].filter((line) => line !== '');
    case 'looked':
      return [
        lookedSummary(job),
        ...(looked?.crackNote ? [looked.crackNote] : []),
        ...(looked?.items ?? []).filter((one) => one.note !== '').map((one) => `${one.item}: ${one.note}`),
      ];
    case 'setup': {
      const setup = job.sections.setup?.body;
      return [`gauge ${setup?.gauge || 'not said'}`, `chucking ${setup?.chucking ?? 'not said'}`];
    }
    case 'plan':
      return [`cut to try: ${job.sections.plan?.body.typed || 'the least that cleans up'}`];
    case 'cuts':
      return [cutSummary(job, unit)];
    case 'decision':
      return [decisionSummary(job, job.outcome === null), measuredSummary(job, 'before'), lookedSummary(job)];
    case 'studs':
      return [studsSummary(job)];
    case 'signature':
      return [signSummary(job, missingOf(job))];
  }
}
