/** When the demo shop is said to have entered its catalog and limits: nothing real carries these times. */
export const DEMO_BEGAN = '2026-09-01T07:00:00.000Z';
export const DEMO_CHANGED_LIMITS = '2026-11-20T16:00:00.000Z';

/** Whether an entry or a revision of the limits was put there by the demo. */
export function ofDemo(at: string | null): boolean {
  return at === DEMO_BEGAN || at === DEMO_CHANGED_LIMITS;
}

/** Whether the source of a minimum says that it is the demo's: no figure of a shop gives way to it. */
export function inventedSource(source: string | null): boolean {
  return source !== null && /^(the demo(nstration)? shop’s figure|invented )/.test(source);
}

/** Why the demo's entries were retired and its limits reset, when the shop began for real. */
export const PUT_AWAY = 'Begin for real: the demo is put away';
