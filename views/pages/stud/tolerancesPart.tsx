import { type LengthUnit, lengthFigure, printNumber } from '../../../shared/words/print.ts';
import type { ToleranceRow } from '../../../shared/words/stud/stud.ts';

export interface TolerancesProps {
  readonly rows: readonly ToleranceRow[];
  readonly draws: number;
  readonly anyFails: number;
  readonly unit: LengthUnit;
}

const CHECK: Readonly<Record<ToleranceRow['id'], string>> = {
  clamps: 'Clamping',
  engaged: 'Full thread engagement',
  protrudes: 'Threads past the nut',
  starts: 'Nut starts by hand',
  shows: 'Stud end past the engine side',
  enters: 'Stud end in its hole',
  clears: 'Stud end clearance',
  lines: 'Lining up the pieces',
};

/** What is left over in each length check, three ways, and how often it would fail. */
export function Tolerances({ rows, draws, unit }: Omit<TolerancesProps, 'anyFails'>) {
  return (
    <section class="scroll" tabindex={0} aria-label="Tolerances">
      <table class="figures">
        <caption>
          Margin, {unit}; below zero the check fails. Worst case: every size at its worst at once. RSS: likely
          spread, root of the sum of squares. Simulation: {draws} assemblies, each size anywhere within its
          tolerance.
        </caption>
        <thead>
          <tr>
            <th scope="col">Check</th>
            <th scope="col">Nominal</th>
            <th scope="col">RSS</th>
            <th scope="col">Worst case</th>
            <th scope="col">Simulation: fails</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr>
              <th scope="row">{CHECK[row.id]}</th>
              <td>{lengthFigure(row.nominalMm, unit, 'coarse')}</td>
              <td>{lengthFigure(row.rssMm, unit, 'coarse')}</td>
              <td>{lengthFigure(row.worstMm, unit, 'coarse')}</td>
              <td>{shareInWords(row.failShare, draws)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** "no assembly", "12.5 % of assemblies". */
export function assembliesInWords({ anyFails, draws }: Pick<TolerancesProps, 'anyFails' | 'draws'>): string {
  const said = shareInWords(anyFails, draws);
  return said === 'none' ? 'no assembly' : said === 'all' ? 'every assembly' : `${said} of assemblies`;
}

/** "none", "under 0.1 %", "12.5 %", "all". */
function shareInWords(share: number, draws: number): string {
  if (share < 0.5 / draws) return 'none';
  if (share > 1 - 0.5 / draws) return 'all';
  if (share < 0.001) return 'under 0.1 %';
  if (share > 0.999) return 'over 99.9 %';
  return `${printNumber(100 * share, 1)} %`;
}
