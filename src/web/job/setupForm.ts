import { asTyped, type Writing } from '../../../shared/quantity/fieldText.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { setupSchema } from '../../../shared/schemas/job.ts';
import type { Entry, Family } from '../../../shared/words/catalogue.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import { RING_WELDED } from '../../../shared/words/fields/weld.ts';
import type { ChosenGauge, MeasuringSetup, RingWelded } from '../../../shared/words/job.ts';
import { figuresOf, figuresTyped } from '../../shop/gauges.ts';
import { askAboutSetup } from '../cover/askSetup.ts';
import { chosenGauges } from '../measuring/gaugesOnForm.ts';
import { boxAt, readBody } from '../request/bodyForm.ts';
import type { Fields, TypedForm } from '../request/typed.ts';

/** How it is measured, as typed; stations stay as they are kept. null with the sentences in the form. */
export function readSetup(
  form: TypedForm,
  gauges: readonly Entry<'gauge'>[],
  kept: MeasuringSetup | null,
  family: Family | null,
): MeasuringSetup | null {
  const chosen = chosenGauges(form, gauges);
  const read = readBody(form, SETUP);
  askAboutSetup(form, SETUP, family);
  if (form.faults.length > 0) return null;
  const parsed = setupSchema.safeParse({
    ...read,
    gauge: read.gauge || (wallGaugeName(chosen) ?? ''),
    gauges: chosen,
    gaugeFigures: figuresOf(read.gaugeFigures, chosen),
    stations: kept?.stations ?? [],
    ringWelded: readWeld(form, kept?.ringWelded ?? null),
  });
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), (path) =>
    path === 'ringWelded.on' ? RING_WELDED.on.box : (boxAt(SETUP, path) ?? path),
  );
  return null;
}

/** How it is measured as its form would have it typed: figures that the chosen gauges have by themselves are left to them. */
export function setupAsTyped(setup: MeasuringSetup | null, writing: Writing): Fields {
  const chosen = setup?.gauges ?? [];
  const typed = setup && { ...setup, gaugeFigures: figuresTyped(setup.gaugeFigures, chosen) };
  return {
    ...asTyped(SETUP, typed, writing),
    // A gauge of the catalog is chosen: its name comes with it and is not typed beside it.
    ...(setup !== null && setup.gauge === wallGaugeName(chosen) && { gauge: '' }),
    ...asTyped(RING_WELDED, setup?.ringWelded, writing),
    ...Object.fromEntries(chosen.map(({ use, id }) => [`${use}Gauge`, id])),
  };
}

/** How the ring was joined may be put right; a later day is another ring. A form without its boxes changes neither. */
function readWeld(form: TypedForm, kept: RingWelded | null): RingWelded | null {
  const { on, joinedToPads } = RING_WELDED;
  if (kept === null || !form.has(on.box)) return kept;
  return { ...kept, ...readBody(form, { joinedToPads }), on: form.text(on.box) };
}

function wallGaugeName(chosen: readonly ChosenGauge[]): string | null {
  return chosen.find(({ use }) => use === 'wall')?.gauge.name ?? null;
}
