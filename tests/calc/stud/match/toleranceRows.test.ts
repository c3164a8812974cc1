import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkStud } from '../../../../src/calc/stud/checkStud.ts';
import { toleranceRows } from '../../../../src/calc/stud/match/toleranceRows.ts';
import { EXAMPLE, layer, withNut, withStack, withStud } from '../example.ts';

const P = 25.4 / 24;
const row = (input: typeof EXAMPLE, id: string) => toleranceRows(input).rows.find((one) => one.id === id)!;

describe('every length check, three ways and by draws', () => {
  it('the example’s clamp row is 3.2 − P − 1 nominal, less RSS of 0.25 and 0.1, less 0.35 worst', () => {
    const clamps = row(EXAMPLE, 'clamps');
    expect(clamps.nominalMm).toBeCloseTo(2.2 - P, 9);
    expect(clamps.rssMm).toBeCloseTo(2.2 - P - Math.hypot(0.25, 0.1), 9);
    expect(clamps.worstMm).toBeCloseTo(2.2 - P - 0.35, 9);
    expect(clamps.failShare).toBe(0);
    expect(toleranceRows(EXAMPLE).anyFails).toBe(0);
  });

  it('a tip 0.1 inside with an even spread of ± 0.2 fails in three draws of four', () => {
    const input = withStud(
      { projectionMm: 24.9, threadEndMm: 20, lengthToleranceMm: 0.2 },
      { ...withStack({ layers: [layer(21, { toleranceMm: 0 })] }), pullForwardMm: 4 },
    );
    expect(Math.abs(row(input, 'shows').failShare - 0.75)).toBeLessThan(0.005);
    expect(row(input, 'shows').nominalMm).toBeCloseTo(-0.1, 9);
  });

  it('a nut that starts only with the converter drawn forward fails nothing', () => {
    const input = { ...EXAMPLE, pullForwardMm: 16 };
    expect(row(input, 'starts').failShare).toBe(1);
    expect(row(input, 'shows').failShare).toBe(0);
    expect(toleranceRows(input).anyFails).toBe(0);
  });

  it('a locking nut has no row for a start by hand, and a missing nut has no rows', () => {
    expect(toleranceRows(withNut({ prevailing: true })).rows.map((one) => one.id)).not.toContain('starts');
    expect(toleranceRows({ ...EXAMPLE, nut: null }).rows.map((one) => one.id)).toEqual([
      'clamps',
      'starts',
      'shows',
      'enters',
      'clears',
    ]);
  });

  it('a tip with ± 0.25 and 0.2 to spare strikes in one draw of ten, with RSS and worst 0.05 short', () => {
    const input = withStack({ tipRoomMm: EXAMPLE.stud.projectionMm + 0.2 });
    const clears = row(input, 'clears');
    expect([clears.nominalMm, clears.rssMm, clears.worstMm].map((mm) => mm.toFixed(9))).toEqual([
      '0.200000000',
      '-0.050000000',
      '-0.050000000',
    ]);
    expect(Math.abs(clears.failShare - 0.1)).toBeLessThan(0.004);
    expect(toleranceRows(input).anyFails).toBe(clears.failShare);
    expect(toleranceRows(withStack({ tipRoomMm: null })).rows.map((one) => one.id)).not.toContain('clears');
  });

  it('a stud with ± 0.25 and 0.1 past the face misses its hole in three draws of ten', () => {
    const input = { ...EXAMPLE, pullForwardMm: EXAMPLE.stud.projectionMm - 0.1 };
    expect(row(input, 'enters').nominalMm).toBeCloseTo(0.1, 9);
    expect(Math.abs(row(input, 'enters').failShare - 0.3)).toBeLessThan(0.005);
  });

  it('a tip that does not find its hole, or strikes, fails in its row too', () => {
    const failing = { ...withStack({ tipRoomMm: 23.1 }), pullForwardMm: 22.9 };
    const ROW_OF = { 'pilot-enters-hole': 'enters', 'tip-clearance': 'clears' } as const;
    for (const [id, rowId] of Object.entries(ROW_OF)) {
      expect(checkStud(failing).findings.find((one) => one.id === id)!.status, id).toBe('fail');
      expect(row(failing, rowId).rssMm, id).toBeLessThan(0);
    }
  });

  it('the share of failures lies between nominal and worst case', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 4, noNaN: true }),
        fc.double({ min: 9, max: 14, noNaN: true }),
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        (threadStartMm, threadEndMm, lengthToleranceMm, toleranceMm) => {
          const input = withStud(
            { threadStartMm, threadEndMm, lengthToleranceMm },
            withStack({ layers: [layer(3.2, { toleranceMm })] }),
          );
          for (const { id, nominalMm, worstMm, failShare } of toleranceRows(input).rows) {
            if (worstMm >= 0) expect(failShare, `${id} passes at its worst`).toBe(0);
            if (nominalMm < -1e-6) expect(failShare, `${id} fails as drawn`).toBeGreaterThan(0.49);
            if (nominalMm > 1e-6)
              expect(failShare, `${id} passes as drawn`).toBeLessThan(0.51 + 0.5 * +(id === 'engaged'));
          }
        },
      ),
      { numRuns: 25 },
    );
  });

  it('a finding that fails as drawn has a negative margin in its row', () => {
    const input = withStud({ threadEndMm: 10 });
    const status = (id: string) => checkStud(input).findings.find((one) => one.id === id)!.status;
    expect([status('engagement'), status('protrusion')]).toEqual(['fail', 'fail']);
    expect(row(input, 'engaged').nominalMm).toBeLessThan(0);
    expect(row(input, 'protrudes').nominalMm).toBeLessThan(0);
  });
});
