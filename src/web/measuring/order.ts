import { ASKS, BYS, type Order, REPEATS, ROUNDS, TIMES } from '../../../shared/measuring/steps.ts';
import type { Job, Pass } from '../../../shared/words/job.ts';
import type { Fields } from '../request/typed.ts';

/** What was chosen on this tablet, as its cookie carries it: `numbered.kind.2.rounds.wfm`, what is asked only for before the cut. */
export function writeOrder({ round, by, times, repeats, asks }: Order, pass: Pass, before: string): string {
  const asksBefore = pass === 'before' ? asks : (before.split('.')[4] ?? '');
  return [round, by, times, repeats, asksBefore].join('.');
}

/** As the form or the address says, else as was chosen on this tablet, else as most measure. */
export function orderOf(fields: Fields, remembered: string, job: Job, pass: Pass): Order {
  const [round, by, times, repeats, asks] = remembered.split('.');
  const chosen = <T extends string | number>(all: readonly T[], ...said: (string | undefined)[]) =>
    said.flatMap((one) => all.filter((value) => String(value) === one))[0];
  return {
    round: chosen(ROUNDS, fields.round, round) ?? 'numbered',
    by: chosen(BYS, fields.by, by) ?? 'kind',
    times: chosen(TIMES, fields.times, times) ?? 1,
    repeats: chosen(REPEATS, fields.repeats, repeats) ?? 'together',
    asks: chosen(ASKS, fields.asks, pass === 'before' ? asks : undefined) ?? asksUsually(job, pass),
  };
}

/** After the cut the face is read again where the shop limits its runout. */
function asksUsually(job: Job, pass: Pass): Order['asks'] {
  if (pass === 'before') return 'wfm';
  return job.sections.decision?.body.criteria.faceRunoutLimitMm == null ? 'w' : 'wf';
}
