import {
  type FieldLine,
  type Telling,
  withTyped,
  yesNoInWords,
} from '../../../shared/quantity/fieldLines.ts';
import type {
  CatalogueGauge,
  CatalogueStack,
  CatalogueStud,
  EntryBodies,
  EntryKind,
  Family,
  ShopCriteria,
} from '../../../shared/words/catalogue.ts';
import type { Nut } from '../../../shared/words/stud.ts';
import { bendingLines, familyBendingLines } from '../bending/bendingForm.ts';
import { lengthsOf } from '../request/fieldLines.ts';
import { studLimitLines } from '../stud/limits.ts';
import { fitLimitsLines } from './fitLimitsForm.ts';
import { gaugeFields } from './gaugeEntry.ts';
import { latheLines } from './latheForm.ts';

/** An entry of the catalogue or the shop's criteria, field by field with units. */
export function entryFields<K extends EntryKind>(
  kind: K,
  body: EntryBodies[K],
  telling: Telling,
): FieldLine[] {
  switch (kind) {
    case 'family':
      return familyFields(body as Family, telling);
    case 'stud':
      return studFields(body as CatalogueStud, telling);
    case 'stack':
      return stackFields(body as CatalogueStack, telling);
    case 'gauge':
      return gaugeFields(body as CatalogueGauge, telling);
    default:
      return criteriaFields(body as ShopCriteria, telling);
  }
}

const line = (label: string, value: string): FieldLine => ({ label, value });
const number = (value: number | null, unit = '') =>
  value === null ? 'not said' : `${value}${unit === '' ? '' : ` ${unit}`}`;
const said = (text: string | null) => (text === null || text === '' ? 'not said' : text);

export function familyFields(body: Family, telling: Telling): FieldLine[] {
  const length = lengthsOf(body, '', telling);
  return [
    line('Name', body.name),
    line('Make', body.make === 'stamped' ? 'stamped' : 'machined from solid'),
    line('Side wall', body.sideWall),
    line('Number of studs', number(body.studCount)),
    line('Stud circle diameter', length('studCircleDiameterMm')),
    line('Track inner diameter', length('trackInnerDiameterMm')),
    line('Track outer diameter', length('trackOuterDiameterMm')),
    line('Wall when new', length('nominalWallMm')),
    line('Boss diameter', length('bossDiameterMm')),
    line('Rim diameter', length('rimDiameterMm')),
    line('Pad diameter', length('padDiameterMm')),
    line('Pad thickness', length('padThicknessMm')),
    ...familyBendingLines(body, telling),
    ...fitLimitsLines(body, telling),
    line("Maker's minimum wall", length('makerMinimumWallMm', 'none')),
    line("Source of the maker's minimum", said(body.makerMinimumWallSource)),
    line("The shop's minimum wall", length('shopMinimumWallMm', 'none')),
    line("Who set the shop's minimum", said(body.shopMinimumWallSource)),
    line('A ring may be welded on', yesNoInWords(body.ringAllowed)),
    line('Note', body.note),
  ];
}

export function studFields(body: CatalogueStud, telling: Telling): FieldLine[] {
  const { stud } = body;
  const length = lengthsOf(stud, 'stud.', telling);
  return [
    line('Name', body.name),
    line('Thread', stud.thread.designation),
    line('Thread as typed', body.threadTyped),
    line('First full thread', length('threadStartMm')),
    line('Last full thread', length('threadEndMm')),
    line('Tip', length('projectionMm')),
    line('Tolerance of the lengths', length('lengthToleranceMm')),
    line('Pilot diameter', length('pilotDiameterMm')),
    line('Tensile strength', withTyped(number(stud.tensileMPa, 'MPa'), 'stud.tensileMPa', telling)),
    line('Proof stress', withTyped(number(stud.proofMPa, 'MPa'), 'stud.proofMPa', telling)),
    line('Weld or fillet at the pad', length('filletMm')),
    line('Pitch diameter, measured', length('pitchDiameterMeasuredMm')),
    line('Number in stock', body.stock == null ? 'not counted' : `${body.stock}`),
    line('Shelf place', body.shelf ?? ''),
    line('Note', body.note),
  ];
}

export function stackFields(body: CatalogueStack, telling: Telling): FieldLine[] {
  const { stack } = body;
  const length = lengthsOf(stack, 'stack.', telling);
  return [
    line('Name', body.name),
    line('Flexplate', stack.style === 'one-piece' ? 'one piece' : 'two pieces'),
    ...stack.layers.flatMap((layer, i) => {
      const of = `Layer ${i + 1}`;
      const inLayer = lengthsOf(layer, `stack.layers.${i}.`, telling);
      return [
        line(of, layer.name),
        line(`${of}: thickness`, `${inLayer('thicknessMm')} ± ${inLayer('toleranceMm')}`),
        line(`${of}: hole`, inLayer('holeDiameterMm')),
        line(`${of}: chamfer`, inLayer('chamferMm')),
      ];
    }),
    line('Number of holes', number(stack.holeCount)),
    line('Hole circle diameter', length('holeCircleDiameterMm')),
    line("Room for the stud's tip", length('tipRoomMm')),
    ...nutFields(body.nut, body.nutThreadTyped, telling),
    line('Pull-forward gap', lengthsOf(body, '', telling)('pullForwardMm')),
    line('Note', body.note),
  ];
}

function nutFields(nut: Nut | null, threadTyped: string | null, telling: Telling): FieldLine[] {
  if (nut === null) return [line('Nut', 'not said')];
  const length = lengthsOf(nut, 'nut.', telling);
  return [
    line('Nut', said(nut.thread?.designation ?? threadTyped)),
    line('Nut height', `${length('heightMm')} ± ${length('toleranceMm')}`),
    line('Nut countersink', length('countersinkMm')),
    line('Nut bearing diameter', length('bearingOuterDiameterMm')),
    line('Nut proof stress', withTyped(number(nut.proofMPa, 'MPa'), 'nut.proofMPa', telling)),
    line('Nut tensile strength', withTyped(number(nut.tensileMPa, 'MPa'), 'nut.tensileMPa', telling)),
    line('Washer', length('washerMm')),
    line('Prevailing nut', yesNoInWords(nut.prevailing)),
  ];
}

export function criteriaFields(body: ShopCriteria, telling: Telling): FieldLine[] {
  return [
    ...coverLimitFields(body, telling),
    line('Threads beyond the nut', number(body.protrusionThreads, 'threads')),
    line('Threads showing to start the nut', number(body.startThreads, 'threads')),
    ...studLimitLines(body, telling),
    line('Name of the shop', body.shopName),
    line('Bare numbers are in', body.lengthUnit === 'mm' ? 'millimetres' : 'inches'),
    line('Decimals are written with a', body.decimalSign),
    ...latheLines(body.lathe ?? null, body.balance ?? null, telling),
    ...bendingLines(body.bending ?? null, body.heat ?? null, telling),
  ];
}

/** The limits a cover is judged by; the sheet of a job prints these. */
export function coverLimitFields(body: ShopCriteria, telling: Telling): FieldLine[] {
  const length = lengthsOf(body, '', telling);
  return [
    line('Minimum wall, any family', length('minimumWallMm', 'none')),
    line('Clean-up allowance', length('cleanUpAllowanceMm', 'none')),
    line('Runout allowed after the cut', length('faceRunoutLimitMm', 'none')),
    line('Typical cut', length('typicalCutMm', 'none')),
    line('How sure to be', `${Number((body.confidence * 100).toPrecision(12))} %`),
  ];
}
