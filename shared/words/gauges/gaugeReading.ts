/** What a gauge is used for, against which its uncertainty is held; null where the shop has set none. */
export interface GaugeRoom {
  /** What the bar is: "new wall to minimum, least of 1125-4-plain". */
  readonly says: string;
  readonly mm: number;
}

/** How sure one reading with a gauge is, and of what that is made. */
export interface GaugeReading {
  /** Walls are held back from the minimum by it; a height lies so far to either side. */
  readonly way: 'above' | 'either';
  readonly confidence: number;
  /** null where nothing is known of the gauge. */
  readonly sureMm: number | null;
  /** Standard uncertainties; null counts as zero. */
  readonly parts: Readonly<Record<'calibration' | 'resolution' | 'repeatability', number | null>>;
  readonly room: GaugeRoom | null;
}
