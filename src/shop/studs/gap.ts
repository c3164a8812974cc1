import type { CatalogueStack, CatalogueStud, ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { GapFound, GapMeasured } from '../../../shared/words/stud/gap.ts';
import { pullForward, USUAL_GAP_MM } from '../../calc/stud/reach/pullForward.ts';
import { recommendShims } from '../../calc/stud/reach/recommendShims.ts';
import { type NamedEntry, studChoicesFor } from '../studChoices.ts';

/** A gap is expected to be the stack's own; without one, the middle of the usual. */
export function expectedGapMm(ofStackMm: number | null): number {
  return ofStackMm ?? (USUAL_GAP_MM.least + USUAL_GAP_MM.most) / 2;
}

/** The gap with the shims chosen, else with those that suit best, and the stud that then fits. Throws a Refusal. */
export function gapFound(
  measured: GapMeasured,
  shims: { readonly thereMm: readonly number[]; readonly chosenMm: number | null },
  shelf: {
    readonly stack: CatalogueStack | null;
    readonly studs: readonly NamedEntry<CatalogueStud>[];
    readonly criteria: ShopCriteria;
  },
  unit: LengthUnit,
): GapFound {
  const recommended = recommendShims(measured, shims.thereMm);
  const shimMm = shims.chosenMm ?? recommended[0]?.totalMm ?? 0;
  const found = pullForward({ ...measured, shimMm }, unit);
  const stack = shelf.stack && withShims(shelf.stack, shimMm);
  const usable = found.gapMm >= 0 ? stack : null;
  const { choices } = usable
    ? studChoicesFor(shelf.studs, usable, found.gapMm, shelf.criteria, null, unit)
    : { choices: [] };
  return { measured, shimMm, recommended, found, stack, usable, choice: choices[0] ?? null };
}

/** The same shims at every pad are the first layer of the stack. */
function withShims(entry: CatalogueStack, shimMm: number): CatalogueStack {
  if (shimMm <= 0) return entry;
  const shim = {
    name: 'shim',
    kind: 'shim' as const,
    thicknessMm: shimMm,
    toleranceMm: 0,
    holeDiameterMm: entry.stack.layers[0]?.holeDiameterMm ?? null,
    chamferMm: null,
  };
  return { ...entry, stack: { ...entry.stack, layers: [shim, ...entry.stack.layers] } };
}
