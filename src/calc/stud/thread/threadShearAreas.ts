import type { Answer } from '../../../../shared/words/answer.ts';
import { printNumber } from '../../../../shared/words/print.ts';
import type { ThreadGeometry } from '../../../../shared/words/stud/thread.ts';

const SOURCE = 'FED-STD-H28/2B; ASME B1.1-2003, Appendix B';
/** tan 30°, half the thread's angle, as the standard writes it. */
const TAN_30 = 0.57735;

/**
 * Areas that must shear for the stud's thread, or the nut's, to strip over a length of engagement.
 *   As = π n Le Kn,max [1/(2n) + 0.57735 (Es,min − Kn,max)]      stud's thread
 *   An = π n Le Ds,min [1/(2n) + 0.57735 (Ds,min − En,max)]      nut's thread
 *   n threads per mm, 1/P · Le length of engagement [mm] · Kn,max greatest minor and En,max greatest pitch diameter of the
 *   nut · Es,min least pitch and Ds,min least major diameter of the stud [mm]
 *   Valid: 60° threads, both within their class; the metric analogue takes P for 1/n.
 *   Source: FED-STD-H28/2B; ASME B1.1-2003, Appendix B (formulas from memory)
 *   Example: 3/8-24 2A/2B over one diameter → 0.217 and 0.299 in² (published/studStrength.test.ts)
 */
export function threadShearAreas({
  stud,
  nut,
  lengthMm: Le,
}: {
  stud: ThreadGeometry;
  nut: ThreadGeometry;
  lengthMm: number;
}): {
  readonly studMm2: number;
  readonly nutMm2: number;
  readonly studArea: Answer;
  readonly nutArea: Answer;
} {
  const P = stud.pitchMm;
  const Kn = nut.minorMm.max!;
  const En = nut.pitchDiameterMm.max!;
  const Es = stud.pitchDiameterMm.min!;
  const Ds = stud.majorMm.min!;
  const studMm2 = ((Math.PI * Le) / P) * Kn * (P / 2 + TAN_30 * (Es - Kn));
  const nutMm2 = ((Math.PI * Le) / P) * Ds * (P / 2 + TAN_30 * (Ds - En));
  const p = (x: number) => printNumber(x, 3);
  const area = (symbol: string, value: number, formula: string, a: number, b: number): Answer => ({
    symbol,
    value,
    unit: 'mm²',
    how: [
      {
        formula,
        numbers: `π · ${p(Le)}/${p(P)} · ${p(a)} · [${p(P)}/2 + 0.57735 (${p(a === Kn ? Es : Ds)} − ${p(b)})] = ${printNumber(value, 1)} mm²`,
        source: SOURCE,
      },
    ],
    warnings: [],
  });
  return {
    studMm2,
    nutMm2,
    studArea: area('As', studMm2, 'As = π n Le Kn,max [1/(2n) + 0.57735 (Es,min − Kn,max)]', Kn, Kn),
    nutArea: area('An', nutMm2, 'An = π n Le Ds,min [1/(2n) + 0.57735 (Ds,min − En,max)]', Ds, En),
  };
}
