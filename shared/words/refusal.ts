/** One thing wrong with one field. `path` is dotted, as in `stations.3.faceMm`; '' is the whole. */
export interface Fault {
  readonly path: string;
  readonly message: string;
}

/**
 * Thrown when a calculation cannot take what it was given. The message is one sentence for a person:
 * which quantity, its value with unit, the limit, what to do.
 */
export class Refusal extends Error {
  readonly code: string;
  readonly faults: readonly Fault[];

  constructor(code: string, faults: readonly Fault[]) {
    super(faults[0]?.message ?? 'These values can’t be used. Check them and send them again.');
    this.name = 'Refusal';
    this.code = code;
    this.faults = faults;
  }
}
