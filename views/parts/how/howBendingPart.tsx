import { briefLength, type LengthUnit, printNumber, printShare } from '../../../shared/words/print.ts';
import {
  OFF_SOLID,
  OFF_SOLID_DRAWN,
  offAtMost,
  offInWords,
  RING_WIDENED,
} from '../../../shared/words/solid.ts';
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
  /** Conforming piston, pads by the rule adopted. */
  readonly solid: readonly SolidBeside[];
  /** Joined to the pads; as shares of the same cover without a ring. */
  readonly rings: readonly RingBeside[];
}

export interface SolidBeside {
  readonly name: string;
  readonly studCount: number;
  readonly trackWallMm: number;
  readonly found: Bent;
  readonly solid: Bent;
}

interface Shares {
  readonly ripple: number;
  readonly boss: number;
  readonly peak: number;
}

export interface RingBeside {
  readonly name: string;
  readonly bonded: Shares;
  readonly unbonded: Shares;
  readonly joined: Shares;
  readonly apart: Shares;
}

/** The model explained: to a machinist in a paragraph, to an engineer in a page; then its example and its checks. */
export function HowBending({ unit, cover, rows, finer, full, thin, solid, rings }: HowBendingProps) {
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
          square of the same area. The stiff part of a pad begins δ = 0.44 walls within its edge, because the
          wall’s root in the pad gives way: it turns by θ = (16.67/π)(1 − ν²)·M/(E·h²), as if the wall were
          longer by 0.442 h (O’Donnell 1960, from memory; two bounds by hand, 0.424 h for a stiff root and
          0.477 h for stress in a straight line, hold it). The load of a pad lies on all of it. A ring welded
          to the pads all round is taken at two bounds: bonded, as one piece with the cover, D(t + t_ring),
          and unbonded, D(t) + D(t_ring). Any other ring is left out.
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
          Thin-plate theory leaves out shear, and a pad is no plate: the tables below set the model beside a
          solid one. A wall of more than a tenth of the flat’s width gets a warning.
        </li>
        <li>
          Where the round pads reach more than half a wall over the friction surface, the pressure peak comes
          out up to 10 % too low. That is the unsafe side, and the answer warns of it.
        </li>
        <li>
          A ring with air round the pads, welded at its edges only, can reverse the ripple: 0.3 to 1.1 of that
          without a ring in the solid. It gets no credit.
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
      <BesideSolid covers={solid} rings={rings} unit={unit} />
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

/** Model, solid and difference, cover by cover, new and cut. */
function BesideSolid({ covers, rings, unit }: Pick<HowBendingProps, 'unit'> & BesideSolidProps) {
  const off = (found: number, solid: number) => {
    const percent = 100 * (found / solid - 1);
    return `${percent < 0 ? '−' : '+'}${printNumber(Math.abs(percent), 1)} %`;
  };
  const cells = (found: number, solid: number, decimals: number) => (
    <>
      <td>{printNumber(found, decimals)}</td>
      <td>{printNumber(solid, decimals)}</td>
      <td>{off(found, solid)}</td>
    </>
  );
  const three = (
    <>
      <th scope="col">model</th>
      <th scope="col">solid</th>
      <th scope="col">difference</th>
    </>
  );
  return (
    <>
      <h3>Beside a solid model</h3>
      <p>
        Five covers were also worked out as three-dimensional solids: an independent second implementation,
        not published. It has round pads joined to the wall, the side wall as a cylinder, and a conforming
        piston. A finer mesh moves its ripple by less than 1 %.
      </p>
      <p>
        With pads as drawn the model’s ripple was {offInWords(OFF_SOLID_DRAWN.ripple)}, and the center of the
        solid deflected up to 9 % more. Cut over new agreed within {offAtMost(OFF_SOLID_DRAWN.cutRipple)}{' '}
        there for ripple, and agrees within {offAtMost(OFF_SOLID.cutRipple)} now.
      </p>
      <div class="table-box" tabindex={0}>
        <table class="figures" id="beside-solid">
          <caption>Beside an independent second implementation, not published</caption>
          <thead>
            <tr>
              <th scope="col" rowspan={2}>
                cover, wall on the track
              </th>
              <th scope="colgroup" colspan={3}>
                ripple <span class="unit-in-head">µm</span>
              </th>
              <th scope="colgroup" colspan={3}>
                center <span class="unit-in-head">mm</span>
              </th>
              <th scope="colgroup" colspan={3}>
                peak ÷ mean
              </th>
            </tr>
            <tr>
              {three}
              {three}
              {three}
            </tr>
          </thead>
          <tbody>
            {covers.map(({ name, studCount, trackWallMm, found, solid }) => (
              <tr>
                <th scope="row">
                  {name}, {studCount} studs, {briefLength(trackWallMm, unit)}
                </th>
                {cells(found.rippleUm, solid.rippleUm, 2)}
                {cells(found.bossMm, solid.bossMm, 4)}
                {cells(found.peak, solid.peak, 3)}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div class="table-box" tabindex={0}>
        <table class="figures" id="ring-beside-solid">
          <caption>
            A ring 6 mm thick on the cut cover, as shares of the same cover without it; beside an independent
            second implementation, not published
          </caption>
          <thead>
            <tr>
              <th scope="col">cover</th>
              <th scope="col">share of</th>
              <th scope="col">model, bonded</th>
              <th scope="col">model, unbonded</th>
              <th scope="col">solid, joined to the pads</th>
              <th scope="col">solid, air round the pads</th>
            </tr>
          </thead>
          <tbody>
            {rings.flatMap(({ name, bonded, unbonded, joined, apart }) =>
              (['ripple', 'peak', 'boss'] as const).map((of) => (
                <tr>
                  <th scope="row">{name}</th>
                  <td>{of === 'boss' ? 'center' : of}</td>
                  <td>{printNumber(bonded[of], 2)}</td>
                  <td>{printNumber(unbonded[of], 2)}</td>
                  <td>{printNumber(joined[of], 2)}</td>
                  <td>
                    {printNumber(apart[of], 2)}
                    {of === 'ripple' && ', reversed'}
                  </td>
                </tr>
              )),
            )}
          </tbody>
        </table>
      </div>
      <p>
        Joined to the pads, ripple and pressure peak lie between both bounds. Two rings are few, so the bounds
        are widened by {printShare(RING_WIDENED.ripple - 1, 0)} and {printShare(RING_WIDENED.peak - 1, 0)},
        the most that cut over new is off above. The center lies outside both: no bound on it is given.
      </p>
    </>
  );
}

interface BesideSolidProps {
  readonly covers: HowBendingProps['solid'];
  readonly rings: HowBendingProps['rings'];
}
