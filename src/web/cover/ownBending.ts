import type { Family } from '../../../shared/words/catalogue.ts';
import type { CoverShape } from '../../../shared/words/cover.ts';
import { OWN_BENDING, OWN_BENDING_AT } from '../../../shared/words/fields/cover.ts';
import { readBody } from '../request/bodyForm.ts';
import type { TypedForm } from '../request/typed.ts';

/** A cover of no family, with what was typed of it for the bending. Nobody has allowed a ring on it. */
export function ownFamily(form: TypedForm, shape: Omit<CoverShape, 'densityKgPerM3'>): Family {
  const typed = readBody(form, OWN_BENDING, { at: OWN_BENDING_AT });
  return {
    ...shape,
    ...typed,
    name: '',
    make: 'stamped',
    sideWall: 'plain',
    ring: null,
    makerMinimumWallMm: null,
    makerMinimumWallSource: null,
    shopMinimumWallMm: null,
    shopMinimumWallSource: null,
    ringAllowed: false,
    note: '',
  };
}
