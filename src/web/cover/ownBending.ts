import type { Family } from '../../../shared/words/catalogue.ts';
import type { CoverShape } from '../../../shared/words/cover.ts';
import { OWN_BENDING } from '../../../views/pages/cover/ownBendingFields.tsx';
import type { TypedForm } from '../request/typed.ts';

/** A cover of no family, with what was typed of it for the bending. Nobody has allowed a ring on it. */
export function ownFamily(form: TypedForm, shape: Omit<CoverShape, 'densityKgPerM3'>): Family {
  const typed = Object.fromEntries(
    OWN_BENDING.map(({ key, name, label, unit }) => [
      key,
      unit === 'MPa' ? form.pressure(name, label) : form.length(name, label),
    ]),
  ) as Record<(typeof OWN_BENDING)[number]['key'], number | null>;
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
