import {
  briefLength,
  type LengthUnit,
  lengthFigure,
  printNumber,
  WAVINESS,
} from '../../../../shared/words/print.ts';

/** What one row of a table shows. */
export interface Bent {
  /** Over the mean. */
  readonly peak: number;
  readonly rippleMm: number;
  readonly centerMm: number;
}

/** One row of the example, beside what an independent implementation finds. */
export interface BentBeside extends Bent {
  readonly checked: Bent & {
    readonly piston: 'rigid' | 'conforming';
    readonly trackWallMm: number;
    readonly speedRpm: number | null;
  };
}

export interface BentAtFineness extends Bent {
  readonly fineness: number;
  readonly unknowns: number;
}

/** The three figures as they are printed: `1.2795`, `10.97`, `1.0305`. */
export function bentFigures({ peak, rippleMm, centerMm }: Bent, unit: LengthUnit) {
  const { per, decimals } = WAVINESS[unit];
  return {
    peak: printNumber(peak, 4),
    ripple: printNumber(rippleMm * per, decimals + 1),
    center: lengthFigure(centerMm, unit),
  };
}

function Heads({ unit }: { unit: LengthUnit }) {
  return (
    <>
      <th scope="col">peak ÷ mean</th>
      <th scope="col">
        waviness <span class="unit-in-head">{WAVINESS[unit].unit}</span>
      </th>
      <th scope="col">
        center <span class="unit-in-head">{unit}</span>
      </th>
    </>
  );
}

export function BesideSecond({ rows, unit }: { rows: readonly BentBeside[]; unit: LengthUnit }) {
  return (
    <>
      <div class="table-box" tabindex={0}>
        <table class="figures beside-checked">
          <caption>Worked out here; in small figures, the second implementation</caption>
          <thead>
            <tr>
              <th scope="col">piston, wall on the friction surface</th>
              <Heads unit={unit} />
            </tr>
          </thead>
          <tbody>
            {rows.map(({ checked, ...row }) => {
              const [found, theirs] = [bentFigures(row, unit), bentFigures(checked, unit)];
              return (
                <tr>
                  <th scope="row">
                    {checked.piston}, {briefLength(checked.trackWallMm, unit)}
                    {checked.speedRpm !== null && `, ${checked.speedRpm} rpm`}
                  </th>
                  {(['peak', 'ripple', 'center'] as const).map((of) => (
                    <td>
                      {found[of]}
                      <small>{theirs[of]}</small>
                    </td>
                  ))}
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      <p>
        The second implementation is independent and not published; its meshes are converged. A third, Fourier
        around the axis and Hermite along the radius, agrees with it within 1 %. The same elements give the
        closed forms of solid and annular plates in handbooks to 0.2 %.
      </p>
    </>
  );
}

export function FinerElements({ rows, unit }: { rows: readonly BentAtFineness[]; unit: LengthUnit }) {
  return (
    <div class="table-box" tabindex={0}>
      <table class="figures">
        <caption>Coarser and finer elements: conforming piston</caption>
        <thead>
          <tr>
            <th scope="col">elements each way</th>
            <th scope="col">unknowns</th>
            <Heads unit={unit} />
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => {
            const { peak, ripple, center } = bentFigures(row, unit);
            return (
              <tr>
                <th scope="row">{row.fineness === 1 ? 'as used' : `${row.fineness} ×`}</th>
                <td>{row.unknowns}</td>
                <td>{peak}</td>
                <td>{ripple}</td>
                <td>{center}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </div>
  );
}
