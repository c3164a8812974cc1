/** A flat stiffening ring on the engine side, with openings for the pads. */
export interface RingSize {
  readonly innerDiameterMm: number;
  readonly outerDiameterMm: number;
  readonly thicknessMm: number;
}

/** What the shop takes for every cover it reckons the bending of, and the limits it has set on it. */
export interface BendingSettings {
  readonly liningModulusMPaPerMm: number;
  readonly youngMPa: number;
  readonly poisson: number;
  /** Where a family does not say. */
  readonly lockUpPressureMPa: number | null;
  readonly yieldMPa: number | null;
  /** Adds the oil's head of rotation. */
  readonly speedRpm: number | null;
  /** What a ring may run out round its rim: twice its eccentricity. */
  readonly ringRunoutMm: number | null;
  /** Pressure peak over mean, at most so many times that of the new cover. */
  readonly peakOverNew: number | null;
  /** Ripple round the track, at most so many times that of the new cover. */
  readonly rippleOverNew: number | null;
}

/** One engagement of the lock-up clutch as the shop reckons it, and the steel it heats. */
export interface HeatSettings {
  /** Of the heat, into the cover. */
  readonly share: number;
  readonly torqueNm: number;
  readonly slipRpm: number;
  readonly slipTimeS: number;
  readonly conductivityWPerMK: number;
  readonly densityKgPerM3: number;
  readonly specificHeatJPerKgK: number;
  readonly startTemperatureC: number | null;
}
