import type { Request, Response } from 'express';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { lowerFirst } from '../../../shared/words/fields/field.ts';
import type { CoverFigures } from '../../../views/drawings/coverLettered.tsx';
import { halfSectionOf } from '../../../views/drawings/coverSection.tsx';
import { CoverDrawnPage } from '../../../views/pages/catalogue/coverDrawnPage.tsx';
import type { CoverTyped } from '../../../views/parts/coverDrawnPart.tsx';
import { renderPage } from '../../../views/render.ts';
import { readBody } from '../request/bodyForm.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { type Fields, fieldsOf, TypedForm, type Writing } from '../request/typed.ts';

const DRAWN = [
  'studCircleDiameterMm',
  'trackOuterDiameterMm',
  'trackInnerDiameterMm',
  'bossDiameterMm',
  'rimDiameterMm',
  'nominalWallMm',
  'padDiameterMm',
  'padThicknessMm',
] as const;

/** The cover type of a form, drawn while it is typed. Looks, and keeps nothing. */
export async function getCoverDrawn(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = fieldsOf(req.query);
  const own = await frameOf(req, context);
  const form = new TypedForm(fields, own);
  res.send(renderPage(CoverDrawnPage({ frame: keepingUnits(own, form), typed: typedCover(form) })));
}

/** What can be drawn of the cover type in these boxes. */
export function coverDrawn(fields: Fields, writing: Writing): CoverTyped {
  return typedCover(new TypedForm(fields, writing));
}

/** Shares of the bolt circle, drawn while the first figures are not entered: about those of the demo’s covers. */
const USUAL = { trackOuterDiameterMm: 0.92, trackInnerDiameterMm: 0.75, nominalWallMm: 0.018 } as const;

function typedCover(form: TypedForm): CoverTyped {
  const fields = Object.fromEntries(DRAWN.map((key) => [key, { ...FAMILY[key], optional: true as const }]));
  const read = readBody(form, fields) as CoverFigures;
  const figures = Object.fromEntries(
    DRAWN.map((key) => [key, (read[key] ?? 0) > 0 ? read[key] : null]),
  ) as CoverFigures;
  const unread = form.faults.map(({ message }) => `Not in the drawing: ${lowerFirst(message)}`);
  const crossed = crossedIn(figures);
  const drawn = crossed === null ? figures : NOTHING;
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
    section,
    figures: drawn,
    toScale: DRAWN.every((key) => drawn[key] !== null),
    leftOut: [...unread, ...(crossed === null ? [] : [crossed])],
  };
}

const NOTHING = Object.fromEntries(DRAWN.map((key) => [key, null])) as CoverFigures;

/** What lies within what, from the middle out. */
const WITHIN = [
  ['bossDiameterMm', 'trackInnerDiameterMm'],
  ['trackInnerDiameterMm', 'trackOuterDiameterMm'],
  ['trackOuterDiameterMm', 'rimDiameterMm'],
  ['studCircleDiameterMm', 'rimDiameterMm'],
] as const;

/** Why these figures make no cover; null where they do. */
function crossedIn(figures: CoverFigures): string | null {
  for (const [inner, outer] of WITHIN) {
    const [a, b] = [figures[inner], figures[outer]];
    if (a !== null && b !== null && a > b)
      return `Not drawn as typed: ${letterOf(inner)}, must be smaller than ${letterOf(outer)}.`;
  }
  const { nominalWallMm: wall, rimDiameterMm: rim } = figures;
  return wall !== null && rim !== null && wall > rim / 4
    ? `Not drawn as typed: ${letterOf('nominalWallMm')}, is too thick for ${letterOf('rimDiameterMm')}.`
    : null;
}

const letterOf = (key: (typeof DRAWN)[number]) => `${FAMILY[key].letter}, ${lowerFirst(FAMILY[key].label)}`;
