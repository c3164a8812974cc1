import { FAMILY } from '../../../shared/words/fields/family.ts';
import { halfSectionOf } from '../../../views/drawings/coverSection.tsx';
import type { CoverTyped } from '../../../views/parts/entryDrawnPart.tsx';
import { FAMILY_EXPECTED } from '../../shop/doubts/coverExpected.ts';
import type { TypedForm } from '../request/typed.ts';
import { crossedIn, figuresDrawn, lettered, noFigures, notDrawn } from './figuresDrawn.ts';

const {
  studCircleDiameterMm,
  trackOuterDiameterMm,
  trackInnerDiameterMm,
  bossDiameterMm,
  rimDiameterMm,
  nominalWallMm,
  padDiameterMm,
  padThicknessMm,
} = FAMILY;
const DRAWN = {
  studCircleDiameterMm,
  trackOuterDiameterMm,
  trackInnerDiameterMm,
  bossDiameterMm,
  rimDiameterMm,
  nominalWallMm,
  padDiameterMm,
  padThicknessMm,
};

/** Shares of the bolt circle, drawn while the first figures are not entered: about those of the demo’s covers. */
const USUAL = { trackOuterDiameterMm: 0.92, trackInnerDiameterMm: 0.75, nominalWallMm: 0.018 } as const;

/** What can be drawn of the cover type in these boxes. */
export function coverDrawn(form: TypedForm): CoverTyped {
  const figures = figuresDrawn(form, DRAWN, FAMILY_EXPECTED);
  const crossed = crossedIn(figures, DRAWN, WITHIN) ?? tooThick(figures);
  const drawn = crossed === null ? figures : noFigures(figures);
  const circleMm =
    drawn.studCircleDiameterMm ?? (drawn.rimDiameterMm ?? drawn.trackOuterDiameterMm ?? 250) * 0.95;
  const section = halfSectionOf({
    ...drawn,
    studCircleDiameterMm: circleMm,
    trackOuterDiameterMm: drawn.trackOuterDiameterMm ?? circleMm * USUAL.trackOuterDiameterMm,
    trackInnerDiameterMm: drawn.trackInnerDiameterMm ?? circleMm * USUAL.trackInnerDiameterMm,
    nominalWallMm: drawn.nominalWallMm ?? circleMm * USUAL.nominalWallMm,
  });
  return {
    kind: 'family',
    section,
    figures: drawn,
    toScale: Object.values(drawn).every((mm) => mm !== null),
    leftOut: [...notDrawn(form), ...(crossed === null ? [] : [crossed])],
  };
}

/** What lies within what, from the middle out. */
const WITHIN = [
  ['bossDiameterMm', 'trackInnerDiameterMm'],
  ['trackInnerDiameterMm', 'trackOuterDiameterMm'],
  ['trackOuterDiameterMm', 'rimDiameterMm'],
  ['studCircleDiameterMm', 'rimDiameterMm'],
] as const;

function tooThick({ nominalWallMm: wall, rimDiameterMm: rim }: CoverTyped['figures']): string | null {
  return wall !== null && rim !== null && wall > rim / 4
    ? `Not drawn as typed: ${lettered(FAMILY.nominalWallMm)}, is too thick for ${lettered(FAMILY.rimDiameterMm)}.`
    : null;
}
