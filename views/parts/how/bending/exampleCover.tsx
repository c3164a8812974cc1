import type { StiffnessAnswer, StiffnessInput } from '../../../../shared/words/bending/stiffness.ts';
import {
  briefLength,
  type LengthUnit,
  LINING_MODULUS,
  MODULUS,
  PRESSURE,
  printAs,
} from '../../../../shared/words/print.ts';
import { BentSection } from '../../../drawings/bentSection.tsx';
import { PressureMap } from '../../../drawings/pressureMap.tsx';

export interface ExampleProps {
  readonly unit: LengthUnit;
  readonly cover: StiffnessInput;
  readonly full: StiffnessAnswer;
  readonly thin: StiffnessAnswer;
  /** On the friction surface. */
  readonly walls: { readonly fullMm: number; readonly thinMm: number };
}

/** The cover of the example. */
export function ExampleGiven({ unit, cover, full }: ExampleProps) {
  const length = (mm: number) => briefLength(mm, unit);
  return (
    <>
      <h2>Its example</h2>
      <p>
        Steel of {printAs(cover.youngMPa, MODULUS[unit])}, ν {cover.poisson}. Center Ø{' '}
        {length(cover.bossDiameterMm)}, rim Ø {length(cover.rimDiameterMm)}, friction surface Ø{' '}
        {length(cover.trackInnerDiameterMm)} to {length(cover.trackOuterDiameterMm)}. {cover.studCount} studs
        on a bolt circle of {length(cover.studCircleDiameterMm)}, pads Ø {length(cover.padDiameterMm)} and{' '}
        {length(cover.padThicknessMm)} thick. Wall {length(cover.wallMm)}, side wall{' '}
        {length(cover.sideWallMm)}, piston seal Ø {length(cover.pistonSealDiameterMm)}, impeller hub Ø{' '}
        {length(cover.hubDiameterMm)}. Pressure {printAs(cover.pressureMPa, PRESSURE[unit])}, lining{' '}
        {printAs(cover.liningModulusMPaPerMm, LINING_MODULUS[unit])}. The mean lining pressure is{' '}
        {printAs(full.meanPressureMPa, PRESSURE[unit])} in every row.
      </p>
    </>
  );
}

/** Where the lining of the example presses, and how its section bends. */
export function ExampleDrawings({ unit, cover, full, thin, walls }: ExampleProps) {
  const places = {
    trackInnerDiameterMm: cover.trackInnerDiameterMm,
    trackOuterDiameterMm: cover.trackOuterDiameterMm,
    studCircleDiameterMm: cover.studCircleDiameterMm,
    unit,
  };
  const label = (wallMm: number) => `${briefLength(wallMm, unit)} on the friction surface`;
  return (
    <>
      <h3>
        Where its lining presses, with {briefLength(walls.thinMm, unit)} left on the friction surface and a
        conforming piston
      </h3>
      <PressureMap
        {...places}
        id="how-map"
        map={thin.pressureMap}
        meanPressureMPa={thin.meanPressureMPa}
        peakOverMean={thin.peakOverMean}
        peakAt={thin.peakAt}
        studCount={cover.studCount}
        marks={[]}
      />
      <h3>How it bends</h3>
      <BentSection
        {...places}
        id="how-section"
        curves={[
          { label: label(walls.fullMm), section: full.section },
          { label: label(walls.thinMm), section: thin.section },
        ]}
        bossDiameterMm={cover.bossDiameterMm}
        rimDiameterMm={cover.rimDiameterMm}
      />
    </>
  );
}
