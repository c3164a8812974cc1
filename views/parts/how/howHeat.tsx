import type { HeatInput, HeatRise } from '../../../shared/words/heat.ts';
import { briefLength, type LengthUnit, printNumber } from '../../../shared/words/print.ts';

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

/** The same for heat. */
export function HowHeat({ unit, engagement, rows }: HowHeatProps) {
  const [thick, thin] = [rows[0]!, rows[1]!];
  return (
    <>
      <h2>For whoever faces the cover</h2>
      <p>
        While the lock-up slips, the face is rubbed hot faster than the heat can run into the steel behind it.
        The face is hottest in the middle of the slip, then cools as the heat spreads through the wall. How
        hot it gets at its worst hangs little on the wall: {printNumber(thick.found.peakRiseK, 0)} K with{' '}
        {briefLength(thick.checked.thicknessMm, unit)}, {printNumber(thin.found.peakRiseK, 0)} K with{' '}
        {briefLength(thin.checked.thicknessMm, unit)} in the example. What a thinner wall does is stay hot:
        when the slip ends it is {printNumber(thick.found.endRiseK, 0)} against{' '}
        {printNumber(thin.found.endRiseK, 0)} K, and it is that much warmer when the next one begins. Behind a
        stud the lining presses harder, and all of it is larger by as much: that is where the marks come from.
      </p>
      <ForAnEngineer />
      <h2>Its example</h2>
      <p>
        {printNumber(engagement.fluxWPerM2 / 1e6, 1)} MW/m² over {engagement.slipTimeS} s; steel of{' '}
        {engagement.conductivityWPerMK} W/(m·K), {engagement.densityKgPerM3} kg/m³,{' '}
        {engagement.specificHeatJPerKgK} J/(kg·K).
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
        flux is multiplied by the pressure peak of the bending model, as if the slab were as hot all round.
      </p>
      <h3>Its limits</h3>
      <ul>
        <li>
          Heat straight through the wall: what runs sideways makes a spot behind a stud somewhat cooler.
        </li>
        <li>No heat into the oil while it slips, and none from the engagement before.</li>
        <li>Properties of the steel that do not change; past a rise of 300 K the answer says so.</li>
        <li>
          The share of heat that goes into the cover, the torque and the slip time are the user’s figures; the
          answer is no better than they are. Temper colours are a rough guide.
        </li>
      </ul>
    </>
  );
}

function BesideChecked({ rows, unit }: Pick<HowHeatProps, 'rows' | 'unit'>) {
  return (
    <div class="table-box" tabindex={0}>
      <table class="figures beside-checked">
        <caption>
          Worked out here; small below it, an independent second implementation, not published
        </caption>
        <thead>
          <tr>
            <th scope="col">wall</th>
            <th scope="col">
              peak <span class="unit-in-head">K</span>
            </th>
            <th scope="col">
              at <span class="unit-in-head">s</span>
            </th>
            <th scope="col">
              end <span class="unit-in-head">K</span>
            </th>
            <th scope="col">
              even after <span class="unit-in-head">K</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ found, checked }) => (
            <tr>
              <th scope="row">{briefLength(checked.thicknessMm, unit)}</th>
              <td>
                {printNumber(found.peakRiseK, 2)}
                <small>{printNumber(checked.peakRiseK, 2)}</small>
              </td>
              <td>
                {printNumber(found.peakAtS, 3)}
                <small>{printNumber(checked.peakAtS, 3)}</small>
              </td>
              <td>
                {printNumber(found.endRiseK, 2)}
                <small>{printNumber(checked.endRiseK, 2)}</small>
              </td>
              <td>{printNumber(found.evenRiseK, 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
