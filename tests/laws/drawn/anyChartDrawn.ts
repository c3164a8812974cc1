import fc from 'fast-check';

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const unit = fc.constantFrom('mm' as const, 'in' as const);

/** A cover bent any way, and pressed any way. */
export const anyBent = fc
  .record({
    boss: mm(60, 110),
    inner: mm(150, 200),
    wide: mm(18, 30),
    rimOut: mm(25, 45),
    studCount: fc.constantFrom(3, 4, 6),
    bend: mm(0.05, 1.5),
    ripple: mm(0.002, 0.03),
    curves: fc.integer({ min: 1, max: 4 }),
    peakShare: mm(0, 1),
    peakAngle: fc.oneof(fc.constant(0), fc.constant(1), mm(0.05, 0.95)),
    marks: fc.array(fc.record({ angleDeg: mm(0, 359), share: mm(0, 1), depthMm: fc.option(mm(0, 0.3)) }), {
      maxLength: 4,
    }),
    unit,
  })
  .map(({ boss, inner, wide, rimOut, peakShare, peakAngle, ...one }) => {
    const outer = inner + 2 * wide;
    const circle = outer + rimOut * 0.8;
    const rim = circle + rimOut;
    return {
      ...one,
      bossDiameterMm: boss,
      trackInnerDiameterMm: inner,
      trackOuterDiameterMm: outer,
      studCircleDiameterMm: circle,
      rimDiameterMm: rim,
      peakAt: { radiusMm: inner / 2 + peakShare * wide, angleDeg: (peakAngle * 180) / one.studCount },
    };
  });
