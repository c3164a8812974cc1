import type { HeatInput, HeatRise } from '../../../shared/words/bending/heat.ts';
import {
  briefLength,
  CONDUCTIVITY,
  DENSITY,
  HEAT_FLUX,
  HOTTER,
  type LengthUnit,
  printAs,
  printNumber,
  SPECIFIC_HEAT,
} from '../../../shared/words/print.ts';

type Rise = Pick<HeatRise, 'peakRiseK' | 'peakAtS' | 'endRiseK'>;

export interface HowHeatProps {
  readonly unit: LengthUnit;
  readonly engagement: HeatInput;
  /** Worked out here, beside what an independent implementation finds. */
  readonly rows: readonly {
    readonly found: HeatRise;
    readonly checked: Rise & { readonly thicknessMm: number };
  }[];
}

/** Heat explained: to a machinist, to an engineer; then its example. */
export function HowHeat({ unit, engagement, rows }: HowHeatProps) {
  const [thick, thin] = [rows[0]!, rows[1]!];
  const hotter = (kelvin: number) => printAs(kelvin, HOTTER[unit]);
  return (
    <>
      <h2>For the machinist</h2>
      <p>
        While the lock-up slips, rubbing heats the face faster than the heat can soak into the steel behind
        it. The face is hottest in the middle of the slip, then cools as the heat spreads through the wall.
      </p>
      <p>
        How hot it gets at its worst depends little on the wall. In the example it is{' '}
        {hotter(thick.found.peakRiseK)} hotter with {briefLength(thick.checked.thicknessMm, unit)} and{' '}
        {hotter(thin.found.peakRiseK)} with {briefLength(thin.checked.thicknessMm, unit)}. But a thinner wall
        stays hot: {hotter(thick.found.endRiseK)} and {hotter(thin.found.endRiseK)} when the slip ends. It is
        that much warmer when the next slip begins. Behind a stud the lining presses harder, and all of it is
        more by as much. That is where the heat marks come from.
      </p>
      <ForAnEngineer />
      <h2>Its example</h2>
      <p>
        {printAs(engagement.fluxWPerM2, HEAT_FLUX[unit])} over {engagement.slipTimeS} s. Steel of{' '}
        {printAs(engagement.conductivityWPerMK, CONDUCTIVITY[unit])},{' '}
        {printAs(engagement.densityKgPerM3, DENSITY[unit])},{' '}
        {printAs(engagement.specificHeatJPerKgK, SPECIFIC_HEAT[unit])}.
      </p>
      <BesideChecked rows={rows} unit={unit} />
    </>
  );
}

function ForAnEngineer() {
  return (
    <>
      <h2>For an engineer</h2>
      <p>
        One engagement with slip speed falling evenly over t_s under a steady torque: flux q₀(1 − t/t_s) into
        the face, q₀ = share·T·ω/A. The cover is a slab, heated on one face, insulated at the other. Its step
        response F(t) is in closed form; the rise is q₀[F(t) − (1/t_s)∫₀ᵗF dt] (Duhamel). Behind a stud the
        flux is multiplied by the pressure peak of the bending model, as if the slab were as hot all around.
      </p>
      <h3>Its limits</h3>
      <ul>
        <li>
          Heat goes straight through the wall. What goes sideways makes a spot behind a stud somewhat cooler.
        </li>
        <li>No heat goes into the oil while it slips, and none is left from the slip before.</li>
        <li>The steel’s properties do not change with heat. Past a rise of 300 K the answer says so.</li>
        <li>
          The share of heat into the cover, the torque and the slip time are the shop’s figures. The answer is
          no better than they are. Temper colors are a rough guide.
        </li>
      </ul>
    </>
  );
}

function BesideChecked({ rows, unit }: Pick<HowHeatProps, 'rows' | 'unit'>) {
  const rise = HOTTER[unit];
  const figure = (kelvin: number) => printNumber(kelvin * rise.per, 2);
  return (
    <div class="table-box" tabindex={0}>
      <table class="figures beside-checked">
        <caption>
          Worked out here; in small figures, an independent second implementation, not published
        </caption>
        <thead>
          <tr>
            <th scope="col">wall</th>
            <th scope="col">
              peak <span class="unit-in-head">{rise.unit}</span>
            </th>
            <th scope="col">
              at <span class="unit-in-head">s</span>
            </th>
            <th scope="col">
              end <span class="unit-in-head">{rise.unit}</span>
            </th>
            <th scope="col">
              spread out <span class="unit-in-head">{rise.unit}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ found, checked }) => (
            <tr>
              <th scope="row">{briefLength(checked.thicknessMm, unit)}</th>
              <td>
                {figure(found.peakRiseK)}
                <small>{figure(checked.peakRiseK)}</small>
              </td>
              <td>
                {printNumber(found.peakAtS, 3)}
                <small>{printNumber(checked.peakAtS, 3)}</small>
              </td>
              <td>
                {figure(found.endRiseK)}
                <small>{figure(checked.endRiseK)}</small>
              </td>
              <td>{figure(found.evenRiseK)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
