import type { CatalogueGauge } from '../../../shared/words/catalogue.ts';
import type { Job, Reading } from '../../../shared/words/job.ts';
import type { RightGauge } from '../../../shared/words/trends/wrong.ts';
import { figuresOf, figuresTyped } from '../gauges.ts';

/** What was wrong of a gauge, from which moment on. */
export interface WrongGauge extends RightGauge {
  readonly id: string;
  readonly from: string;
}

/**
 * A job as it would have been read with what is right of its gauge: the bias is taken off every wall that gauge read from
 * then on, and its right uncertainty counts instead of the one of then. A bias of an indicator changes nothing: a face is
 * read against itself.
 */
export function readAgain(job: Job, { id, from, biasMm, calibrationUMm }: WrongGauge): Job {
  const { setup } = job.sections;
  const chosen = setup?.body.gauges ?? [];
  const wrong = chosen.filter((one) => one.id === id);
  if (setup === null || wrong.length === 0) return job;
  const others = chosen.filter((one) => one.id !== id).map(({ gauge }) => nameOf(gauge));
  const readsWalls = wrong.some(({ use }) => use === 'wall');
  const isRead = (one: Reading) =>
    readsWalls && one.kind === 'wall' && one.at >= from && !others.includes(one.gauge.trim().toLowerCase());
  const right = (mm: number) => Number((mm - (biasMm ?? 0)).toFixed(9));
  const put = (one: Reading): Reading =>
    isRead(one) && one.valueMm !== null ? { ...one, valueMm: right(one.valueMm) } : one;
  const gauges = chosen.map((one) =>
    one.id === id && calibrationUMm !== null ? { ...one, gauge: { ...one.gauge, calibrationUMm } } : one,
  );
  const typed = figuresTyped(setup.body.gaugeFigures, chosen);
  return {
    ...job,
    readings: job.readings.map(put),
    sections: {
      ...job.sections,
      setup: { ...setup, body: { ...setup.body, gauges, gaugeFigures: figuresOf(typed, gauges) } },
    },
  };
}

function nameOf({ name }: CatalogueGauge): string {
  return name.trim().toLowerCase();
}
