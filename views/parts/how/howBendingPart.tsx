import { briefLength, type LengthUnit, printNumber } from '../../../shared/words/print.ts';
import type { StiffnessAnswer, StiffnessInput } from '../../../shared/words/stiffness.ts';
import { BentSection } from '../../drawings/bentSection.tsx';
import { PressureMap } from '../../drawings/pressureMap.tsx';

interface Bent {
  /** Over the mean. */
  readonly peak: number;
  readonly rippleUm: number;
  readonly bossMm: number;
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

export interface HowBendingProps {
  readonly unit: LengthUnit;
  readonly cover: StiffnessInput;
  readonly rows: readonly BentBeside[];
  readonly finer: readonly BentAtFineness[];
  /** Conforming piston; the full wall on the track, and the thinner one. */
  readonly full: StiffnessAnswer;
  readonly thin: StiffnessAnswer;
}

/** The model explained: to a machinist in a paragraph, to an engineer in a page; then its example and its checks. */
export function HowBending({ unit, cover, rows, finer, full, thin }: HowBendingProps) {
  const [wall, left] = [rows[2]!.checked.trackWallMm, rows[3]!.checked.trackWallMm];
  const peak = (answer: StiffnessAnswer) => printNumber(answer.peakOverMean, 2);
  const rimMm = cover.rimDiameterMm;
  const places = {
    trackInnerDiameterMm: cover.trackInnerDiameterMm,
    trackOuterDiameterMm: cover.trackOuterDiameterMm,
    studCircleDiameterMm: cover.studCircleDiameterMm,
    unit,
  };
  return (
    <>
      <h2>For whoever faces the cover</h2>
      <p>
        When the lock-up comes on, oil presses the lining against the face, and with it the whole cover toward
        the engine. The pads under the studs are thick, so there the cover gives least; between the studs it
        bows away a little farther. The lining is squeezed most where the cover gives least: behind each stud
        it presses harder, slips hotter and burns first. That is why the marks sit behind the studs. In the
        example below the cover moves only {printNumber(1000 * full.rippleMm, 0)} µm farther between the studs
        than behind them, yet the lining presses {peak(full)} times as hard there as on average; with{' '}
        {briefLength(left, unit)} left on the track instead of {briefLength(wall, unit)} it is {peak(thin)}{' '}
        times. So a cover that was faced thin marks sooner, and a ring on the engine side or a stiffer cover
        makes the pressure more even. It compares one cover with another; it does not promise how long one
        lasts.
      </p>

      <h2>For an engineer</h2>
      <p>
        The flat of the cover, from the boss to the rim, is a thin plate (Kirchhoff). The load and the studs
        repeat round the axis and mirror at each stud, so half a sector is solved, 0 to π/N, with slopes
        across both its edges held at nothing.
      </p>
      <dl class="facts">
        <dt>Element</dt>
        <dd>
          Bogner–Fox–Schmit in polar coordinates: cubic Hermite over the radius times cubic Hermite round the
          axis, with w, w_r, w_θ and w_rθ at each node, so that slopes run on from element to element.
          Stiffness from the strain energy ½D[κ_r² + κ_θ² + 2ν κ_r κ_θ + 2(1 − ν)κ_rθ²] at 4 × 4 Gauss points.
        </dd>
        <dt>Thickness</dt>
        <dd>
          The wall; on the track the wall left there; under a pad wall and pad together, the round pad as a
          square of the same area. A ring is taken at two bounds: bonded, as one piece with the cover, D(t +
          t_ring), and unbonded, D(t) + D(t_ring). A ring welded at its edges lies between.
        </dd>
        <dt>Edges</dt>
        <dd>
          The boss moves along the axis as one stiff piece. The rim does not move, and the side wall, a long
          cylinder, holds it against turning: k = 2βD_s, β⁴ = 3(1 − ν²)/(R t_s)².
        </dd>
        <dt>Loads</dt>
        <dd>
          Apply pressure beyond the track, none within it; the piston’s force through the lining; the
          turbine’s thrust on the boss; each pad’s share of the thrust p·π·r_hub² rearward. With these the
          converter is in equilibrium: it floats, and the studs carry only that thrust. With a speed given,
          the oil’s head of rotation is added.
        </dd>
        <dt>Lining</dt>
        <dd>
          Springs that only push, between piston and track. A rigid piston moves as one piece and is the one
          bound; a piston that conforms, with any profile over the radius that carries the even pressure at
          each radius, is the other. A real one lies between. Where springs would pull they are let go, and
          pressed ones are taken back, until nothing changes.
        </dd>
        <dt>Solving</dt>
        <dd>
          Variable-band (skyline) Cholesky, numbered from the rim inward so that only rows from the track on
          are factored again when the contact changes; the rigid piston is a border that is eliminated.
        </dd>
        <dt>Answers</dt>
        <dd>
          Peak of the lining’s pressure over its mean, looked for on the rays of the mesh at its lines and at
          three circles between each two; ripple, the greatest less the least deflection round the middle of
          the track; boss deflection; greatest von Mises stress at the surface, farther than one wall
          thickness from a pad’s edge; and the wall at which a limit on the peak is reached.
        </dd>
      </dl>
      <h3>Its limits</h3>
      <ul>
        <li>
          Thin-plate theory leaves out shear and over-stiffens short thick pads: a 3-D solid model of stepped
          pads deflected about 12 % more. A wall of more than a tenth of the flat’s width gets a warning.
        </li>
        <li>
          Small deflections: past half a wall a plate also stretches, and moves less than shown. Elastic: past
          yield the deflections are not to be relied on, and the answer says so.
        </li>
        <li>The greatest stress is good to about 5 %; nearer a pad’s edge it is higher.</li>
        <li>
          A flat of one thickness with a track, pads and one ring. Ribs, dimples, steps, welds and their pull,
          cracks and the heat’s own bending are not in it.
        </li>
        <li>
          One modulus for the lining, the same all over; oil in its grooves, wear and a face that is not flat
          are not in it.
        </li>
        <li>Without a speed, ballooning by the oil’s rotation is left out.</li>
      </ul>

      <h2>Its example</h2>
      <p>
        Steel of {printNumber(cover.youngMPa / 1000, 0)} GPa, ν {cover.poisson}. Boss Ø{' '}
        {briefLength(cover.bossDiameterMm, unit)}, rim Ø {briefLength(rimMm, unit)}, track Ø{' '}
        {briefLength(cover.trackInnerDiameterMm, unit)} to {briefLength(cover.trackOuterDiameterMm, unit)},{' '}
        {cover.studCount} studs on Ø {briefLength(cover.studCircleDiameterMm, unit)}, pads Ø{' '}
        {briefLength(cover.padDiameterMm, unit)} and {briefLength(cover.padThicknessMm, unit)} thick, wall{' '}
        {briefLength(cover.wallMm, unit)}, side wall {briefLength(cover.sideWallMm, unit)}, piston seal Ø{' '}
        {briefLength(cover.pistonSealDiameterMm, unit)}, hub Ø {briefLength(cover.hubDiameterMm, unit)},{' '}
        {cover.pressureMPa} MPa, lining {cover.liningModulusMPaPerMm} MPa/mm. The mean pressure is{' '}
        {printNumber(full.meanPressureMPa, 4)} MPa in every row.
      </p>
      <div class="table-box" tabindex={0}>
        <table class="figures beside-checked">
          <caption>Worked out here; small below it, the second implementation</caption>
          <thead>
            <tr>
              <th scope="col">piston, wall on the track</th>
              <th scope="col">peak ÷ mean</th>
              <th scope="col">
                ripple <span class="unit-in-head">µm</span>
              </th>
              <th scope="col">
                boss <span class="unit-in-head">mm</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ checked, ...found }) => (
              <tr>
                <th scope="row">
                  {checked.piston}, {briefLength(checked.trackWallMm, unit)}
                  {checked.speedRpm !== null && `, ${checked.speedRpm} rpm`}
                </th>
                <td>
                  {printNumber(found.peak, 4)}
                  <small>{printNumber(checked.peak, 4)}</small>
                </td>
                <td>
                  {printNumber(found.rippleUm, 2)}
                  <small>{printNumber(checked.rippleUm, 2)}</small>
                </td>
                <td>
                  {printNumber(found.bossMm, 4)}
                  <small>{printNumber(checked.bossMm, 4)}</small>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p>
        The second implementation is independent of this program and not published; its meshes are converged.
        A third, Fourier round the axis and Hermite over the radius, agrees with the second within 1 %. The
        same elements give the closed forms of solid and annular plates in handbooks to 0.2 %
        (tests/published/plates.test.ts).
      </p>
      <div class="table-box" tabindex={0}>
        <table class="figures">
          <caption>Coarser and finer elements: conforming piston</caption>
          <thead>
            <tr>
              <th scope="col">each way</th>
              <th scope="col">unknowns</th>
              <th scope="col">peak ÷ mean</th>
              <th scope="col">
                ripple <span class="unit-in-head">µm</span>
              </th>
              <th scope="col">
                boss <span class="unit-in-head">mm</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {finer.map((row) => (
              <tr>
                <th scope="row">{row.fineness === 1 ? 'as used' : `${row.fineness} ×`}</th>
                <td>{row.unknowns}</td>
                <td>{printNumber(row.peak, 4)}</td>
                <td>{printNumber(row.rippleUm, 2)}</td>
                <td>{printNumber(row.bossMm, 4)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <h3>
        Where its lining presses, with {briefLength(left, unit)} left on the track and a conforming piston
      </h3>
      <PressureMap
        {...places}
        id="how-map"
        map={thin.pressureMap}
        meanPressureMPa={thin.meanPressureMPa}
        peakOverMean={thin.peakOverMean}
        peakAt={thin.peakAt}
        studCount={cover.studCount}
        marks={[]}
      />
      <h3>How it bends</h3>
      <BentSection
        {...places}
        id="how-section"
        curves={[
          { label: `${briefLength(wall, unit)} on the track`, section: full.section },
          { label: `${briefLength(left, unit)} on the track`, section: thin.section },
        ]}
        bossDiameterMm={cover.bossDiameterMm}
        rimDiameterMm={rimMm}
      />
    </>
  );
}
