import { USUAL_WEIGHT, type WhatStops } from '../whatStops.ts';
import type { Fields } from './field.ts';

const WORDS = { stop: 'Stop', caution: 'Caution' } as const;
const AGAIN = {
  stop: 'Stop',
  'send-back': 'Measure again',
  caution: 'Caution',
} as const;

const CHANGE = { ...AGAIN, 'send-back': 'Change the cut' } as const;
const RING = { ...AGAIN, 'send-back': 'Weld a ring, or replace' } as const;

/** One choice, as it is while nobody chooses: stop or caution, or where the verdict can lead back, that too. */
function weighs<Id extends keyof WhatStops, Options extends object = typeof WORDS>(
  id: Id,
  label: string,
  options: Options = WORDS as Options & typeof WORDS,
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

/** What the shop lets stop a cover, and what warns. */
export const WHAT_STOPS = {
  coverage: {
    head: 'What stops and what warns, before the cut',
    folded: true,
    headHelp:
      'Needed to be stricter or looser than usual. Stop: no reason gets a cover past it. Measure again, change the cut, weld a ring: that is the verdict, and deciding otherwise needs a reason. Caution: the verdict stays, and deciding past a limit needs a reason. A crack and a wall below the minimum always stop. A decision keeps what was chosen when it was made. It is advice: nothing here makes a cover safe.',
    ...weighs('coverage', 'A station is not measured', AGAIN),
  },
  'doubtful-readings': weighs(
    'doubtful-readings',
    'A reading that looks like a slip is not confirmed',
    AGAIN,
  ),
  'sure-of-it': weighs('sure-of-it', 'Confidence in the wall is below what is required', AGAIN),
  'cleans-up': weighs('cleans-up', 'The planned cut leaves heat marks', CHANGE),
  stiffness: weighs('stiffness', 'A limit on bending is passed', RING),
  inspection: weighs('inspection', 'The inspection found a fault to repair'),
  'gauge-due': weighs('gauge-due', 'A gauge was overdue for calibration'),
  'gauge-master': weighs('gauge-master', 'A gauge was off its master, or not checked on it in time'),
  chucking: weighs('chucking', 'The cover was held in side-wall jaws'),
  'chucking-difference': weighs('chucking-difference', 'The chuck bends the cover'),
  'off-track': weighs('off-track', 'A station is off the friction surface'),
  'cuts-left': weighs('cuts-left', 'No wall is left for another cut'),
  unbalance: weighs('unbalance', 'Balance is past its limit'),
  'pad-thickness': weighs('pad-thickness', 'Pads are thinner than allowed'),
  'pads-coplanar': weighs('pads-coplanar', 'Pads are not in one plane'),
  'pull-forward': weighs('pull-forward', 'The pull-forward gap is past its limits'),
  'hub-engagement': weighs('hub-engagement', 'The impeller hub engages too little'),
  'pilot-engaged': weighs('pilot-engaged', 'Crank pilot engagement is past its limits'),
  'pilot-clearance': weighs('pilot-clearance', 'Crank pilot clearance is past its limits'),
  'side-wall-height': weighs('side-wall-height', 'Side wall height is past its limits'),
  'overall-height': weighs('overall-height', 'Overall height is past its limits'),
  'end-play': weighs('end-play', 'End play is past its limits'),
  'after-runout': {
    head: 'What stops and what warns, after the cut',
    folded: true,
    headHelp:
      'Needed to be stricter or looser than usual. Stop: the job can’t be signed until it is fixed. Caution: signing needs a statement. A crack and a wall below the minimum always stop. It is advice: nothing here makes a cover safe.',
    ...weighs('after-runout', 'Runout after the cut is past its limit'),
  },
  'after-sure': weighs('after-sure', 'Confidence after the cut is below what is required'),
  'after-marks': weighs('after-marks', 'Heat marks remain after the cut'),
  'after-depth': weighs('after-depth', 'More was cut than decided'),
  'after-planned': weighs('after-planned', 'Walls are not what the cut should have left'),
  'after-doubtful': weighs('after-doubtful', 'A reading after the cut is not confirmed'),
  'after-coverage': weighs('after-coverage', 'A station is not measured after the cut'),
  'after-criteria': weighs('after-criteria', 'The minimum wall was raised since the decision'),
  'list-item': weighs('list-item', 'An item of the inspection list is not OK'),
} as const satisfies Fields<WhatStops>;
