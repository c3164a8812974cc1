import type { DecisionKind, ReplacedStudAsked, Stage } from '../../shared/words/job.ts';
import type { Joint } from '../../shared/words/stud/stud.ts';
import { inches, us } from './inches.ts';

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
    /** Replaced studs, and how. */
    readonly replaced?: readonly ReplacedStudAsked[];
    /** The one tried first, which won’t work. */
    readonly before?: { readonly studId: string; readonly note: string };
  };
}

/** One for every state a job can be in, and every way a cover can turn out. All invented. */
export const demoJobs: readonly DemoJob[] = [
  {
    coverId: '1125-4-plain-bright',
    receivedOn: '2026-09-14',
    customerReference: 'Demo customer 1',
    upTo: 'signed',
    studs: {
      stackId: 'one-piece-four-3-8-24',
      studId: 'short-3-8-24',
      note: '',
      joint: {
        torqueNm: us(27, 'torque'),
        nutFactor: 0.2,
        scatter: 0.25,
        friction: 0.15,
        engineTorqueNm: us(185, 'torque'),
        serviceFactor: 2,
        studCount: 4,
        studCircleDiameterMm: inches(11.25),
        youngMPa: null,
        prevailingNm: null,
        studsUsedBefore: false,
        surface: 'rz-10-to-40',
        retightened: false,
      },
    },
  },
  {
    coverId: '1125-4-plain-spent',
    receivedOn: '2026-09-21',
    customerReference: 'Demo customer 2',
    upTo: 'signed',
  },
  {
    coverId: '1125-4-plain-cracked',
    receivedOn: '2026-09-28',
    customerReference: 'Demo customer 3',
    upTo: 'signed',
  },
  {
    coverId: '1050-4-ribbed-thin',
    receivedOn: '2026-10-05',
    customerReference: 'Demo customer 4',
    upTo: 'to-cut',
    decision: 'face-and-ring',
    reason:
      'Little wall to spare, and this cover came back with heat marks once before. Its type allows a stiffening ring; without one it would come back.',
  },
  {
    coverId: '1125-4-billet-unread',
    receivedOn: '2026-10-08',
    customerReference: 'Demo customer 5',
    upTo: 'to-sign',
    studs: {
      stackId: 'two-piece-four-3-8-24',
      studId: 'long-3-8-24',
      note: 'Long ones ordered.',
      replaced: [
        {
          stud: 3,
          how: 'welded',
          leanMm: inches(0.003),
          leanAtMm: inches(0.8),
          offMm: inches(0.004),
          filletMm: inches(0.012),
          provedNm: us(30, 'torque'),
          heldIt: true,
          note: 'The old one was stripped.',
        },
      ],
      before: {
        studId: 'short-3-8-24',
        note: 'The short studs it came with: the nuts can’t be started by hand on this two-piece flexplate.',
      },
    },
  },
  {
    coverId: '1125-4-plain-keen',
    receivedOn: '2026-10-12',
    customerReference: 'Demo customer 6',
    upTo: 'to-decide',
  },
  {
    coverId: '1050-4-ribbed-shy',
    receivedOn: '2026-10-15',
    customerReference: 'Demo customer 7',
    upTo: 'to-decide',
  },
  {
    coverId: '1150-6-billet-one-ring',
    receivedOn: '2026-10-19',
    customerReference: 'Demo customer 8',
    upTo: 'to-decide',
  },
  {
    coverId: '1150-6-billet-untested',
    receivedOn: '2026-10-22',
    customerReference: 'Demo customer 9',
    upTo: 'to-decide',
  },
  {
    coverId: '1150-6-billet-doubted',
    receivedOn: '2026-10-26',
    customerReference: 'Demo customer 10',
    upTo: 'to-decide',
  },
  {
    coverId: '1000-3-plain-unlimited',
    receivedOn: '2026-10-29',
    customerReference: 'Demo customer 11',
    upTo: 'to-decide',
  },
  {
    coverId: '1150-6-ribbed-close',
    receivedOn: '2026-11-02',
    customerReference: 'Demo customer 12',
    upTo: 'to-decide',
  },
  {
    coverId: '1000-3-ribbed-leaning',
    receivedOn: '2026-11-05',
    customerReference: 'Demo customer 13',
    upTo: 'to-decide',
  },
  {
    coverId: '1125-4-billet-one-way',
    receivedOn: '2026-11-09',
    customerReference: 'Demo customer 14',
    upTo: 'to-decide',
  },
  {
    coverId: '1150-6-ribbed-stripped',
    receivedOn: '2026-11-12',
    customerReference: 'Demo customer 15',
    upTo: 'to-sign',
  },
  {
    coverId: '1050-4-ribbed-waiting',
    receivedOn: '2026-11-16',
    customerReference: 'Demo customer 16',
    upTo: 'to-measure',
  },
  {
    coverId: '1050-4-ribbed-waiting',
    receivedOn: '2026-11-18',
    customerReference: 'Demo customer 17',
    upTo: 'to-look',
  },
  {
    coverId: '1125-4-plain-bright',
    receivedOn: '2026-11-19',
    customerReference: 'Demo customer 18',
    upTo: 'to-verify',
  },
  {
    coverId: '1025-3-plain-faced',
    receivedOn: '2026-11-21',
    customerReference: 'Demo customer 19',
    upTo: 'to-decide',
  },
];
