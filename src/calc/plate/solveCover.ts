import type { StiffnessInput } from '../../../shared/words/bending/stiffness.ts';
import { type CoverField, coverField } from './field.ts';
import { pressByConformingPiston } from './lining/conformingPiston.ts';
import type { Pressed } from './lining/pressed.ts';
import { type PressurePeak, pressurePeak } from './lining/pressurePeak.ts';
import { pressByRigidPiston } from './lining/rigidPiston.ts';
import { type CoverModel, coverModel } from './model/coverModel.ts';

export interface SolvedCover {
  readonly model: CoverModel;
  readonly pressed: Pressed;
  readonly field: CoverField;
  readonly peak: PressurePeak;
}

/**
 * Model, mesh, contact: everything solved, nothing yet answered. `fineness` 2 halves every element.
 *
 * Valid: sizes that make a cover.   Source: this program’s own model
 * Throws: a Refusal where the plate cannot be solved or the springs do not settle.
 * Example: the example’s cover (tests/calc/plate/bendCover.test.ts)
 */
export function solveCover(input: StiffnessInput, fineness = 1): SolvedCover {
  const model = coverModel(input, fineness);
  const press = input.piston === 'rigid' ? pressByRigidPiston : pressByConformingPiston;
  const pressed = press(model, input.liningModulusMPaPerMm);
  const field = coverField(model, pressed, input);
  return { model, pressed, field, peak: pressurePeak(input, model, field) };
}
