import { bendCover } from '../../src/calc/plate/bendCover.ts';
import { bendingBase } from '../../src/calc/plate/bendingBase.ts';
import { bendingCases } from '../../src/calc/plate/bendingCases.ts';
import { assembleLoad, assembleStiffness } from '../../src/calc/plate/elements/assemble.ts';
import { ELEMENT_FREEDOMS, shapes } from '../../src/calc/plate/elements/element.ts';
import { numberFreedoms } from '../../src/calc/plate/elements/freedoms.ts';
import { GAUSS_AT, GAUSS_COUNT, GAUSS_WEIGHT } from '../../src/calc/plate/elements/gauss.ts';
import { hermite } from '../../src/calc/plate/elements/hermite.ts';
import { gradedLines } from '../../src/calc/plate/elements/mesh.ts';
import { emptySkyline, factor, solveFactored } from '../../src/calc/plate/elements/skyline.ts';
import { greatestStress } from '../../src/calc/plate/greatestStress.ts';
import { activeSet } from '../../src/calc/plate/lining/activeSet.ts';
import { marksHeld } from '../../src/calc/plate/marksHeld.ts';
import { coverForces } from '../../src/calc/plate/model/coverForces.ts';
import { coverMesh } from '../../src/calc/plate/model/coverMesh.ts';
import { coverModel } from '../../src/calc/plate/model/coverModel.ts';
import { flexuralRigidity } from '../../src/calc/plate/model/flexuralRigidity.ts';
import { padPatch } from '../../src/calc/plate/model/padPatch.ts';
import { sideWallSpring } from '../../src/calc/plate/model/sideWallSpring.ts';
import { stiffPad } from '../../src/calc/plate/model/stiffPad.ts';
import { padsOverTrack } from '../../src/calc/plate/padsOverTrack.ts';
import { ringTold } from '../../src/calc/plate/ringTold.ts';
import { type SolvedCover, solveCover } from '../../src/calc/plate/solveCover.ts';
import { wallForPeak } from '../../src/calc/plate/wallForPeak.ts';
import { demoCriteria } from '../demo/criteria.ts';
import { demoFamilies } from '../demo/families.ts';
import { COVER } from './bentCover.ts';
import { SOLID } from './solidCovers.ts';
import { type Example, figure, shown, worked } from './worked.ts';

const CONFORMING = { ...COVER, piston: 'conforming' } as const;
let kept: SolvedCover | null = null;
/** Solved once: half of the examples look at it. */
const conforming = () => {
  kept ??= solveCover(CONFORMING);
  return kept;
};
const SAID =
  'the cover of the example above: center Ø 90, rim Ø 300, friction surface Ø 214 to 264, 4 studs on Ø 286, pads Ø 24 × 10, wall 5 mm, 0.7 MPa';

/** By the file each belongs to. Those that solve the cover share it with the example above. */
export const plateExamples: Readonly<Record<string, Example>> = {
  activeSet: shown(
    'three springs under a bar that is pressed at one end: squeezed 3, 1 and −1 mm while all are pressed, 3.5 and 0.5 mm once the third is let go',
    () => {
      const { active, rounds } = activeSet({
        count: 3,
        squeezedBy: (pressed) => Float64Array.from(pressed[2] === 1 ? [3, 1, -1] : [3.5, 0.5, -2]),
      });
      return [
        `pressed: ${[...active].map((on) => (on === 1 ? 'yes' : 'no')).join(', ')}; settled in ${rounds} rounds`,
      ];
    },
  ),
  assemble: shown('one ring of elements from radius 90 to 100 mm, D 1000 N·mm, 0.1 MPa all over', () => {
    const mesh = { radiiMm: Float64Array.of(90, 100), anglesRad: Float64Array.of(0, 0.1) };
    const freedoms = numberFreedoms({ mesh, inner: 'free', outer: 'free' });
    const stiffness = assembleStiffness({ mesh, freedoms, rigidityNmm: Float64Array.of(1000), poisson: 0.3 });
    const load = assembleLoad({ mesh, freedoms, pressureAt: () => 0.1 });
    let force = 0;
    for (let node = 0; node < 4; node++) force += load[freedoms.unknown[4 * node]!] ?? 0;
    return [
      `${stiffness.size} unknowns, ${stiffness.values.length} entries kept`,
      `the load’s forces come to ${figure(force)} N; pressure times area is ${figure((0.1 * 0.1 * (100 ** 2 - 90 ** 2)) / 2)} N`,
    ];
  }),
  bendingBase: shown(
    'the demo shop’s cover type 1125-4, plain wall; and its 1000-3, which lacks figures',
    () => {
      const [whole, part] = ['1125-4-plain', '1000-3-plain'].map((id) =>
        bendingBase(demoFamilies.find((one) => one.id === id)!.family, demoCriteria.bending ?? null),
      );
      return [
        `1125-4: flat of ${figure(whole!.base!.wallMm)} mm at ${figure(whole!.base!.pressureMPa)} MPa, missing nothing`,
        `1000-3: missing ${part!.missing.join(', ')}`,
      ];
    },
  ),
  bendingCases: shown(
    `${SAID}; thinnest 4.8 mm, 4.4 mm after the cut, a ring Ø 236 to 296 × 6 allowed, welded to the pads`,
    () =>
      bendingCases({
        base: COVER,
        leastBeforeMm: 4.8,
        leastAfterMm: 4.4,
        ring: { innerDiameterMm: 236, outerDiameterMm: 296, thicknessMm: 6, joinedToPads: true },
        welded: false,
      }).map(
        ({ id, trackWallMm, ring }) =>
          `${id}: ${figure(trackWallMm)} mm on the friction surface, ${ring === null ? 'no ring' : ring.bonded ? 'ring bonded' : 'ring unbonded'}`,
      ),
  ),
  bendCover: shown(`${SAID}; conforming piston`, () => {
    const found = bendCover(CONFORMING);
    return [
      `peak ${figure(found.peakOverMean)} times the mean of ${figure(found.meanPressureMPa)} MPa, ripple ${figure(1000 * found.rippleMm)} µm, center ${figure(found.bossDeflectionMm)} mm`,
    ];
  }),
  conformingPiston: shown(`${SAID}; conforming piston`, () => [
    `peak ${figure(conforming().peak.peakOverMean)} times the mean`,
  ]),
  coverForces: worked(coverForces, [COVER], SAID),
  coverMesh: shown(SAID, () => {
    const { radiiMm, anglesRad } = coverMesh(COVER);
    return [`${radiiMm.length} circles and ${anglesRad.length} rays over half a sector`];
  }),
  coverModel: shown(SAID, () => {
    const model = coverModel(COVER);
    return [
      `${model.freedoms.size} unknowns; D from ${figure(Math.min(...model.rigidityNmm) / 1000)} to ${figure(Math.max(...model.rigidityNmm) / 1000)} N·m; rim held with ${figure(model.rimSpringN / 1000)} kN`,
    ];
  }),
  element: shown('the sixteen functions in the middle of an element 10 mm by 0.1 rad', () => {
    const [r, t, out] = [new Float64Array(12), new Float64Array(12), new Float64Array(ELEMENT_FREEDOMS)];
    hermite(0.5, 10, r);
    hermite(0.5, 0.1, t);
    shapes(r, 0, t, 0, out);
    const [a, b, c, d] = [out[0]!, out[4]!, out[8]!, out[12]!];
    return [
      `those of the four corners’ deflections: ${[a, b, c, d].map(figure).join(', ')}; together ${figure(a + b + c + d)}`,
    ];
  }),
  field: shown(`${SAID}; conforming piston`, () => {
    const { field } = conforming();
    return [
      `middle of the friction surface: ${figure(field.deflectionMm(119.5, 0))} mm and ${figure(field.pressureMPa(119.5, 0))} MPa behind a stud, ${figure(field.deflectionMm(119.5, Math.PI / 4))} mm and ${figure(field.pressureMPa(119.5, Math.PI / 4))} MPa midway`,
    ];
  }),
  flexuralRigidity: worked(
    (given: Parameters<typeof flexuralRigidity>[0]) => ({ rigidityNmm: flexuralRigidity(given) }),
    [{ youngMPa: 206_000, poisson: 0.29, thicknessMm: 5 }],
  ),
  freedoms: shown('the cover’s mesh, its center one stiff piece, its rim held', () => {
    const { anglesRad, radiiMm } = coverMesh(COVER);
    const all = 4 * radiiMm.length * anglesRad.length;
    return [`${all} freedoms at the nodes, ${coverModel(COVER).freedoms.size} of them free to move`];
  }),
  gauss: shown('x⁷ from 0 to 1, which four points carry exactly: 1/8', () => {
    let sum = 0;
    for (let i = 0; i < GAUSS_COUNT; i++) sum += GAUSS_WEIGHT[i]! * GAUSS_AT[i]! ** 7;
    return [figure(sum)];
  }),
  greatestStress: shown(`${SAID}; conforming piston`, () => {
    const { model, pressed } = conforming();
    const found = greatestStress(model, pressed.w, { ...COVER, studRadiusMm: 143 });
    return [
      `${figure(found.stressMPa)} MPa at radius ${figure(found.radiusMm)} mm, ${figure((found.angleRad * 180) / Math.PI)}° from a stud`,
    ];
  }),
  hermite: shown('half way along a stretch of 10 mm', () => {
    const out = new Float64Array(12);
    hermite(0.5, 10, out);
    return [
      `functions ${[...out.slice(0, 4)].map(figure).join(', ')}; slopes ${[...out.slice(4, 8)].map(figure).join(', ')}`,
    ];
  }),
  mesh: shown('lines from 0 to 10 mm, 1 mm apart at first and 3 mm at last', () => [
    [...gradedLines({ breaks: [0, 10], sizeAt: (x) => 1 + 0.2 * x })].map(figure).join(', '),
  ]),
  marksHeld: shown(
    `${SAID}; three marks 0.2 mm deep behind studs near the outer edge, then in the middle of the friction surface, then midway between studs on the inner edge`,
    () => {
      const answers = { rigid: bendCover(COVER), conforming: bendCover(CONFORMING) };
      return [
        [0, 128],
        [0, 120],
        [45, 108],
      ].map(([angle, radiusMm]) => {
        const marks = [0, 90, 180].map((turn) => ({
          angleDeg: angle! + turn,
          radiusMm: radiusMm!,
          depthMm: 0.2,
        }));
        const held = marksHeld({ marks, studCount: COVER.studCount, answers })!;
        const of = ({ rigid, conforming }: typeof held.onPressed) =>
          `${figure(100 * rigid)} % (rigid), ${figure(100 * conforming)} % (conforming)`;
        return `${of(held.onPressed)} of them on ${of(held.pressedArea)} of the friction surface: agree ${held.agree}`;
      });
    },
  ),
  padPatch: worked(padPatch, [{ padDiameterMm: 24, studCircleDiameterMm: 286, rimDiameterMm: 300 }]),
  padsOverTrack: shown('five covers that were set beside a solid model', () =>
    SOLID.map(({ cover }) => {
      const { overlapMm, peakTooLow } = padsOverTrack(cover);
      return `${figure(overlapMm)} mm, ${figure(overlapMm / cover.wallMm)} walls${peakTooLow ? ': the peak comes out too low' : ''}`;
    }),
  ),
  pressurePeak: shown(`${SAID}; conforming piston`, () => {
    const { peak } = conforming();
    return [
      `${figure(peak.peakMPa)} MPa at radius ${figure(peak.radiusMm)} mm: ${figure(peak.peakOverMean)} times the mean`,
    ];
  }),
  rigidPiston: shown(`${SAID}; rigid piston`, () => {
    const { peak, pressed } = solveCover(COVER);
    return [`peak ${figure(peak.peakOverMean)} times the mean, contact settled in ${pressed.rounds} rounds`];
  }),
  ringTold: worked(ringTold, [
    {
      size: { innerDiameterMm: 236, outerDiameterMm: 296, thicknessMm: 6 },
      padThicknessMm: 10,
      runoutMm: 0.3,
      balance: null,
    },
  ]),
  sideWallSpring: worked(sideWallSpring, [
    { rimRadiusMm: 150, sideWallMm: 4, youngMPa: 206_000, poisson: 0.29 },
  ]),
  skyline: shown('4 1 · · / 1 5 · 2 / · · 6 1 / · 2 1 7 times x = 6, 19, 22, 35', () => {
    const a = emptySkyline(Int32Array.of(0, 0, 2, 1));
    a.values.set([4, 1, 5, 6, 2, 1, 7]);
    const x = Float64Array.of(6, 19, 22, 35);
    factor(a);
    solveFactored(a, x);
    return [`x = ${[...x].map(figure).join(', ')}`];
  }),
  stiffPad: worked(stiffPad, [
    { padDiameterMm: 24, studCircleDiameterMm: 286, rimDiameterMm: 300, wallMm: 5, padInsetWalls: 0.44 },
  ]),
  solveCover: shown(`${SAID}; conforming piston, 4 mm left on the friction surface`, () => [
    `peak ${figure(solveCover({ ...CONFORMING, trackWallMm: 4 }).peak.peakOverMean)} times the mean`,
  ]),
  wallForPeak: shown(`${SAID}; conforming piston, the peak to stay within 1.35 times the mean`, () => [
    `${figure(wallForPeak({ input: CONFORMING, peakLimit: 1.35 }).wallMm ?? Number.NaN)} mm on the friction surface`,
  ]),
};
