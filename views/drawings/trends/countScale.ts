export interface CountTick {
  readonly n: number;
  readonly text: string;
}

const STEPS = [1, 2, 5, 10];

/** An axis of whole counts from none to at least `most`, with about three figures. */
export function countScale(most: number): { readonly most: number; readonly ticks: readonly CountTick[] } {
  const rough = Math.max(1, most) / 3;
  const power = 10 ** Math.max(0, Math.floor(Math.log10(rough)));
  const step = Math.max(1, power * (STEPS.find((one) => one * power >= rough) ?? 10));
  const count = Math.max(1, Math.ceil(most / step));
  const ticks = Array.from({ length: count + 1 }, (_, i) => ({
    n: i * step,
    text: (i * step).toLocaleString('en-US'),
  }));
  return { most: count * step, ticks };
}
