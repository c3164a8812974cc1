/** The model in a page, and what it leaves out. */
export function ForAnEngineer() {
  return (
    <>
      <h2>For an engineer</h2>
      <p>
        The flat of the cover, from its center to the rim, is a thin plate (Kirchhoff). Load and studs repeat
        around the axis and mirror at each stud. So half a sector is solved, 0 to π/N, with zero slope across
        both its edges.
      </p>
      <Model />
      <Limits />
    </>
  );
}

function Model() {
  return (
    <dl class="facts">
      <dt>Elements</dt>
      <dd>
        Bogner–Fox–Schmit in polar coordinates: cubic Hermite along the radius times cubic Hermite around the
        axis. Each node has w, w_r, w_θ and w_rθ, so slopes are continuous between elements. Stiffness comes
        from the strain energy ½D[κ_r² + κ_θ² + 2ν κ_r κ_θ + 2(1 − ν)κ_rθ²] at 4 × 4 Gauss points.
      </dd>
      <dt>Thickness</dt>
      <dd>
        The wall; on the friction surface, the wall left there; under a pad, wall and pad together. A round
        pad is taken as a square of the same area. Its stiff part begins δ = 0.44 walls inside its edge,
        because the wall gives at its root in the pad: it turns by θ = (16.67/π)(1 − ν²)·M/(E·h²), as if it
        were 0.442 h longer (O’Donnell 1960, from memory). Two bounds by hand confirm it: 0.424 h for a stiff
        root, 0.477 h for a straight line of stress. A pad’s load acts on all of it. A ring welded to the pads
        all around is taken at two bounds: bonded, as one piece with the cover, D(t + t_ring), and unbonded,
        D(t) + D(t_ring). Any other ring is left out.
      </dd>
      <dt>Edges</dt>
      <dd>
        The center moves along the axis as one rigid piece. The rim does not move. The side wall, a long
        cylinder, resists its turning: k = 2βD_s, β⁴ = 3(1 − ν²)/(R t_s)².
      </dd>
      <dt>Loads</dt>
      <dd>
        Apply pressure outside the friction surface and none inside it; the piston’s force through the lining;
        the turbine’s thrust on the center; each pad’s share of the thrust p·π·r_hub², rearward. These are in
        equilibrium: the converter floats, and the studs carry only that thrust. With a speed given, the
        pressure of the spinning oil is added.
      </dd>
      <dt>Lining</dt>
      <dd>
        Springs between piston and friction surface that can only push. A rigid piston moves as one piece: one
        bound. A conforming piston takes any profile along the radius that carries the even pressure at each
        radius: the other. A real one is between. Springs that would pull are released, and pressed ones are
        taken back, until nothing changes.
      </dd>
      <dt>Solving</dt>
      <dd>
        Variable-band (skyline) Cholesky, numbered from the rim inward, so that only rows from the friction
        surface on are factored again when contact changes. The rigid piston is a border that is eliminated.
      </dd>
      <dt>Answers</dt>
      <dd>
        Peak lining pressure over its mean, on the mesh’s rays, at its circles and at three more between each
        two. Waviness: the greatest less the least deflection around the middle of the friction surface.
        Deflection of the center. Greatest von Mises stress at the surface, more than one wall thickness from
        a pad’s edge. And the wall at which a limit on the peak is reached.
      </dd>
    </dl>
  );
}

function Limits() {
  return (
    <>
      <h3>Its limits</h3>
      <ul>
        <li>
          Thin-plate theory leaves out shear, and a pad is no plate. The tables below compare the model with a
          solid one. A wall of more than a tenth of the flat’s width gets a warning.
        </li>
        <li>
          Where round pads reach more than half a wall over the friction surface, the pressure peak comes out
          up to 10 % too low. That is the unsafe side. The answer warns of it.
        </li>
        <li>
          A ring with air around the pads, welded at its edges only, can reverse the waviness: 0.3 to 1.1
          times that without a ring, in the solid. It gets no credit.
        </li>
        <li>
          Deflections are taken as small. Past half a wall a plate also stretches, and moves less than shown.
        </li>
        <li>
          Steel is taken as elastic. Past yield the deflections can’t be relied on, and the answer says so.
        </li>
        <li>The greatest stress is good to about 5 %. Nearer a pad’s edge it is higher.</li>
        <li>
          The flat has one thickness, a friction surface, pads and one ring. Ribs, dimples, steps, welds and
          their pull, cracks and bending by heat are not included.
        </li>
        <li>
          One lining stiffness everywhere. Oil in the grooves, wear and a face that is not flat are not
          included.
        </li>
        <li>Without a speed, ballooning from the spinning oil is left out.</li>
      </ul>
    </>
  );
}
