import { render } from 'preact-render-to-string';
import { describe, expect, it } from 'vitest';
import { TiltPlan } from '../../views/drawings/tiltPlan.tsx';

const shape = {
  studCount: 4,
  studCircleDiameterMm: 286,
  trackInnerDiameterMm: 214,
  trackOuterDiameterMm: 264,
  nominalWallMm: 5,
  densityKgPerM3: null,
};

describe('the tilt, drawn', () => {
  it('gives each pad its shim, points where the face is highest, and says so in words', () => {
    const svg = render(
      <TiltPlan
        id="t"
        shape={shape}
        unit="mm"
        dialledIn={{
          wallGainedMm: 0.02,
          leastWallMm: 4.52,
          tiltMm: 0.09,
          tiltDirectionDeg: 200,
          shimsMm: [0.1, 0.05, 0, 0.04],
          dialledMm: 0.4,
        }}
      />,
    );
    expect(svg).toContain('Shims: 0.100 mm under stud 1, 0.050 mm under stud 2 and 0.040 mm under stud 4.');
    expect(svg).toContain('They tilt the cover 0.090 mm across the friction surface, low side at 200°.');
    expect(svg).toContain('rotate(200)');
    expect(svg.match(/no shim/g)?.length).toBe(1);
    expect(svg.match(/class="st-core"/g)?.length).toBe(3);
  });
});
