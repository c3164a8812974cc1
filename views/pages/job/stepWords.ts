import type { SectionName, Stage } from '../../../shared/words/job.ts';

export const STAGE_WORD: Readonly<Record<Stage, string>> = {
  'to-look': 'To inspect',
  'to-measure': 'To measure',
  'to-decide': 'To decide',
  'to-cut': 'To cut',
  'to-verify': 'To re-measure',
  'to-sign': 'To sign',
  signed: 'Signed',
  closed: 'Closed',
};

/** The darkened layer, as seen after a pass. */
export const LAYER_WORD = { gone: 'heat mark gone', dark: 'heat mark remaining' } as const;

export { ITEM_WORD } from '../../../shared/words/job.ts';

export const SECTION_WORD: Readonly<Record<SectionName | 'reading' | 'photo', string>> = {
  received: 'received',
  looked: 'inspected',
  inspected: 'inspection list',
  setup: 'measuring setup',
  plan: 'planned cut',
  decision: 'decision',
  cuts: 'cuts made',
  studs: 'studs',
  signature: 'signature',
  closed: 'closed or opened again',
  reading: 'readings',
  photo: 'photo',
};
