import type { Entry } from '../../../shared/words/catalogue.ts';
import type { ChosenGauge } from '../../../shared/words/job.ts';
import type { TypedForm } from '../request/typed.ts';

/** The gauges chosen on a form, as the catalog now has them: one for the wall, one for the face. */
export function chosenGauges(form: TypedForm, gauges: readonly Entry<'gauge'>[]): ChosenGauge[] {
  return (['wall', 'face'] as const).flatMap((use) => {
    const entry = gauges.find((one) => one.id === form.text(`${use}Gauge`));
    return entry ? [{ use, id: entry.id, revision: entry.revision, gauge: entry.body }] : [];
  });
}
