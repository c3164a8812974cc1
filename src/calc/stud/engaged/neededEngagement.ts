import type { Answer, Step } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';
import type { ThreadGeometry } from '../../../../shared/words/stud/thread.ts';
import { threadShearAreas } from '../thread/threadShearAreas.ts';

const SOURCE = 'FED-STD-H28/2B; ASME B1.1-2003, Appendix B';

/**
 * Engagement at which the stud breaks before a thread strips.
 *   Le = 2 At/{π Kn,max [1/2 + 0.57735 n (Es,min − Kn,max)]}, the length at which As = 2 At
 *   J = (As · Rm,stud)/(An · Rm,nut); where J > 1 the nut's thread is the weaker and Q = J Le is needed
 *   At stress area [mm²] · the diameters as in threadShearAreas.ts [mm] · Rm tensile strengths [MPa]
 *   Valid: a thread's shear strength taken as half its tensile strength. Without both tensile strengths the nut's thread
 *   is left out, and the answer says so.
 *   Source: FED-STD-H28/2B; ASME B1.1-2003, Appendix B (formulas from memory)
 *   Example: 3/8-24 2A/2B, equal steels → 0.3037 in (published/studStrength.test.ts)
 */
export function neededEngagement({
  stud,
  nut,
  studTensileMPa,
  nutTensileMPa,
}: {
  stud: ThreadGeometry;
  nut: ThreadGeometry;
  studTensileMPa: number | null;
  nutTensileMPa: number | null;
}): { readonly needed: Answer & { readonly value: number }; readonly J: number | null } {
  const At = stud.tensileStressAreaMm2;
  const perMm = threadShearAreas({ stud, nut, lengthMm: 1 });
  const Le = (2 * At) / perMm.studMm2;
  const J =
    studTensileMPa === null || nutTensileMPa === null
      ? null
      : (perMm.studMm2 * studTensileMPa) / (perMm.nutMm2 * nutTensileMPa);
  const value = J === null ? Le : Le * Math.max(1, J);
  const p = (x: number) => printNumber(x, 2);
  const how: Step[] = [
    {
      formula: 'Le = 2 At/{π Kn,max [1/2 + 0.57735 n (Es,min − Kn,max)]}',
      numbers: `Le = 2 · ${p(At)}/${p(perMm.studMm2)} per mm = ${p(Le)} mm`,
      source: SOURCE,
    },
  ];
  if (J !== null) {
    how.push({
      formula: 'J = (As · Rm,stud)/(An · Rm,nut); needed = max(1, J) · Le',
      numbers: `J = (${p(perMm.studMm2)} · ${studTensileMPa})/(${p(perMm.nutMm2)} · ${nutTensileMPa}) = ${p(J)}; needed ${p(value)} mm`,
      source: SOURCE,
    });
  }
  const text = 'The nut’s thread is not in it: both tensile strengths are needed.';
  return {
    needed: {
      symbol: J !== null && J > 1 ? 'Q' : 'Le',
      value,
      unit: 'mm',
      how,
      warnings: J === null ? [{ code: 'nut-thread-left-out', text }] : [],
    },
    J,
  };
}
