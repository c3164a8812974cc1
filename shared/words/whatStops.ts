/**
 * What a finding does while it is not met. `stop`: Not OK, and no reason or statement gets a cover past it. `send-back`: the
 * verdict leads back, and a person may go on with a reason. `caution`: the verdict stays, and going on needs a reason, or
 * a statement once it was cut.
 */
export type Weight = 'stop' | 'send-back' | 'caution';
type StopOrCaution = Exclude<Weight, 'send-back'>;

/** How much each finding weighs that a shop may choose of, by its id. A crack and the minimum wall are not among them. */
export interface WhatStops {
  readonly inspection: StopOrCaution;
  readonly coverage: Weight;
  readonly 'doubtful-readings': Weight;
  readonly 'sure-of-it': Weight;
  readonly 'cleans-up': Weight;
  readonly 'gauge-due': StopOrCaution;
  readonly 'gauge-master': StopOrCaution;
  readonly chucking: StopOrCaution;
  readonly 'chucking-difference': StopOrCaution;
  readonly 'off-track': StopOrCaution;
  readonly 'cuts-left': StopOrCaution;
  readonly stiffness: Weight;
  readonly unbalance: StopOrCaution;
  readonly 'pad-thickness': StopOrCaution;
  readonly 'pads-coplanar': StopOrCaution;
  readonly 'pull-forward': StopOrCaution;
  readonly 'hub-engagement': StopOrCaution;
  readonly 'pilot-engaged': StopOrCaution;
  readonly 'pilot-clearance': StopOrCaution;
  readonly 'side-wall-height': StopOrCaution;
  readonly 'overall-height': StopOrCaution;
  readonly 'end-play': StopOrCaution;
  readonly 'after-runout': StopOrCaution;
  readonly 'after-sure': StopOrCaution;
  readonly 'after-marks': StopOrCaution;
  readonly 'after-depth': StopOrCaution;
  readonly 'after-planned': StopOrCaution;
  readonly 'after-doubtful': StopOrCaution;
  readonly 'after-coverage': StopOrCaution;
  readonly 'after-criteria': StopOrCaution;
  readonly 'list-item': StopOrCaution;
}

/** What each does where the shop chose nothing. */
export const USUAL_WEIGHT: WhatStops = {
  inspection: 'caution',
  coverage: 'send-back',
  'doubtful-readings': 'send-back',
  'sure-of-it': 'send-back',
  'cleans-up': 'send-back',
  'gauge-due': 'caution',
  'gauge-master': 'caution',
  chucking: 'caution',
  'chucking-difference': 'caution',
  'off-track': 'caution',
  'cuts-left': 'caution',
  stiffness: 'send-back',
  unbalance: 'caution',
  'pad-thickness': 'caution',
  'pads-coplanar': 'caution',
  'pull-forward': 'caution',
  'hub-engagement': 'caution',
  'pilot-engaged': 'caution',
  'pilot-clearance': 'caution',
  'side-wall-height': 'caution',
  'overall-height': 'caution',
  'end-play': 'caution',
  'after-runout': 'stop',
  'after-sure': 'caution',
  'after-marks': 'caution',
  'after-depth': 'caution',
  'after-planned': 'caution',
  'after-doubtful': 'caution',
  'after-coverage': 'caution',
  'after-criteria': 'caution',
  'list-item': 'caution',
};
