/** One thing wrong with one field. `path` is dotted, as in `stations.3.faceMm`; '' is the whole. */
export interface Fault {
  readonly path: string;
  readonly message: string;
}

/** A value that is only asked about: what was probably meant, ready for the box; null where nothing is likelier. */
export interface AskedFault extends Fault {
  readonly meant: string | null;
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
