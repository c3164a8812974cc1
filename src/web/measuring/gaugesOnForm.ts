import type { Entry } from '../../../shared/words/catalogue.ts';
import type { ChosenGauge } from '../../../shared/words/job.ts';
import type { Seen } from '../../records/catalogue.ts';
import { type Fields, revisionIn, type TypedForm } from '../request/typed.ts';

/** Before the id of a gauge: the revision the form showed it at. */
const GAUGE_REVISION = 'gaugeRevision.';

/** Of the gauges chosen, at which revision the form showed each. */
export function gaugesSeen(fields: Fields, chosen: readonly ChosenGauge[]): readonly Seen[] {
  return chosen.flatMap(({ id }) => {
    const revision = revisionIn(fields[`${GAUGE_REVISION}${id}`]);
    return revision > 0 ? [{ kind: 'gauge' as const, id, revision }] : [];
  });
}

/** The gauges chosen on a form, as the catalog now has them: one for the wall, one for the face. */
export function chosenGauges(form: TypedForm, gauges: readonly Entry<'gauge'>[]): ChosenGauge[] {
  return (['wall', 'face'] as const).flatMap((use) => {
    const entry = gauges.find((one) => one.id === form.text(`${use}Gauge`));
    return entry ? [{ use, id: entry.id, revision: entry.revision, gauge: entry.body }] : [];
  });
}
