import type { DecisionKind, ReplacedStudAsked, Stage } from '../../shared/words/job.ts';
import type { Joint } from '../../shared/words/stud.ts';

/** How far an invented job has come, and what was decided about studs. */
export interface DemoJob {
  readonly coverId: string;
  readonly receivedOn: string;
  readonly customerReference: string;
  readonly upTo: Stage;
  readonly decision?: DecisionKind;
  readonly reason?: string;
  readonly studs?: {
    readonly stackId: string;
    readonly studId: string;
    readonly note: string;
    /** How it was tightened; the vehicle and its maker's torque are invented. */
    readonly joint?: Joint;
    /** Studs that were set anew, and how. */
    readonly replaced?: readonly ReplacedStudAsked[];
    /** The one tried first, which does not do. */
    readonly before?: { readonly studId: string; readonly note: string };
  };
}

/** One for every state a job can be in, and every way a cover can turn out. All invented. */
export const demoJobs: readonly DemoJob[] = [
  {
    coverId: 'kestrel-bright',
    receivedOn: '2026-09-14',
    customerReference: 'shelf order 12',
    upTo: 'signed',
    studs: {
      stackId: 'one-piece-four-3-8-24',
      studId: 'short-3-8-24',
      note: '',
      joint: {
        torqueNm: 36,
        nutFactor: 0.2,
        scatter: 0.25,
        friction: 0.15,
        engineTorqueNm: 250,
        serviceFactor: 2,
        studCount: 4,
        studCircleDiameterMm: 286,
        youngMPa: null,
        prevailingNm: null,
        studsUsedBefore: false,
        surface: 'rz-10-to-40',
        retightened: false,
      },
    },
  },
  {
    coverId: 'kestrel-spent',
    receivedOn: '2026-09-21',
    customerReference: 'delivery van, blue',
    upTo: 'signed',
  },
  {
    coverId: 'kestrel-cracked',
    receivedOn: '2026-09-28',
    customerReference: 'came in with 1002',
    upTo: 'signed',
  },
  {
    coverId: 'rowan-thin',
    receivedOn: '2026-10-05',
    customerReference: 'tow truck',
    upTo: 'to-cut',
    decision: 'face-and-ring',
    reason:
      'The wall passes with little to spare, and this cover came back with marks once before. The family allows a ring; only worth it with one.',
  },
  {
    coverId: 'linden-unread',
    receivedOn: '2026-10-08',
    customerReference: 'counter 3',
    upTo: 'to-sign',
    studs: {
      stackId: 'two-piece-four-3-8-24',
      studId: 'long-3-8-24',
      note: 'Long ones ordered.',
      replaced: [
        {
          stud: 3,
          how: 'welded',
          leanMm: 0.08,
          leanAtMm: 20,
          offMm: 0.1,
          filletMm: 0.3,
          provedNm: 40,
          heldIt: true,
          note: 'The old one was stripped.',
        },
      ],
      before: {
        studId: 'short-3-8-24',
        note: 'The short studs it came with: the nuts cannot be started on this two-piece flexplate.',
      },
    },
  },
  { coverId: 'kestrel-keen', receivedOn: '2026-10-12', customerReference: 'counter 5', upTo: 'to-decide' },
  { coverId: 'rowan-shy', receivedOn: '2026-10-15', customerReference: 'shelf', upTo: 'to-decide' },
  { coverId: 'heron-one-ring', receivedOn: '2026-10-19', customerReference: 'farm lorry', upTo: 'to-decide' },
  { coverId: 'heron-untested', receivedOn: '2026-10-22', customerReference: 'shelf', upTo: 'to-decide' },
  { coverId: 'heron-doubted', receivedOn: '2026-10-26', customerReference: 'counter 9', upTo: 'to-decide' },
  {
    coverId: 'alder-unlimited',
    receivedOn: '2026-10-29',
    customerReference: 'school bus spare',
    upTo: 'to-decide',
  },
  { coverId: 'curlew-close', receivedOn: '2026-11-02', customerReference: 'shelf', upTo: 'to-decide' },
  { coverId: 'wren-leaning', receivedOn: '2026-11-05', customerReference: 'counter 11', upTo: 'to-decide' },
  { coverId: 'linden-one-way', receivedOn: '2026-11-09', customerReference: 'shelf', upTo: 'to-decide' },
  { coverId: 'curlew-stripped', receivedOn: '2026-11-12', customerReference: 'quarry', upTo: 'to-sign' },
  { coverId: 'rowan-waiting', receivedOn: '2026-11-16', customerReference: 'counter 2', upTo: 'to-measure' },
  { coverId: 'rowan-waiting', receivedOn: '2026-11-18', customerReference: 'counter 4', upTo: 'to-look' },
  {
    coverId: 'kestrel-bright',
    receivedOn: '2026-11-19',
    customerReference: 'shelf order 13',
    upTo: 'to-verify',
  },
  {
    coverId: 'sandpiper-faced',
    receivedOn: '2026-11-21',
    customerReference: 'hill road garage',
    upTo: 'to-decide',
  },
];
