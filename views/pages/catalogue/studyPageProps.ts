import type { Entry } from '../../../shared/words/catalogue.ts';
import type { KeptStudy } from '../../../shared/words/gauges/gaugeStudies.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { Frame } from '../../frame.ts';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';

/** A study while it is read, and when it is over. */
export interface StudyPageProps {
  readonly frame: Frame;
  readonly gauge: Entry<'gauge'>;
  readonly study: KeptStudy;
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly doubts: readonly DoubtedLength[];
  /** What was refused, if anything was. */
  readonly act: 'read' | 'withdraw' | 'stop';
}
