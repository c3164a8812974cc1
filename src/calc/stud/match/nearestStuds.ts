import type { StudLengths, StudNear } from '../../../../shared/words/stud/choices.ts';
import type { NamedStud } from '../../../../shared/words/stud/stud.ts';

const LENGTHS = [
  'projectionMm',
  'threadEndMm',
  'threadStartMm',
  'pilotDiameterMm',
] as const satisfies readonly (keyof StudLengths)[];

/**
 * The studs of the catalog beside one that was measured, nearest first, with every difference.
 *   off = measured − catalog     far = Σ |off| over the lengths that both have     [mm]
 *   A stud that lacks a length that was measured comes after those as near that have it.
 *   Valid: lengths from the pad's seating face; the thread is compared by whoever asks.
 *   Source: this program's own rule
 *   Example: 24.10 from pad beside 24.003 and 30.353 → 0.10 longer, then 6.25 shorter (calc/stud/match/nearestStuds.test.ts)
 */
export function nearestStuds(measured: StudLengths, studs: readonly NamedStud[]): StudNear[] {
  return studs
    .map(({ id, stud }) => {
      const off = LENGTHS.flatMap((what) => {
        const [typed, has] = [measured[what], stud[what]];
        return typed === null || has === null ? [] : [{ what, mm: typed - has }];
      });
      return { id, off, farMm: off.reduce((sum, { mm }) => sum + Math.abs(mm), 0) };
    })
    .sort((a, b) => a.farMm - b.farMm || b.off.length - a.off.length);
}
