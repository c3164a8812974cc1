import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { setupSchema } from '../../../shared/schemas/job.ts';
import type { Entry } from '../../../shared/words/catalogue.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import type { MeasuringSetup } from '../../../shared/words/job.ts';
import { chosenGauges, figuresOf } from '../measuring/gaugeChosen.ts';
import { boxAt, readBody } from '../request/bodyForm.ts';
import type { TypedForm } from '../request/typed.ts';

/** How it is measured, as typed; stations and weld stay as they are kept. null with the sentences in the form. */
export function readSetup(
  form: TypedForm,
  gauges: readonly Entry<'gauge'>[],
  kept: MeasuringSetup | null,
): MeasuringSetup | null {
  const chosen = chosenGauges(form, gauges);
  const read = readBody(form, SETUP);
  if (form.faults.length > 0) return null;
  const parsed = setupSchema.safeParse({
    ...read,
    gauge: read.gauge || (chosen.find(({ use }) => use === 'wall')?.gauge.name ?? ''),
    gauges: chosen,
    gaugeFigures: figuresOf(read.gaugeFigures, chosen),
    stations: kept?.stations ?? [],
    ringWelded: kept?.ringWelded ?? null,
  });
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), (path) => boxAt(SETUP, path) ?? path);
  return null;
}
