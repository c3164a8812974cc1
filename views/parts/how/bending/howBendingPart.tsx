import type { StiffnessAnswer, StiffnessInput } from '../../../../shared/words/bending/stiffness.ts';
import type { LengthUnit } from '../../../../shared/words/print.ts';
import { BesideSolid, type RingBeside, type SolidBeside } from './besideSolid.tsx';
import { ExampleDrawings, ExampleGiven } from './exampleCover.tsx';
import { type BentAtFineness, type BentBeside, BesideSecond, FinerElements } from './exampleTables.tsx';
import { ForAMachinist } from './forAMachinist.tsx';
import { ForAnEngineer } from './forAnEngineer.tsx';

export interface HowBendingProps {
  readonly unit: LengthUnit;
  readonly cover: StiffnessInput;
  readonly rows: readonly BentBeside[];
  readonly finer: readonly BentAtFineness[];
  /** Conforming piston; the full wall on the friction surface, and the thinner one. */
  readonly full: StiffnessAnswer;
  readonly thin: StiffnessAnswer;
  /** Conforming piston, pads by the rule adopted. */
  readonly solid: readonly SolidBeside[];
  /** Joined to the pads; as shares of the same cover without a ring. */
  readonly rings: readonly RingBeside[];
}

/** The model explained: to a machinist in a paragraph, to an engineer in a page; then its example and its checks. */
export function HowBending({ unit, cover, rows, finer, full, thin, solid, rings }: HowBendingProps) {
  const walls = { fullMm: rows[2]!.checked.trackWallMm, thinMm: rows[3]!.checked.trackWallMm };
  const example = { unit, cover, full, thin, walls };
  return (
    <>
      <ForAMachinist {...example} />
      <ForAnEngineer />
      <ExampleGiven {...example} />
      <BesideSecond rows={rows} unit={unit} />
      <FinerElements rows={finer} unit={unit} />
      <BesideSolid covers={solid} rings={rings} unit={unit} />
      <ExampleDrawings {...example} />
    </>
  );
}
