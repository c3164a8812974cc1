import { describe, expect, it } from 'vitest';
import { demoCriteria } from '../../../data/demo/criteria.ts';
import { demoFamilies } from '../../../data/demo/families.ts';
import { demoLiningChosen } from '../../../data/demo/linings.ts';
import type { BendingSettings, HeatSettings } from '../../../shared/words/bending/bending.ts';
import type { RingSize } from '../../../shared/words/bending/stiffness.ts';
import type { Family } from '../../../shared/words/catalogue.ts';
import { heatCover } from '../../../src/calc/heat/heatCover.ts';
import { bendCover } from '../../../src/calc/plate/bendCover.ts';
import { bendingBase } from '../../../src/calc/plate/bendingBase.ts';
import { bendingCase, bendingCases, caseInput } from '../../../src/calc/plate/bendingCases.ts';
import { COVER } from './example.ts';

/** Figures of this test's own, in millimeters: the demo's shape of a family, and none of its numbers. */
const settings: BendingSettings = {
  ...demoCriteria.bending!,
  liningModulusMPaPerMm: 60,
  youngMPa: 206_000,
  ringRunoutMm: 0.3,
};
const engagement: HeatSettings = {
  ...demoCriteria.heat!,
  torqueNm: 300,
  conductivityWPerMK: 51.9,
  densityKgPerM3: 7870,
  specificHeatJPerKgK: 486,
  startTemperatureC: 90,
};
const whole: Family = {
  ...demoFamilies[0]!.family,
  studCircleDiameterMm: 286,
  trackInnerDiameterMm: 214,
  trackOuterDiameterMm: 264,
  nominalWallMm: 5,
  bossDiameterMm: 90,
  rimDiameterMm: 300,
  padDiameterMm: 24,
  padThicknessMm: 10,
  sideWallMm: 4,
  pistonSealDiameterMm: 64,
  hubDiameterMm: 48,
  lockUpPressureMPa: 0.7,
  yieldMPa: 320,
};
const part: Family = { ...whole, sideWallMm: null, pistonSealDiameterMm: null, hubDiameterMm: null };
const { base } = bendingBase(whole, settings);
const RING = { innerDiameterMm: 236, outerDiameterMm: 296, thicknessMm: 6, joinedToPads: true };
const cases = (welded: boolean, ring: RingSize | null = RING) =>
  bendingCases({ base: base!, leastBeforeMm: 4.8, leastAfterMm: 4.4, ring, welded });

describe('what the model needs of a family', () => {
  it('the model takes the wall when new off the track, and the family’s pressure and yield before the shop’s', () => {
    const shop = { ...settings, lockUpPressureMPa: 0.5, yieldMPa: 250 };
    expect(bendingBase(whole, shop).base).toMatchObject({
      wallMm: 5,
      pressureMPa: 0.7,
      yieldMPa: 320,
      sideWallMm: 4,
    });
    const silent = { ...whole, lockUpPressureMPa: null, yieldMPa: null, steel: null };
    expect(bendingBase(silent, shop).base).toMatchObject({ pressureMPa: 0.5, yieldMPa: 250 });
  });

  it('the lining of a family squeezes as its own modulus says, and the shop’s where none is named', () => {
    const of = (lining: Family['lining']) => bendingBase({ ...whole, lining: lining ?? null }, settings).base;
    const chosen = demoLiningChosen();
    const stiff = { ...chosen, lining: { ...chosen.lining, liningModulusMPaPerMm: 123 } };
    expect(of(stiff)).toEqual({ ...base, liningModulusMPaPerMm: 123 });
    expect(of(null)).toEqual({ ...base, liningModulusMPaPerMm: settings.liningModulusMPaPerMm });
    expect(settings.liningModulusMPaPerMm).not.toBe(base!.liningModulusMPaPerMm);
  });

  it('the model names what is missing, of a family that does not say it and of one kept before the field existed', () => {
    expect(bendingBase(part, settings)).toMatchObject({
      base: null,
      missing: ['side wall thickness', 'piston seal diameter', 'impeller hub diameter'],
      shopSilent: false,
    });
    const { sideWallMm: _s, lockUpPressureMPa: _p, ...before } = whole;
    expect(bendingBase(before, settings).missing).toEqual(['side wall thickness', 'lock-up pressure']);
    expect(bendingBase(whole, null)).toMatchObject({
      base: null,
      missing: [],
      shopSilent: true,
    });
  });
});

describe('the cases', () => {
  const told = (welded: boolean, ring: RingSize | null = RING) =>
    cases(welded, ring).map(
      ({ id, trackWallMm, ring: on }) => `${id} ${trackWallMm} ${on?.bonded ?? 'bare'}`,
    );
  it('the bending cases are new, now and after the cut, and with the ring both bounds of its bonding', () => {
    expect(told(false)).toEqual([
      'new 5 bare',
      'now 4.8 bare',
      'after 4.4 bare',
      'ring-unbonded 4.4 false',
      'ring-bonded 4.4 true',
    ]);
    expect(told(false, null)).toEqual(['new 5 bare', 'now 4.8 bare', 'after 4.4 bare']);
  });
  it.each([false, null, undefined])(
    'the bending cases leave out a ring whose joining to the pads is %s',
    (joinedToPads) => {
      for (const welded of [false, true]) {
        expect(told(welded, { ...RING, joinedToPads })).toEqual([
          'new 5 bare',
          'now 4.8 bare',
          'after 4.4 bare',
        ]);
      }
    },
  );
  it('the bending cases count a ring that is on as part of the cover, unbonded', () => {
    expect(told(true)).toEqual(['new 5 bare', 'now 4.8 false', 'after 4.4 false', 'ring-bonded 4.4 true']);
  });
});

describe('one case', () => {
  const [fresh] = cases(false);
  const of = (yieldMPa: number | null) => {
    const asked = { ...fresh!, base: { ...fresh!.base, yieldMPa } };
    const rigid = bendCover(caseInput(asked, 'rigid'));
    const conforming = bendCover(caseInput(asked, 'conforming'));
    return { asked, rigid, conforming, shown: bendingCase(asked, { rigid, conforming }, engagement) };
  };

  it('a bending case shows both pistons beside each other, and the heat at the mean and behind a stud', () => {
    const { rigid, conforming, shown } = of(null);
    expect(shown.peakOverMean).toEqual({ rigid: rigid.peakOverMean, conforming: conforming.peakOverMean });
    expect(shown.beyondYield).toBeNull();
    // Half of 300 N·m at 1000 rpm on Ø 214–264 is 0.837 MW/m² (heatCover.test.ts).
    const { startTemperatureC: _, share: _s, torqueNm: _t, slipRpm: _r, ...slab } = engagement;
    const heat = heatCover({
      ...slab,
      fluxWPerM2: 0.83699e6,
      thicknessMm: 5,
      pressurePeak: rigid.peakOverMean,
      startTemperatureC: null,
    });
    expect(shown.heat!.peakRiseK).toBeCloseTo(heat.peakRiseK, 2);
    expect(shown.heat!.behindStudRiseK.rigid).toBeCloseTo(heat.behindStud!.peakRiseK, 1);
  });

  it('a bending case tells how hot it gets from the temperature before, and the color of the hotter, where it was given', () => {
    const { asked, rigid, conforming, shown } = of(null);
    const { behindStudRiseK } = shown.heat!;
    const from = (startTemperatureC: number | null) =>
      bendingCase(asked, { rigid, conforming }, { ...engagement, startTemperatureC }).heat!;
    expect(from(90).behindStudC).toEqual({
      rigid: 90 + behindStudRiseK.rigid,
      conforming: 90 + behindStudRiseK.conforming,
    });
    const hottest = Math.max(behindStudRiseK.rigid, behindStudRiseK.conforming);
    expect(from(250 - hottest).temperColour).toBe('brown yellow');
    expect(from(204 - hottest).temperColour).toBeNull();
    expect(from(null)).toMatchObject({ behindStudRiseK, behindStudC: null, temperColour: null });
  });

  it('a bending case is beyond yield where either piston’s stress is', () => {
    const { rigid, conforming } = of(null);
    const [less, more] = [rigid, conforming].map((one) => one.greatestStressMPa).sort((a, b) => a - b);
    expect(of((less! + more!) / 2).shown.beyondYield).toBe(true);
    expect(of(more! + 1).shown.beyondYield).toBe(false);
  });

  it('a bending case says where the boss moves more than half the wall under either piston', () => {
    const far = (trackWallMm: number) => {
      const asked = { ...fresh!, base: { ...fresh!.base, wallMm: trackWallMm }, trackWallMm };
      const rigid = bendCover(caseInput(asked, 'rigid'));
      const conforming = bendCover(caseInput(asked, 'conforming'));
      const most = Math.max(rigid.bossDeflectionMm, conforming.bossDeflectionMm);
      const shown = bendingCase(asked, { rigid, conforming }, null);
      return [shown.largeDeflection, most > trackWallMm / 2];
    };
    expect([far(5), far(2.5)]).toEqual([
      [false, false],
      [true, true],
    ]);
  });

  it('a bending case is what check values 10.1 say, where the cover is theirs', () => {
    const { trackWallMm: _, ring: _r, piston: _p, padInsetWalls: _i, peakLimit: _l, ...theirs } = COVER;
    const asked = { id: 'new' as const, base: theirs, trackWallMm: COVER.trackWallMm, ring: null };
    expect(caseInput(asked, 'rigid')).toEqual({ ...COVER, padInsetWalls: null });
  });
});
