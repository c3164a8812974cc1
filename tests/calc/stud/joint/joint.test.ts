import { describe, expect, it } from 'vitest';
import type { AnyField } from '../../../../shared/words/fields/field.ts';
import { JOINT as FIELDS } from '../../../../shared/words/fields/joint.ts';
import type { Joint, StudCheckInput } from '../../../../shared/words/stud/stud.ts';
import { checkStud } from '../../../../src/calc/stud/checkStud.ts';
import { EXAMPLE, JOINT, layer, withNut, withStack, withStud } from '../example.ts';

const withJoint = (joint: Partial<Joint>, input: StudCheckInput = EXAMPLE): StudCheckInput => ({
  ...input,
  joint: { ...JOINT, ...joint },
});
const finding = (input: StudCheckInput, id: string) => checkStud(input).findings.find((one) => one.id === id);

describe('the example, by hand', () => {
  // F = 37/(0.2 · 9.525e-3) = 19 422.6 N. A_N 71.256, d₃ = 9.525 − 1.19078 · 1.05833 = 8.26476, A_3 = 53.648 mm².
  // δ_S = [(3.81 + 1 + 3.81)/71.256 + (2.2 + 4.7625)/53.648]/205 000 = (0.120972 + 0.129782)/205 000 = 1.22319e-6.
  // δ_P: D₂ = 17.84; ln[(7.54 · 24.3)/(28.14 · 3.7)] = ln 1.75973 = 0.565161; /(π · 205 000 · 10.3 · 0.6) = 1.41996e-7.
  // F_Z = 0.010/1.365186e-6 = 7325.0 N.
  const { joint, holds } = checkStud(EXAMPLE);
  it.each([
    ['preload', joint?.preloadN.nominal, 19_422.6, 0.1],
    ['preload, least: 0.75 F − F_Z', joint?.preloadN.least, 14_566.9 - 7325, 1],
    ['preload, most: 1.25 F', joint?.preloadN.most, 24_278.2, 0.1],
    ['embedding', joint?.embeddingLossN, 7325, 1],
    ['share of proof: 24 278/(586 · 56.663)', joint?.proofShare, 0.73117, 1e-5],
    ['slip torque: 0.15 · 6 · 12 097.6 · 0.143', joint?.slipTorqueNm.nominal, 1556.96, 0.1],
    ['slip torque, least: 0.15 · 6 · 7241.9 · 0.143', joint?.slipTorqueNm.least, 932.04, 0.1],
  ])('the example joint’s %s is what a hand calculation gives', (_, found, expected, within) => {
    expect(Math.abs(found! - expected)).toBeLessThan(within);
  });
  it('the example joint holds', () => expect(holds).toBe('yes'));
});

describe('holds', () => {
  it.each([
    ['slip: 933 N·m asked, 932 held', { engineTorqueNm: 466.5 }, 'no', 'joint-slip'],
    ['proof: 38 N·m is 75.09 % at most', { torqueNm: 38 }, 'no', 'joint-proof'],
  ])('the joint does not hold by its %s', (_, joint, holds, id) => {
    const check = checkStud(withJoint(joint));
    expect(check.holds).toBe(holds);
    expect(check.findings.find((one) => one.id === id)!.status).toBe('fail');
  });
  it('a joint that slips is judged apart: the stud still fits', () => {
    expect(checkStud(withJoint({ engineTorqueNm: 900 })).fits).toBe('yes');
  });
  it.each([
    ['no proof stress', withStud({ proofMPa: null })],
    ['no bearing diameter', withNut({ bearingOuterDiameterMm: null })],
    ['a hole not measured', withStack({ layers: [layer(3.2, { holeDiameterMm: null })] })],
    ['no nut', { ...EXAMPLE, nut: null }],
  ])('a joint with %s is not checked', (_, input) => {
    expect(checkStud(input).holds).toBe('not-checked');
  });
  it('a joint is a no when one check fails and the other is unknown', () => {
    expect(checkStud(withJoint({ engineTorqueNm: 900 }, withStud({ proofMPa: null }))).holds).toBe('no');
  });
  it('a joint of unknown settling has null, not a guess, for what depends on it', () => {
    const { joint } = checkStud(withNut({ bearingOuterDiameterMm: null }));
    expect([
      joint!.embeddingLossN,
      joint!.preloadN.least,
      joint!.slipTorqueNm.nominal,
      joint!.slipTorqueNm.least,
    ]).toEqual([null, null, null, null]);
    expect(joint!.proofShare).toBeCloseTo(0.73117, 5);
  });
});

describe('a washer', () => {
  it('a washer adds an interface and lengthens the grip', () => {
    const bare = checkStud(EXAMPLE).answers.embeddingLossN!.how.at(-1)!.numbers;
    const with1 = checkStud(withNut({ washerMm: 1.5 })).answers.embeddingLossN!.how.at(-1)!.numbers;
    expect(bare).toContain('f_Z = 10.0 µm');
    expect(with1).toContain('f_Z = 12.5 µm');
  });
});

describe('preload that settles away', () => {
  it('a preload that settles away holds nothing, and never less', () => {
    const { joint } = checkStud(withJoint({ torqueNm: 10 }));
    expect(joint!.preloadN.least).toBe(0);
    expect(joint!.slipTorqueNm.nominal).toBe(0);
    expect(joint!.slipTorqueNm.least).toBe(0);
  });
});

describe('if it slips', () => {
  it('the studs of a slipping joint carry the torque in shear: 1800/(6 · 0.143 · 71.256)', () => {
    const found = finding(withJoint({ engineTorqueNm: 900 }), 'stud-shear')!;
    expect(found.value).toBeCloseTo(1_800_000 / (6 * 143 * 71.2557), 3);
    expect(found.status).toBe('caution');
  });
  it('the studs’ shear is in the thread where that reaches the plane of the pads', () => {
    const found = finding(withJoint({ engineTorqueNm: 900 }, withStud({ threadStartMm: 0 })), 'stud-shear')!;
    expect(found.value).toBeCloseTo(1_800_000 / (6 * 143 * 56.66314), 3);
  });
  it('the studs’ shear has no finding where the joint does not slip', () => {
    expect(finding(EXAMPLE, 'stud-shear')).toBeUndefined();
  });
});

describe('pressure under the nut', () => {
  it('the pressure under the nut is 24 278/[π/4 (14² − 10.3²)]', () => {
    expect(finding(EXAMPLE, 'bearing-pressure')!.value).toBeCloseTo(343.81, 2);
  });
  it('the pressure under the nut is a caution above the figure of soft steel, and changes neither fit nor hold', () => {
    const input = withNut({ bearingOuterDiameterMm: 12.5 });
    const check = checkStud(input);
    expect(finding(input, 'bearing-pressure')).toMatchObject({ status: 'caution', limit: 490 });
    expect(check.fits).toBe('yes');
  });
});

describe('the stud at its most', () => {
  // 74 N·m: 48 557 N at most; 827 MPa · 56.663 mm² = 46 860 N.
  it('a preload above the breaking load says that the stud may break, and one below does not', () => {
    const told = (torqueNm: number) => finding(withJoint({ torqueNm }), 'joint-proof')?.sentence;
    expect(told(74)).toContain('The stud may break as it is tightened.');
    expect(told(60)).not.toContain('may break');
  });
});

describe('a locking nut whose own torque was not given', () => {
  const prevailing = (joint: Parameters<typeof withJoint>[0]) =>
    withJoint(joint, withNut({ prevailing: true }));
  it('a locking nut of unknown torque leaves open whether the joint holds, and does not excuse one that slips', () => {
    const open = checkStud(prevailing({}));
    expect(open.holds).toBe('not-checked');
    expect(open.findings.find(({ id }) => id === 'joint-slip')?.sentence).toContain(
      'Enter the locking nut’s prevailing torque.',
    );
    expect(checkStud(prevailing({ prevailingNm: 1 })).holds).toBe('yes');
    expect(checkStud(prevailing({ engineTorqueNm: 900 })).holds).toBe('no');
  });
});

describe('the nut’s proof load', () => {
  it('the nut’s share of its proof load is 24 278/(827 · 56.663)', () => {
    expect(finding(EXAMPLE, 'joint-nut')!.value).toBeCloseTo(0.5181, 4);
    expect(finding(EXAMPLE, 'joint-nut')!.status).toBe('pass');
  });
  it('a preload above the nut’s proof load is a caution, and changes neither fit nor hold', () => {
    const input = withNut({ proofMPa: 400 });
    expect(finding(input, 'joint-nut')!.status).toBe('caution');
    expect([checkStud(input).fits, checkStud(input).holds]).toEqual(['yes', 'yes']);
  });
  it('the nut’s proof load has no finding where its class is not known', () => {
    expect(finding(withNut({ proofMPa: null }), 'joint-nut')).toBeUndefined();
  });
});

/** Another value of each kind of field, for the law that each one counts. */
function otherThan(key: string): unknown {
  const field: AnyField = FIELDS[key as keyof typeof FIELDS];
  const now = JOINT[key as keyof Joint];
  if (field.kind === 'yes-no') return !now;
  if (field.kind === 'choice')
    return Object.keys(field.options).find((option) => option !== (now ?? field.ifLeftOut));
  return field.kind === 'count'
    ? Number(now) + 1
    : Number(now ?? 1) * 1.25 + (key === 'youngMPa' ? 150_000 : 0);
}

describe('every field of a joint has a say', () => {
  const bare = (input: StudCheckInput) => {
    const { joint, holds, findings, answers } = checkStud(input);
    return { joint, holds, findings, answers };
  };
  const asTyped = Object.entries(FIELDS).flatMap(([key, { kind }]) => (kind === 'made' ? [] : [key]));
  it.each(asTyped)('%s of another value changes the answer', (key) => {
    const other = withJoint({ [key]: otherThan(key) }, withNut({ prevailing: true }));
    expect(bare(other)).not.toEqual(bare(withJoint({}, withNut({ prevailing: true }))));
  });
});
