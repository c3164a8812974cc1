/** The cover under load, with the springs of the lining that work. */
export interface Pressed {
  /** Of every unknown. */
  readonly w: Float64Array;
  /** How far the spring at every lining point is shortened; below zero where it does not touch. */
  readonly squeezedMm: Float64Array;
  readonly active: Uint8Array;
  readonly rounds: number;
}
