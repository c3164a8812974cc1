import type { CatalogueStack } from '../../../shared/words/catalogue.ts';

/** Of the trade's plates and castings, common practice, no source: only the wrong unit is told by them. */
const USUAL_PLATE_MM = 3.5;
const USUAL_CASTING_MM = 9;

/** How thick a layer of that name usually is; null for a shim, which may have any thickness. */
export function usualThicknessMm(layer: string): number | null {
  if (isShim(layer)) return null;
  return /cast/i.test(layer) ? USUAL_CASTING_MM : USUAL_PLATE_MM;
}

/** Plate and casting make two pieces; a shim under the pads is a layer and no piece of the flexplate. */
export function styleOf(
  layers: readonly { readonly name: string | null }[],
): CatalogueStack['stack']['style'] {
  return layers.filter(({ name }) => !isShim(name ?? '')).length > 1 ? 'two-piece' : 'one-piece';
}

function isShim(layer: string): boolean {
  return /\bshims?(?![a-z])/i.test(layer);
}
