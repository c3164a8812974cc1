import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import type { Layer, LayerKind } from '../../../shared/words/stud/stud.ts';
import { kindOf } from '../../calc/stud/holes/pilotLinesUp.ts';

/** What a layer is drawn and judged as, where its form does not say it by its name. */
export function layerKind(layer: Pick<Layer, 'name' | 'kind'>): LayerKind {
  return kindOf(layer);
}

/** Plate and casting make two pieces; a shim under the pads is a layer and no piece of the flexplate. */
export function styleOf(
  layers: readonly { readonly name: string | null; readonly kind?: LayerKind | null }[],
): CatalogueStack['stack']['style'] {
  const pieces = layers.filter(({ name, kind = null }) => kindOf({ name: name ?? '', kind }) !== 'shim');
  return pieces.length > 1 ? 'two-piece' : 'one-piece';
}
