import * as z from 'zod';
import type {
  Bending,
  BendingBase,
  BendingCase,
  CaseHeat,
  CatalogueNamed,
  MarksHeld,
  PistonRange,
  RingTold,
} from '../../words/bending/bending.ts';
import type { HeatAnswer, HeatRise } from '../../words/bending/heat.ts';
import type {
  DeflectedSection,
  PressureMap,
  RingSize,
  StiffeningRing,
  StiffnessAnswer,
} from '../../words/bending/stiffness.ts';
import { shopCriteriaSchema } from '../catalogue.ts';
import { stiffnessSchema } from '../stiffness.ts';
import { exactly, named } from './exactly.ts';
import {
  answer,
  answers,
  type FiguresDoubted,
  figureDoubts,
  number,
  numberOrNull,
  numbers,
  text,
  textOrNull,
  warnings,
  yes,
} from './finding.ts';
import { asKept, keptFields } from './kept.ts';

const place = exactly<StiffnessAnswer['peakAt']>({
  radiusMm: number,
  angleDeg: number.describe('From a stud.'),
});

/** What `POST /api/cover/stiffness` answers. */
export const stiffnessAnswer = named(
  'Stiffness',
  exactly<StiffnessAnswer & FiguresDoubted>({
    meanPressureMPa: number,
    peakOverMean: number,
    peakAt: place,
    touchingShare: number,
    rippleMm: number,
    bossDeflectionMm: number,
    greatestStressMPa: number,
    greatestStressAt: place,
    beyondYield: yes.nullable(),
    wallForPeakMm: numberOrNull,
    section: exactly<DeflectedSection>({
      radiiMm: numbers,
      behindStudMm: numbers,
      betweenStudsMm: numbers,
    }),
    pressureMap: exactly<PressureMap>({
      radiiMm: numbers,
      anglesDeg: numbers,
      pressureMPa: z.array(numbers).describe('One row for each radius.'),
    }),
    warnings,
    answers,
    doubts: figureDoubts,
  }),
);

const RISE = { peakRiseK: number, peakAtS: number, endRiseK: number, evenRiseK: number };

/** What `POST /api/cover/heat` answers. */
export const heatAnswer = named(
  'Heat',
  exactly<HeatAnswer & FiguresDoubted>({
    ...RISE,
    behindStud: exactly<HeatRise>(RISE).nullable(),
    peakTemperatureC: numberOrNull,
    temperColour: textOrNull,
    warnings,
    answers,
    doubts: figureDoubts,
  }),
);

const range = named('PistonRange', exactly<PistonRange>({ rigid: number, conforming: number }));
const ringSize = exactly<RingSize>({
  innerDiameterMm: number,
  outerDiameterMm: number,
  thicknessMm: number,
  joinedToPads: yes.nullish(),
});
const ring = exactly<StiffeningRing>({
  innerDiameterMm: number,
  outerDiameterMm: number,
  thicknessMm: number,
  bonded: yes,
  joinedToPads: yes.nullish(),
});

const heat = exactly<CaseHeat>({
  peakRiseK: number,
  behindStudRiseK: range,
  behindStudC: range.nullish(),
  temperColour: text.nullish(),
});

const bendingCase = exactly<BendingCase>({
  id: z.enum(['new', 'now', 'after', 'ring-unbonded', 'ring-bonded', 'other']),
  trackWallMm: number,
  ring: ring.nullable(),
  peakOverMean: range,
  rippleMm: range,
  bossDeflectionMm: range,
  greatestStressMPa: range,
  beyondYield: yes.nullable(),
  largeDeflection: yes.optional(),
  heat: heat.nullable(),
});

const marks = exactly<MarksHeld>({
  count: z.int(),
  onPressed: range,
  pressedArea: range,
  agree: z.enum(['yes', 'one', 'no', 'unclear']),
});

const ringTold = exactly<RingTold>({
  size: ringSize,
  massKg: answer,
  unbalanceGmm: answer.nullable(),
  permissibleGmm: answer.nullable(),
  clearanceMm: answer,
});

const {
  trackWallMm: _wall,
  ring: _ring,
  piston: _piston,
  padInsetWalls: _inset,
  peakLimit: _limit,
  ...baseFields
} = stiffnessSchema.shape;
const base = exactly<BendingBase>(keptFields(baseFields));

/** How a cover bends and heats, in the cases that were asked for. */
export const bendingAnswer = named(
  'Bending',
  exactly<Bending>({
    calcVersion: text,
    base,
    heat: asKept(shopCriteriaSchema.shape.heat).nullable(),
    cases: z.array(bendingCase),
    other: exactly<NonNullable<Bending['other']>>({
      familyId: text,
      name: text,
      base,
      heat: asKept(shopCriteriaSchema.shape.heat).nullish(),
    }).nullable(),
    steel: exactly<CatalogueNamed>({ id: text, revision: z.int(), name: text }).nullish(),
    lining: exactly<CatalogueNamed>({ id: text, revision: z.int(), name: text }).nullish(),
    limits: exactly<Bending['limits']>({ peakOverNew: numberOrNull, rippleOverNew: numberOrNull }),
    wallForPeakMm: numberOrNull,
    padsTooFarMm: numberOrNull.optional(),
    marks: marks.nullable(),
    ring: ringTold.nullable(),
    welded: yes,
  }),
);
