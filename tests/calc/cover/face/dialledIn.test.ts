import { describe, expect, it } from 'vitest';
import { checkCover } from '../../../../src/calc/cover/checkCover.ts';
import { dialledIn, type FacePlace } from '../../../../src/calc/cover/face/dialledIn.ts';
import { measuredStations } from '../../../../src/calc/cover/measuredStations.ts';
import { CRITERIA, coverInput, SET_ONE, SET_TWO, unread } from '../sets.ts';

const places = (stations: typeof SET_TWO): FacePlace[] =>
  measuredStations(stations).map((s) => ({ ...s, heightMm: s.faceMm! }));
const setup = {
  allowanceMm: 0.05,
  runoutLimitMm: 0.1,
  trackOuterDiameterMm: 264,
  studCount: 4,
  studCircleDiameterMm: 286,
};

describe('design set two, dialled in (independent second implementation, not published)', () => {
  const found = dialledIn({ places: places(SET_TWO), ...setup });
  it('set two dialled in leaves 4.614 mm and saves 0.084 mm', () => {
    expect(found.leastWallMm).toBeCloseTo(4.614, 3);
    expect(found.wallGainedMm).toBeCloseTo(0.084, 3);
  });
  it('set two dialled in tilts 0.100 mm toward 247.5°', () => {
    expect(Math.abs(found.tiltMm - 0.1)).toBeLessThan(0.002);
    expect(Math.abs(found.tiltDirectionDeg! - 247.5)).toBeLessThan(2);
  });
  it.each([0.071, 0.1, 0.029, 0].map((shim, pad) => [pad, shim] as const))(
    'set two dialled in puts under pad %s a shim of %s mm',
    (pad, shim) => {
      expect(Math.abs(found.shimsMm[pad]! - shim)).toBeLessThan(0.002);
    },
  );
  it('the tilt found is as good as the best of a fine grid of tilts', () => {
    let best = Number.NEGATIVE_INFINITY;
    for (let turn = 0; turn < 360; turn += 1.5) {
      for (let step = 0; step <= 20; step++) {
        const slope = ((step / 20) * 0.1) / 264;
        const [a, b] = [slope * Math.cos((turn * Math.PI) / 180), slope * Math.sin((turn * Math.PI) / 180)];
        const over = places(SET_TWO).map((p) => p.heightMm - a * p.xMm - b * p.yMm);
        const c = Math.min(...over.map((z, i) => z - SET_TWO[i]!.markDepthMm!)) - 0.05;
        best = Math.max(best, Math.min(...over.map((z, i) => SET_TWO[i]!.wallMm[0]! - (z - c))));
      }
    }
    expect(found.leastWallMm).toBeGreaterThan(best - 1e-4);
    expect(found.leastWallMm).toBeLessThan(best + 5e-4);
  });
});

describe('the tilt that is chosen', () => {
  it('the tilt is none where none gains wall, as in set one', () => {
    const found = dialledIn({ places: places(SET_ONE), ...setup });
    expect(found).toMatchObject({
      wallGainedMm: 0,
      tiltMm: 0,
      tiltDirectionDeg: null,
      shimsMm: [0, 0, 0, 0],
    });
  });
  it('the tilt is the smallest of those equally good: a looser limit does not tilt further', () => {
    const loose = dialledIn({ places: places(SET_TWO), ...setup, runoutLimitMm: 2 });
    const looser = dialledIn({ places: places(SET_TWO), ...setup, runoutLimitMm: 4 });
    expect(loose.tiltMm).toBeLessThan(0.5);
    expect(looser.tiltMm).toBeCloseTo(loose.tiltMm, 3);
  });
  it('the tilt is the least of a whole range that leaves as much', () => {
    // Flat face, thin at 0°, thick elsewhere, one mark of 0.10 opposite. Tilted by h at radius 120 toward 0°, the wall
    // at 0° is 4.35 + 2h until the mark no longer rules at h = 0.05; from there it stays 4.50 − ε = 4.45.
    const at = (angleDeg: number, wallMm: number, depthMm: number) => {
      const angle = (angleDeg * Math.PI) / 180;
      return { xMm: 120 * Math.cos(angle), yMm: 120 * Math.sin(angle), heightMm: 0, depthMm, wallMm };
    };
    const four = [at(0, 4.5, 0), at(90, 5, 0), at(180, 5, 0.1), at(270, 5, 0)];
    const found = dialledIn({ places: four, ...setup, runoutLimitMm: 0.3 });
    expect(found.leastWallMm).toBeCloseTo(4.45, 6);
    expect(found.wallGainedMm).toBeCloseTo(0.1, 6);
    expect(found.tiltMm).toBeCloseTo((0.05 / 120) * 264, 3);
    expect(Math.abs(((found.tiltDirectionDeg! + 180) % 360) - 180)).toBeLessThan(3);
  });
});

describe('when it is not offered', () => {
  const limited = { ...CRITERIA, faceRunoutLimitMm: 0.1 };
  const finding = (over: Parameters<typeof coverInput>[0]) => {
    const check = checkCover(coverInput({ criteria: limited, ...over }));
    return { dialledIn: check.dialledIn, said: check.findings.find(({ id }) => id === 'dialled-in')! };
  };
  it('dialling in is null without a limit on the runout after the cut', () => {
    const { dialledIn: none, said } = finding({ criteria: CRITERIA });
    expect(none).toBeNull();
    expect(said.sentence).toContain('no limit is set for face runout after the cut');
  });
  it('dialling in is null in side-wall jaws', () => {
    const { dialledIn: none, said } = finding({ chucking: 'side-wall-jaws' });
    expect(none).toBeNull();
    expect(said.sentence).toContain('side-wall jaws');
  });
  it('dialling in is null where the face was not indicated', () => {
    const { dialledIn: none, said } = finding({ stations: unread(SET_ONE) });
    expect(none).toBeNull();
    expect(said.sentence).toContain('there are no indicator readings');
  });
  it('dialling in is called not worth it below 0.01 mm', () => {
    const { dialledIn: some, said } = finding({});
    expect(some?.wallGainedMm).toBe(0);
    expect(said).toMatchObject({ status: 'pass', sentence: expect.stringContaining('not worth it') });
  });
});

describe('a wall that passes only dialled in', () => {
  const two = [...SET_TWO, { angleDeg: 0, radiusMm: 110, wallMm: [4.95], faceMm: 0.03, markDepthMm: 0 }];
  const criteria = { ...CRITERIA, minimumWallMm: 4.58, faceRunoutLimitMm: 0.1 };
  it('a wall that passes only dialled in is planned again, not replaced', () => {
    const found = checkCover(coverInput({ stations: two, criteria }));
    expect(found.leastWall.afterMm).toBeLessThan(4.58);
    expect(found.verdict).toBe('plan-again');
    expect(found.because).toMatch(/Tilt: 0\.100 mm over 264 mm, low side at 24[78]°\. Then cut /);
  });
  it('a wall that passes only dialled in is offered no other cut as chucked', () => {
    const planned = checkCover(coverInput({ stations: two, criteria, plannedCutMm: 0.2 }));
    expect(planned.verdict).toBe('plan-again');
    const said = planned.findings.find(({ id }) => id === 'planned-cut')!.sentence;
    expect(said).toContain('As chucked, no cut cleans up and leaves enough wall.');
  });
  it('a wall below the minimum is replaced where dialling in is not possible or does not help', () => {
    const jaws = checkCover(coverInput({ stations: two, criteria, chucking: 'side-wall-jaws' }));
    expect(jaws.verdict).toBe('replace');
    const thinner = checkCover(coverInput({ stations: two, criteria: { ...criteria, minimumWallMm: 4.63 } }));
    expect(thinner.verdict).toBe('replace');
    expect(thinner.because).toContain('Indicated in with shims, it would leave 4.614 mm at best');
  });
});
