import type { RightGauge } from '../trends/wrong.ts';
import type { Fields } from './field.ts';

/** What is known of a gauge that was wrong: its readings are worked out again with it. */
export const RIGHT_GAUGE = {
  biasMm: {
    label: 'The gauge read too much by',
    help: 'Of a gauge: taken off every wall it read. Below zero where it read too little; blank: not known',
    box: 'bias',
    kind: 'height',
    optional: true,
  },
  calibrationUMm: {
    label: 'Right calibration uncertainty U',
    help: 'Of a gauge: as its new certificate says, k as in the catalog. Blank: as it was',
    box: 'rightU',
    kind: 'extent',
    optional: true,
  },
} as const satisfies Fields<RightGauge>;
