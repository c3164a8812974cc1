import type { AnyField } from '../../../shared/words/fields/field.ts';
import {
  CATALOGUE_STACK,
  CATALOGUE_WASHER,
  LAYER,
  NUT,
  NUT_THREAD_BOX,
  STACK,
  STUD,
  THREAD_BOX,
} from '../../../shared/words/fields/stud.ts';
import { LAYER_KINDS } from '../../../shared/words/stud/stud.ts';
import { lengthsExpected } from '../../shop/studs/expected.ts';
import { expectedGapMm } from '../../shop/studs/gap.ts';
import { usualThicknessMm } from '../../shop/studs/layers.ts';
import type { TypedForm } from '../request/typed.ts';
import { layerRows } from './stackForm.ts';

type Asked = readonly [
  field: Pick<AnyField, 'box' | 'label'>,
  expectedMm: number,
  /** Of which layer. */
  row?: number,
];

/** A slipped decimal or the wrong unit in any of these boxes is asked about; with `unit` only the wrong unit is. */
export function askAboutEach(form: TypedForm, rows: readonly Asked[], slips: 'any' | 'unit' = 'any'): void {
  for (const [{ box, label }, expectedMm, row] of rows) {
    if (!box) continue;
    const name = row === undefined ? box : `${box}.${row}`;
    if (!form.has(name) || form.faults.some(({ path }) => path === name)) continue;
    form.lengthLike(name, row === undefined ? label : `${label} of layer ${row + 1}`, expectedMm, slips);
  }
}

/** Inches typed as millimeters or the other way round; a shim may have any thickness. */
export function askAboutLayers(form: TypedForm): void {
  for (let i = 0; i < layerRows(form); i++) {
    const name = form.text(`ln.${i}`) || `layer ${i + 1}`;
    const usualMm = usualThicknessMm({ name, kind: form.choice(`lk.${i}`, LAYER_KINDS) });
    const box = `lt.${i}`;
    if (usualMm !== null && form.has(box) && !form.faults.some(({ path }) => path === box))
      form.lengthLike(box, `Thickness of ${name}`, usualMm, 'unit');
  }
}

/** A nut, of a stack or of the catalog. */
export function askAboutNut(form: TypedForm): void {
  const usual = lengthsExpected(form.text(NUT_THREAD_BOX));
  askAboutEach(form, [
    [NUT.heightMm, usual.nutHeightMm],
    [NUT.bearingOuterDiameterMm, usual.washerFaceMm],
  ]);
  const small: readonly Asked[] = [
    [NUT.toleranceMm, usual.toleranceMm],
    [NUT.countersinkMm, usual.chamferMm],
  ];
  askAboutEach(form, small, 'unit');
}

/** A washer or a shim: of any size, but hardly in the other unit. */
export function askAboutWasher(form: TypedForm): void {
  const usual = lengthsExpected('');
  const each: readonly Asked[] = [
    [CATALOGUE_WASHER.innerDiameterMm, usual.holeMm],
    [CATALOGUE_WASHER.outerDiameterMm, 2 * usual.holeMm],
    [CATALOGUE_WASHER.thicknessMm, usual.washerMm],
    [CATALOGUE_WASHER.toleranceMm, usual.toleranceMm],
  ];
  askAboutEach(form, each, 'unit');
}

/** Nut, holes and room of a stack as typed. */
export function askAboutStack(form: TypedForm): void {
  const usual = lengthsExpected(form.text(NUT_THREAD_BOX));
  const ofLayers = (field: Pick<AnyField, 'box' | 'label'>, expectedMm: number) =>
    Array.from({ length: layerRows(form) }, (_, row) => [field, expectedMm, row] as const);
  askAboutNut(form);
  askAboutEach(form, [
    [STACK.holeCircleDiameterMm, usual.boltCircleMm],
    [STACK.tipRoomMm, usual.studEndRoomMm],
    [STACK.leastPullForwardMm, expectedGapMm(null)],
    [STACK.mostPullForwardMm, expectedGapMm(null)],
    ...ofLayers(LAYER.holeDiameterMm, usual.holeMm),
  ]);
  const small: readonly Asked[] = [
    [NUT.washerMm, usual.washerMm],
    ...ofLayers(LAYER.toleranceMm, usual.toleranceMm),
    ...ofLayers(LAYER.chamferMm, usual.chamferMm),
  ];
  askAboutEach(form, small, 'unit');
}

/** A stack and its gap, as the catalog keeps them. */
export function askAboutEntryStack(form: TypedForm): void {
  askAboutLayers(form);
  askAboutStack(form);
  askAboutEach(form, [[CATALOGUE_STACK.pullForwardMm, expectedGapMm(null)]]);
}

/** Lengths of a stud that look like a slip are asked about. */
export function askAboutStud(form: TypedForm): void {
  const usual = lengthsExpected(form.text(THREAD_BOX));
  askAboutEach(form, [
    [STUD.threadEndMm, usual.threadEndMm],
    [STUD.projectionMm, usual.lengthFromPadMm],
    [STUD.pilotDiameterMm, usual.pilotMm],
    [STUD.pitchDiameterMeasuredMm, usual.pitchDiameterMm],
  ]);
  const small: readonly Asked[] = [
    [STUD.lengthToleranceMm, usual.toleranceMm],
    [STUD.filletMm, usual.filletMm],
  ];
  askAboutEach(form, small, 'unit');
}
