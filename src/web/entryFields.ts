import type {
  CatalogueGauge,
  CatalogueStack,
  CatalogueStud,
  EntryBodies,
  EntryKind,
  Family,
  ShopCriteria,
} from '../../shared/words/catalogue.ts';
import type { Nut } from '../../shared/words/stud.ts';
import { bendingLines, familyBendingLines } from './bendingForm.ts';
import { type FieldLine, lengthInWords, yesNoInWords } from './fieldLines.ts';
import { fitLimitsLines } from './fitLimitsForm.ts';
import { gaugeFields } from './gaugeEntry.ts';
import { latheLines } from './latheForm.ts';
import { studLimitLines } from './studLimits.ts';
import type { Writing } from './typed.ts';

/** An entry of the catalogue or the shop's criteria, field by field with units. */
export function entryFields<K extends EntryKind>(
  kind: K,
  body: EntryBodies[K],
  writing: Writing,
): FieldLine[] {
  switch (kind) {
    case 'family':
      return familyFields(body as Family, writing);
    case 'stud':
      return studFields(body as CatalogueStud, writing);
    case 'stack':
      return stackFields(body as CatalogueStack, writing);
    case 'gauge':
      return gaugeFields(body as CatalogueGauge, writing);
    default:
      return criteriaFields(body as ShopCriteria, writing);
  }
}

const line = (label: string, value: string): FieldLine => ({ label, value });
const number = (value: number | null, unit = '') =>
  value === null ? 'not said' : `${value}${unit === '' ? '' : ` ${unit}`}`;
const said = (text: string | null) => (text === null || text === '' ? 'not said' : text);

export function familyFields(body: Family, writing: Writing): FieldLine[] {
  const length = (mm: number | null, none?: string) => lengthInWords(mm, writing, none);
  return [
    line('Name', body.name),
    line('Make', body.make === 'stamped' ? 'stamped' : 'machined from solid'),
    line('Side wall', body.sideWall),
    line('Number of studs', number(body.studCount)),
    line('Stud circle diameter', length(body.studCircleDiameterMm)),
    line('Track inner diameter', length(body.trackInnerDiameterMm)),
    line('Track outer diameter', length(body.trackOuterDiameterMm)),
    line('Wall when new', length(body.nominalWallMm)),
    line('Boss diameter', length(body.bossDiameterMm)),
    line('Rim diameter', length(body.rimDiameterMm)),
    line('Pad diameter', length(body.padDiameterMm)),
    line('Pad thickness', length(body.padThicknessMm)),
    ...familyBendingLines(body, writing),
    ...fitLimitsLines(body, writing),
    line("Maker's minimum wall", length(body.makerMinimumWallMm, 'none')),
    line("Source of the maker's minimum", said(body.makerMinimumWallSource)),
    line("The shop's minimum wall", length(body.shopMinimumWallMm, 'none')),
    line("Who set the shop's minimum", said(body.shopMinimumWallSource)),
    line('A ring may be welded on', yesNoInWords(body.ringAllowed)),
    line('Note', body.note),
  ];
}

export function studFields(body: CatalogueStud, writing: Writing): FieldLine[] {
  const length = (mm: number | null, none?: string) => lengthInWords(mm, writing, none);
  const { stud } = body;
  return [
    line('Name', body.name),
    line('Thread', stud.thread.designation),
    line('Thread as typed', body.threadTyped),
    line('First full thread', length(stud.threadStartMm)),
    line('Last full thread', length(stud.threadEndMm)),
    line('Tip', length(stud.projectionMm)),
    line('Tolerance of the lengths', length(stud.lengthToleranceMm)),
    line('Pilot diameter', length(stud.pilotDiameterMm)),
    line('Tensile strength', number(stud.tensileMPa, 'MPa')),
    line('Proof stress', number(stud.proofMPa, 'MPa')),
    line('Weld or fillet at the pad', length(stud.filletMm)),
    line('Pitch diameter, measured', length(stud.pitchDiameterMeasuredMm ?? null)),
    line('Number in stock', body.stock == null ? 'not counted' : `${body.stock}`),
    line('Shelf place', body.shelf ?? ''),
    line('Note', body.note),
  ];
}

export function stackFields(body: CatalogueStack, writing: Writing): FieldLine[] {
  const length = (mm: number | null, none?: string) => lengthInWords(mm, writing, none);
  const { stack } = body;
  return [
    line('Name', body.name),
    line('Flexplate', stack.style === 'one-piece' ? 'one piece' : 'two pieces'),
    ...stack.layers.flatMap((layer, i) => {
      const of = `Layer ${i + 1}`;
      return [
        line(of, layer.name),
        line(`${of}: thickness`, `${length(layer.thicknessMm)} ± ${length(layer.toleranceMm)}`),
        line(`${of}: hole`, length(layer.holeDiameterMm)),
        line(`${of}: chamfer`, length(layer.chamferMm)),
      ];
    }),
    line('Number of holes', number(stack.holeCount)),
    line('Hole circle diameter', length(stack.holeCircleDiameterMm)),
    line("Room for the stud's tip", length(stack.tipRoomMm)),
    ...nutFields(body.nut, body.nutThreadTyped, writing),
    line('Pull-forward gap', length(body.pullForwardMm)),
    line('Note', body.note),
  ];
}

function nutFields(nut: Nut | null, threadTyped: string | null, writing: Writing): FieldLine[] {
  if (nut === null) return [line('Nut', 'not said')];
  const length = (mm: number | null) => lengthInWords(mm, writing);
  return [
    line('Nut', said(nut.thread?.designation ?? threadTyped)),
    line('Nut height', `${length(nut.heightMm)} ± ${length(nut.toleranceMm)}`),
    line('Nut countersink', length(nut.countersinkMm)),
    line('Nut bearing diameter', length(nut.bearingOuterDiameterMm)),
    line('Nut proof stress', number(nut.proofMPa, 'MPa')),
    line('Nut tensile strength', number(nut.tensileMPa, 'MPa')),
    line('Washer', length(nut.washerMm)),
    line('Prevailing nut', yesNoInWords(nut.prevailing)),
  ];
}

export function criteriaFields(body: ShopCriteria, writing: Writing): FieldLine[] {
  const length = (mm: number | null) => lengthInWords(mm, writing, 'none');
  return [
    line('Minimum wall, any family', length(body.minimumWallMm)),
    line('Clean-up allowance', length(body.cleanUpAllowanceMm)),
    line('Runout allowed after the cut', length(body.faceRunoutLimitMm)),
    line('Typical cut', length(body.typicalCutMm)),
    line('How sure to be', `${Number((body.confidence * 100).toPrecision(12))} %`),
    line('Threads beyond the nut', number(body.protrusionThreads, 'threads')),
    line('Threads showing to start the nut', number(body.startThreads, 'threads')),
    ...studLimitLines(body, writing),
    line('Name of the shop', body.shopName),
    line('Bare numbers are in', body.lengthUnit === 'mm' ? 'millimetres' : 'inches'),
    line('Decimals are written with a', body.decimalSign),
    ...latheLines(body.lathe ?? null, body.balance ?? null, writing),
    ...bendingLines(body.bending ?? null, body.heat ?? null, writing),
  ];
}
