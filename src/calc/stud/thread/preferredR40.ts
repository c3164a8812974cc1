const R40 = [
  100, 106, 112, 118, 125, 132, 140, 150, 160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280, 300, 315,
  335, 355, 375, 400, 425, 450, 475, 500, 530, 560, 600, 630, 670, 710, 750, 800, 850, 900, 950,
] as const;

const place = (index: number): number => R40[index % 40]! * 10 ** (Math.floor(index / 40) - 1);

/**
 * The preferred number of the R40 series nearest to a value, or a number of steps above it; in whole µm.
 *   x → nearest of 10ⁿ · {1.00, 1.06, 1.12, 1.18 … 9.50}; a value half way goes up
 *   valueUm [µm] · steps [-], each one R40 step (a factor of about 1.059)
 *   Valid: 10 to 10 000 µm, which holds every thread tolerance.   Source: ISO 3:1973, series R40
 *   Example: 233.3 → 236; 132 five steps up → 180 (M10 × 1.5: Td2 132, TD2 180, ISO 965-1; published/threads.test.ts)
 */
export function preferredR40({ valueUm, steps = 0 }: { valueUm: number; steps?: number }): number {
  let nearest = 0;
  for (let index = 1; index < 120; index++) {
    if (Math.abs(place(index) - valueUm) <= Math.abs(place(nearest) - valueUm)) nearest = index;
  }
  return Math.round(place(nearest + steps));
}
