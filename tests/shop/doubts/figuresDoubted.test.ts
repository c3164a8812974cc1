import { readdirSync } from 'node:fs';
import { describe, expect, it, test } from 'vitest';
import { demoCovers, demoInput } from '../../../data/demo/covers.ts';
import { demoCriteria, demoCriteriaNow } from '../../../data/demo/criteria.ts';
import { demoFamilies } from '../../../data/demo/families.ts';
import { demoGauges } from '../../../data/demo/gauges.ts';
import { demoNuts, demoWashers } from '../../../data/demo/nuts.ts';
import { demoStacks } from '../../../data/demo/stacks.ts';
import { demoStuds } from '../../../data/demo/studs.ts';
import { figureDoubt } from '../../../shared/quantity/figureDoubt.ts';
import { KINDS, type Kind, type UnitName } from '../../../shared/quantity/units.ts';
import { shapeOf } from '../../../shared/schemas/fromFields.ts';
import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { type AnyField, type AnyFields, entriesOf } from '../../../shared/words/fields/field.ts';
import { GAUGE } from '../../../shared/words/fields/gauge.ts';
import { LAYER, NUT, STACK, STUD } from '../../../shared/words/fields/stud.ts';
import { FAMILY_EXPECTED, gaugeExpected } from '../../../src/shop/doubts/coverExpected.ts';
import { coverFiguresDoubted } from '../../../src/shop/doubts/coverFigures.ts';
import type { FigureExpected } from '../../../src/shop/doubts/expectedFigures.ts';
import { figuresDoubted } from '../../../src/shop/doubts/figuresDoubted.ts';
import { CRITERIA_EXPECTED } from '../../../src/shop/doubts/limitsExpected.ts';
import { studDoubts } from '../../../src/shop/doubts/studDoubts.ts';
import {
  entryStackExpected,
  jointExpected,
  layerExpected,
  nutExpected,
  stackExpected,
  studExpected,
  tighteningExpected,
} from '../../../src/shop/studs/studsExpected.ts';
import { EXAMPLE } from '../../calc/stud/example.ts';
import { type Body, COVER_BODIES } from './coverBodies.ts';
import { STUD_BODIES } from './studBodies.ts';

const IN = 25.4;
const LB_FT = 1.355818;
const KSI = 6.894757;

type Slip = readonly [name: string, times: number, readIn: UnitName];

/** The right number in one unit, read in the other; and the other way round. */
function mistaken(one: UnitName, other: UnitName, times: number): Slip[] {
  return [
    [`${one} as ${other}`, times, other],
    [`${other} as ${one}`, 1 / times, one],
  ];
}

const LENGTH = mistaken('mm', 'in', IN);
/** What a wrong unit makes of a figure that was right, by the kind of its field. */
const UNIT_SLIPS: Partial<Record<AnyField['kind'], readonly Slip[]>> = {
  size: LENGTH,
  extent: LENGTH,
  height: LENGTH,
  lengths: LENGTH,
  stress: [...mistaken('MPa', 'ksi', KSI), ['psi as ksi', 1000, 'ksi']],
  pressure: mistaken('psi', 'MPa', 1000 / KSI),
  torque: [
    ...mistaken('N·m', 'lb·ft', LB_FT),
    ['lb·in as lb·ft', 12, 'lb·ft'],
    ['lb·in as N·m', 12 / LB_FT, 'N·m'],
  ],
  'cutting-speed': mistaken('m/min', 'ft/min', 0.3048),
  mass: mistaken('kg', 'lb', 0.45359237),
  density: [...mistaken('lb/in³', 'kg/m³', 1 / 27_679.9), ['g/cm³ as kg/m³', 1 / 1000, 'kg/m³']],
  'lining-modulus': mistaken('MPa/mm', 'psi/in', KSI / 1000 / IN),
  conductivity: mistaken('Btu/(h·ft·°F)', 'W/(m·K)', 1 / 1.730735),
  'specific-heat': mistaken('Btu/(lb·°F)', 'J/(kg·K)', 1 / 4186.8),
};

function allSlipsOf({ kind }: AnyField): readonly Slip[] {
  const kept = KINDS[KEPT[kind] ?? (kind as Kind)].keptIn as UnitName;
  return [
    ...(UNIT_SLIPS[kind] ?? []),
    ['a decimal too far right', 10, kept],
    ['a decimal too far left', 1 / 10, kept],
  ];
}

const KEPT: Partial<Record<AnyField['kind'], Kind>> = {
  size: 'length',
  extent: 'length',
  height: 'length',
  lengths: 'length',
  stress: 'pressure',
  share: 'number',
};

/** Those that can be told from what is usual: of two units near one another only where the usual is narrow enough. */
function slipsOf(field: AnyField, { least, most, likely, anyDecimal }: FigureExpected): readonly Slip[] {
  const { least: from, most: to } = likely ?? { least, most };
  return allSlipsOf(field).filter(([name, times]) =>
    name.startsWith('a decimal') ? !anyDecimal : to / from < Math.max(times, 1 / times) ** 2,
  );
}

function isFigure({ kind }: AnyField): boolean {
  return !['part', 'made', 'text', 'formula', 'day', 'choice', 'yes-no'].includes(kind);
}

/** The middle of what is usual, to two figures, as somebody would have measured it. */
function usualOf({ least, most, likely }: FigureExpected): number {
  return Number(Math.sqrt((likely?.least ?? least) * (likely?.most ?? most)).toPrecision(2));
}

function askedOf(value: number, unit: UnitName, usual: FigureExpected) {
  return figureDoubt({ value, typed: String(value), unit, decimalSign: 'point', bare: true }, usual);
}

/** Refused before anybody is asked: out of the bounds of its field. */
function isRefused(field: AnyField, value: number): boolean {
  const { one } = shapeOf({ one: field }) as { one: { safeParse: (value: unknown) => { success: boolean } } };
  return !one.safeParse(field.kind === 'lengths' ? [value] : value).success;
}

const BODIES: readonly Body[] = [...STUD_BODIES, ...COVER_BODIES];

describe.each(BODIES)('every figure of %s', (_name, fields: AnyFields, expected) => {
  const figures = entriesOf(fields).filter(([, field]) => isFigure(field));

  it('is in the table of what is expected, each with what is usual or a reason', () => {
    expect(Object.keys(expected).sort()).toEqual(figures.map(([key]) => key).sort());
    for (const [key, one] of Object.entries(expected)) {
      if ('any' in one) expect(one.any.length, key).toBeGreaterThan(15);
      else {
        expect(one.least, key).toBeLessThan(one.most);
        const field = fields[key]!;
        if (slipsOf(field, one).length < allSlipsOf(field).length) expect(one.notTold, key).toMatch(/.{10}/);
      }
    }
  });

  it.each(figures)(
    '%s: what slipped is asked about, with the value meant; what is right is not',
    (key, field) => {
      const usual = expected[key]!;
      if ('any' in usual) return;
      const right = usualOf(usual);
      expect(askedOf(right, allSlipsOf(field).at(-1)![2], usual)).toBeNull();
      for (const [slip, times, readIn] of slipsOf(field, usual)) {
        const value = right * times;
        const asked = askedOf(value, readIn, usual);
        const told = usual.notTold !== undefined && slip.startsWith('a decimal');
        if (asked === null) expect([slip, told || isRefused(field, value)]).toEqual([slip, true]);
        else expect([slip, Math.abs(asked.meant / right - 1) < 1e-6]).toEqual([slip, true]);
      }
    },
  );
});

/** Records that no form asks about by what is usual, and why. */
const OTHERWISE: Readonly<Record<string, string>> = {
  QUICK_LIMITS: 'held against wall and shop by limitDoubt',
  COVER_LIMITS: 'part of the shop’s limits',
  CUT: 'held against what is left of the decided cut by passDoubt',
  MASTER_CHECK: 'the reading is held against its master, in src/web/catalogue/masterCheckRoutes.ts',
  RIGHT_GAUGE: 'asked about by RIGHT_GAUGE_EXPECTED, in src/web/trends/wrongRoutes.ts',
  COSTS: 'money: of any size, and in no unit that could be mistaken for another',
  GAUGE_STUDY: 'small counts of covers, stations and rounds, each within its bounds',
};

const fieldsDir = new URL('../../../shared/words/fields/', import.meta.url);

test('every record of fields that has a figure is among the bodies asked about, or says why not', async () => {
  const asked = new Set<unknown>(BODIES.map(([, fields]) => fields));
  const modules = await Promise.all(
    readdirSync(fieldsDir).map((name) => import(new URL(name, fieldsDir).href) as Promise<object>),
  );
  const records = modules.flatMap((module) => Object.entries<unknown>({ ...module }));
  expect(records.filter(([, one]) => isRecord(one)).length).toBeGreaterThan(20);
  const left = records.flatMap(([name, one]) =>
    isRecord(one) && hasFigure(one) && !asked.has(one) ? [name] : [],
  );
  expect([...new Set(left)].sort()).toEqual(Object.keys(OTHERWISE).sort());
});

function isRecord(one: unknown): one is AnyFields {
  if (typeof one !== 'object' || one === null || Array.isArray(one)) return false;
  const fields = Object.values(one);
  return (
    fields.length > 0 &&
    fields.every((field) => typeof field === 'object' && field !== null && 'kind' in field)
  );
}

function hasFigure(fields: AnyFields): boolean {
  return entriesOf(fields).some(([, field]) =>
    field.kind === 'part' ? hasFigure(field.fields) : isFigure(field),
  );
}

test('a torque is held against the vehicle maker’s, else against what its thread takes', () => {
  const asked = (
    typed: number,
    unit: UnitName,
    about: Parameters<typeof tighteningExpected>[0],
    bare = true,
  ) =>
    figureDoubt(
      {
        value: typed * (unit === 'lb·ft' ? LB_FT : 1),
        typed: String(typed),
        unit,
        decimalSign: 'point',
        bare,
      },
      tighteningExpected(about),
    )?.question ?? null;
  const of = { thread: '3/8-24' };
  expect(asked(35, 'N·m', of)).toBe('35 N·m? Did you mean 35 lb·ft?');
  expect(asked(65, 'lb·ft', of)).toBe('65 lb·ft? Did you mean 65 N·m?');
  expect(asked(420, 'N·m', of)).toBe('420 N·m? Did you mean 420 lb·in?');
  expect(asked(550, 'N·m', of)).toBe('550 N·m? Did you mean 55 N·m?');
  expect(asked(3.5, 'lb·ft', of)).toBe('3.5 lb·ft? Did you mean 35 lb·ft?');
  // Who types the unit knows it; what is usual is no reason to ask.
  expect(asked(35, 'N·m', of, false)).toBeNull();
  for (const nm of [37, 41, 50]) expect(asked(nm, 'N·m', of)).toBeNull();
  for (const lbFt of [27, 30, 35, 40]) expect(asked(lbFt, 'lb·ft', of)).toBeNull();
  for (const known of [35, 45]) {
    const maker = { ...of, makerTorqueNm: known * LB_FT };
    expect(asked(known, 'N·m', maker)).toBe(`${known} N·m? Did you mean ${known} lb·ft?`);
    const nm = Math.round(known * LB_FT);
    expect(asked(nm, 'lb·ft', maker)).toBe(`${nm} lb·ft? Did you mean ${nm} N·m?`);
  }
  const maker = { ...of, makerTorqueNm: 35 * LB_FT };
  expect(asked(35, 'N·m', maker, false)).toBe('35 N·m? Did you mean 35 lb·ft?');
  expect(asked(35, 'lb·ft', maker)).toBeNull();
  expect(asked(37, 'N·m', { thread: '' })).toBeNull();
});

/**
 * T = K d F, F three quarters of proof (Shigley, 9th ed., eq. 8-31 and 8-27; proof SAE J429, ISO 898-1; areas ASME B1.1,
 * ISO 898-1), worked out by hand: lb·ft, or N·m for M10 and M8.
 */
test.each([
  ['3/8-24', 'lb·ft', 'grade 5, K 0.15', 26.3],
  ['3/8-24', 'lb·ft', 'grade 5, K 0.2', 35.0],
  ['3/8-24', 'lb·ft', 'grade 8, K 0.15', 37.1],
  ['3/8-24', 'lb·ft', 'between', 45],
  ['3/8-24', 'lb·ft', 'grade 8, K 0.2', 49.4],
  ['3/8-24', 'lb·ft', 'grade 8, K 0.2, as tables round it', 50],
  ['3/8-16', 'lb·ft', 'grade 8, K 0.2', 43.6],
  ['5/16-24', 'lb·ft', 'grade 8, K 0.2', 27.2],
  ['7/16-20', 'lb·ft', 'grade 8, K 0.2', 77.9],
  ['M10x1.5', 'N·m', '8.8, K 0.2', 52.2],
  ['M10x1.5', 'N·m', '10.9, K 0.2', 72.2],
  ['M8x1.25', 'N·m', '10.9, K 0.2', 36.5],
] as const)('%s at %s: nobody is asked about the ordinary %s (%f)', (thread, unit, _of, typed) => {
  const value = typed * (unit === 'lb·ft' ? LB_FT : 1);
  expect(askedOf(value, unit, tighteningExpected({ thread }))).toBeNull();
});

test('nothing in the demo’s catalog looks like a slip', () => {
  const doubts = [
    ...demoStuds.flatMap(({ entry: { stud } }) =>
      figuresDoubted(STUD, stud, studExpected({ thread: stud.thread.designation }), 'stud'),
    ),
    ...demoStacks.flatMap(({ entry: { stack, nut, pullForwardMm } }) => {
      const thread = nut?.thread?.designation ?? '';
      return [
        ...stack.layers.flatMap((one) =>
          figuresDoubted(LAYER, one, layerExpected(one, { thread }), one.name),
        ),
        ...figuresDoubted(STACK, stack, stackExpected(), 'stack'),
        ...figuresDoubted(NUT, nut ?? {}, nutExpected({ thread }), 'nut'),
        ...studDoubts({ stack, nut, pullForwardMm, joint: null }, [], []),
      ];
    }),
    ...demoNuts.flatMap(({ entry: { nut } }) =>
      figuresDoubted(NUT, nut, nutExpected({ thread: nut.thread?.designation ?? '' }), 'nut'),
    ),
    ...demoWashers.flatMap(({ entry }) => {
      const [, fields, expected] = STUD_BODIES.find(([name]) => name === 'a washer or shim')!;
      return figuresDoubted(fields, entry, expected as never, entry.name);
    }),
  ];
  expect(doubts).toEqual([]);
});

test('nothing in the demo’s cover types, gauges and limits looks like a slip', () => {
  const doubts = [
    ...demoFamilies.flatMap(({ family }) => figuresDoubted(FAMILY, family, FAMILY_EXPECTED, family.name)),
    ...demoGauges.flatMap(({ gauge }) =>
      figuresDoubted(GAUGE, gauge, gaugeExpected(gauge.gaugeKind), gauge.name),
    ),
    ...[demoCriteria, demoCriteriaNow].flatMap((limits) =>
      figuresDoubted(CRITERIA, limits, CRITERIA_EXPECTED, 'limits'),
    ),
    ...demoCovers.flatMap((cover) => coverFiguresDoubted(demoInput(cover), [])),
  ];
  expect(doubts).toEqual([]);
});

test('what was sent in plain numbers is doubted by its path, and what is confirmed is not', () => {
  const joint = { ...EXAMPLE.joint!, torqueNm: 27, engineTorqueNm: 3500 };
  const asked = { ...EXAMPLE, joint, pullForwardMm: 0.16 };
  const studs = [{ path: 'stud', stud: { ...EXAMPLE.stud, projectionMm: 23 * IN } }];
  expect(studDoubts(asked, studs, ['stud.projectionMm'])).toMatchObject([
    { path: 'pullForwardMm', value: 0.16, unit: 'mm', question: '0.16 mm? Did you mean 0.16 in?' },
    { path: 'joint.torqueNm', value: 27, question: '27 N·m? Did you mean 27 lb·ft?' },
    { path: 'joint.engineTorqueNm', question: '3500 N·m? Did you mean 3500 lb·in?' },
  ]);
  expect(studDoubts(asked, studs, [])[0]).toMatchObject({ path: 'stud.projectionMm', probably: 23 });
  expect(Object.keys(entryStackExpected({}))).toContain('makerTorqueNm');
  expect(jointExpected({ thread: '3/8-24' }).studCount).toHaveProperty('any');
});
