import { USUAL_WEIGHT, type WhatStops } from '../whatStops.ts';
import type { Fields } from './field.ts';

const WORDS = { stop: 'Stop', caution: 'Caution' } as const;
const AGAIN = {
  stop: 'Stop',
  'send-back': 'Measure again',
  caution: 'Caution',
} as const;

/** Stop or caution, as it is while nobody chooses. */
function either<Id extends keyof WhatStops>(id: Id, label: string) {
  const usual = USUAL_WEIGHT[id];
  return {
    label,
    subject: `What "${label}" does`,
    kind: 'choice',
    options: WORDS,
    ifEmpty: usual,
    ifLeftOut: usual,
  } as const;
}

/** The same where the verdict can also lead back. */
function orBack<Id extends keyof WhatStops>(
  id: Id,
  label: string,
  options: typeof AGAIN | typeof CHANGE | typeof RING,
) {
  const usual = USUAL_WEIGHT[id];
  return {
    label,
    subject: `What "${label}" does`,
    kind: 'choice',
    options,
    ifEmpty: usual,
    ifLeftOut: usual,
  } as const;
}

const CHANGE = { ...AGAIN, 'send-back': 'Change the cut' } as const;
const RING = { ...AGAIN, 'send-back': 'Weld a ring, or replace' } as const;

/** What the shop lets stop a cover, and what warns. */
export const WHAT_STOPS = {
  coverage: {
    head: 'What stops and what warns, before the cut',
    folded: true,
    headHelp:
      'Needed to be stricter or looser than usual. Stop: no reason gets a cover past it. Measure again, change the cut, weld a ring: that is the verdict, and deciding otherwise needs a reason. Caution: the verdict stays, and deciding past a limit needs a reason. A crack and a wall below the minimum always stop. A decision keeps what was chosen when it was made. It is advice: nothing here makes a cover safe.',
    ...orBack('coverage', 'A station is not measured', AGAIN),
  },
  'doubtful-readings': orBack(
    'doubtful-readings',
    'A reading that looks like a slip is not confirmed',
    AGAIN,
  ),
  'sure-of-it': orBack('sure-of-it', 'Confidence in the wall is below what is required', AGAIN),
  'cleans-up': orBack('cleans-up', 'The planned cut leaves heat marks', CHANGE),
  stiffness: orBack('stiffness', 'A limit on bending is passed', RING),
  inspection: either('inspection', 'The inspection found a fault to repair'),
  'gauge-due': either('gauge-due', 'A gauge was overdue for calibration'),
  'gauge-master': either('gauge-master', 'A gauge was off its master, or not checked on it in time'),
  chucking: either('chucking', 'The cover was held in side-wall jaws'),
  'chucking-difference': either('chucking-difference', 'The chuck bends the cover'),
  'off-track': either('off-track', 'A station is off the friction surface'),
  'cuts-left': either('cuts-left', 'No wall is left for another cut'),
  unbalance: either('unbalance', 'Balance is past its limit'),
  'pad-thickness': either('pad-thickness', 'Pads are thinner than allowed'),
  'pads-coplanar': either('pads-coplanar', 'Pads are not in one plane'),
  'pull-forward': either('pull-forward', 'The pull-forward gap is past its limits'),
  'hub-engagement': either('hub-engagement', 'The impeller hub engages too little'),
  'pilot-engaged': either('pilot-engaged', 'Crank pilot engagement is past its limits'),
  'pilot-clearance': either('pilot-clearance', 'Crank pilot clearance is past its limits'),
  'side-wall-height': either('side-wall-height', 'Side wall height is past its limits'),
  'overall-height': either('overall-height', 'Overall height is past its limits'),
  'end-play': either('end-play', 'End play is past its limits'),
  'after-runout': {
    head: 'What stops and what warns, after the cut',
    folded: true,
    headHelp:
      'Needed to be stricter or looser than usual. Stop: the job can’t be signed until it is fixed. Caution: signing needs a statement. A crack and a wall below the minimum always stop. It is advice: nothing here makes a cover safe.',
    ...either('after-runout', 'Runout after the cut is past its limit'),
  },
  'after-sure': either('after-sure', 'Confidence after the cut is below what is required'),
  'after-marks': either('after-marks', 'Heat marks remain after the cut'),
  'after-depth': either('after-depth', 'More was cut than decided'),
  'after-planned': either('after-planned', 'Walls are not what the cut should have left'),
  'after-doubtful': either('after-doubtful', 'A reading after the cut is not confirmed'),
  'after-coverage': either('after-coverage', 'A station is not measured after the cut'),
  'after-criteria': either('after-criteria', 'The minimum wall was raised since the decision'),
  'list-item': either('list-item', 'An item of the inspection list is not OK'),
} as const satisfies Fields<WhatStops>;
