import type { Answer } from '../../../../shared/words/answer.ts';
import type { StudSettingLimits } from '../../../../shared/words/catalogue.ts';
import type { Finding } from '../../../../shared/words/finding.ts';
import { type LengthUnit, printLength, printNumber, printTorque } from '../../../../shared/words/print.ts';
import { type Fault, Refusal } from '../../../../shared/words/refusal.ts';

/** Height above the pad at which the shop's limit for the lean applies. */
const LEAN_AT_MM = 25;

export interface ReplacedStudInput {
  /** How far the stud leans, measured at a height above the pad. */
  readonly leanMm: number | null;
  readonly leanAtMm: number | null;
  /** How far its base is from where it should be. */
  readonly offMm: number | null;
  /** From the pad face to the engine side: where the last hole ends. */
  readonly stackMm: number;
  readonly tightestHoleMm: number | null;
  readonly studMostMm: number;
  /** Proof torque it was tested with, nut on a spacer; null when it was not. */
  readonly provedNm: number | null;
  readonly heldIt: boolean | null;
  readonly how: 'welded' | 'pressed';
  /** The shop's limits; null where it has set none. */
  readonly limits: StudSettingLimits | null;
}

/**
 * What is recorded of a stud that was welded or pressed in anew: where it stands, how it leans, what it was proved with.
 *   out = off + lean · S/height      share = (H − F)/4      room = (H − F)/2
 *   off of its foot, lean at a height above the pad, S stack, H tightest hole, F the stud's greatest major diameter [mm]
 *   lean at 25 mm = lean · 25/height, foot and proof torque against the shop's limits, where it has set some
 *   More than the room fails: the stud touches its hole. More than its share cautions: the hole may be out as well.
 *   Valid: lean and foot out the same way, the worst of it; a straight stud. Only torque proves the weld.
 *   Source: ASME Y14.5, Appendix B, fixed fastener, halved for a radius; first principles
 *   Throws: a Refusal that names each measurement it cannot work with.
 *   Example: off 0.1, lean 0.2 at 20, S 12.7, H 10.3, F 9.5 → 0.227 out, share 0.20: caution (calc/stud/holes/replacedStud.test.ts)
 */
export function replacedStud(input: ReplacedStudInput, unit: LengthUnit = 'mm'): readonly Finding[] {
  refuse(input);
  return [
    standsClear(input, unit),
    square(input, unit),
    inPlace(input, unit),
    proved(input, unit),
    root(input),
  ];
}

function standsClear(input: ReplacedStudInput, unit: LengthUnit): Finding {
  const { leanMm, leanAtMm, offMm, stackMm: S, tightestHoleMm: H, studMostMm: F } = input;
  const base = {
    id: 'replaced-standing',
    title: 'Stud in its hole',
    unit: 'mm',
    source: 'ASME Y14.5, Appendix B, fixed fastener',
  };
  if (leanMm === null || leanAtMm === null || offMm === null || H === null) {
    const sentence = `The stud’s clearance in its hole can’t be checked. Measure ${
      H === null ? 'the holes' : 'base location and squareness'
    }.`;
    return { ...base, status: 'not-checked', value: null, limit: null, sentence, answer: null };
  }
  const out = offMm + (leanMm * S) / leanAtMm;
  const room = (H - F) / 2;
  const share = room / 2;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const p = (x: number) => printNumber(x, 3);
  const touches = out > room + 1e-9;
  const answer: Answer = {
    symbol: 'out',
    value: out,
    unit: 'mm',
    how: [
      {
        formula: 'out = off + lean · S/height; room = (H − F)/2',
        numbers: `out = ${p(offMm)} + ${p(leanMm)} · ${p(S)}/${p(leanAtMm)} = ${p(out)} mm; room = (${p(H)} − ${p(F)})/2 = ${p(room)} mm`,
        source: 'first principles',
      },
    ],
    warnings: [],
  };
  return {
    ...base,
    status: touches ? 'fail' : out > share + 1e-9 ? 'caution' : 'pass',
    value: out,
    limit: touches ? room : share,
    sentence: touches
      ? `At the engine side the stud is off by ${mm(out)}; its hole allows ${mm(room)}. It touches: replace it again.`
      : `At the engine side the stud is off by ${mm(out)}; half the play in its hole, ${mm(share)}, is allowed.${out > share + 1e-9 ? ' Try it in the flexplate before you close the converter.' : ''}`,
    answer,
  };
}

const SHOP = 'the shop’s limit';

/** Against the shop's limit; without one, or without the measurement, it is not judged. */
function againstShop(
  shape: { readonly id: string; readonly title: string; readonly what: string; readonly where: string },
  valueMm: number | null,
  limitMm: number | null,
  unit: LengthUnit,
): Finding {
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const over = valueMm !== null && limitMm !== null && valueMm > limitMm + 1e-9;
  const measured =
    valueMm === null ? `${shape.what} is not measured.` : `${shape.what} is ${mm(valueMm)}${shape.where}`;
  return {
    id: shape.id,
    title: shape.title,
    status: valueMm === null || limitMm === null ? 'not-checked' : over ? 'fail' : 'pass',
    value: valueMm,
    limit: limitMm,
    unit: 'mm',
    sentence:
      valueMm === null
        ? measured
        : limitMm === null
          ? `${measured}; the shop has no limit for it.`
          : `${measured}; at most ${mm(limitMm)} is allowed.${over ? ' Replace it again.' : ''}`,
    source: SHOP,
    answer: null,
  };
}

function square({ leanMm, leanAtMm, limits }: ReplacedStudInput, unit: LengthUnit): Finding {
  const at25 = leanMm === null || leanAtMm === null ? null : (leanMm * LEAN_AT_MM) / leanAtMm;
  return againstShop(
    {
      id: 'replaced-square',
      title: 'Squareness',
      what: 'Out of square',
      where: ` at ${printLength(LEAN_AT_MM, unit, 'coarse')} above the pad`,
    },
    at25,
    limits?.leanAt25Mm ?? null,
    unit,
  );
}

function inPlace({ offMm, limits }: ReplacedStudInput, unit: LengthUnit): Finding {
  return againstShop(
    { id: 'replaced-place', title: 'Base location', what: 'Base off location', where: '' },
    offMm,
    limits?.offMm ?? null,
    unit,
  );
}

function proved({ provedNm, heldIt, limits }: ReplacedStudInput, unit: LengthUnit): Finding {
  const known = provedNm !== null && heldIt !== null;
  const asked = limits?.proofNm ?? null;
  if (known && heldIt && asked !== null && provedNm < asked - 1e-9) {
    return {
      id: 'replaced-proof',
      title: 'Proof torque',
      status: 'fail',
      value: provedNm,
      limit: asked,
      unit: 'N·m',
      sentence: `The stud held ${printTorque(provedNm, unit, 1)}; the shop’s proof torque is ${printTorque(asked, unit, 1)}. Test it again.`,
      source: SHOP,
      answer: null,
    };
  }
  return {
    id: 'replaced-proof',
    title: 'Proof torque',
    status: known ? (heldIt ? 'pass' : 'fail') : 'not-checked',
    value: provedNm,
    limit: asked,
    unit: 'N·m',
    sentence: known
      ? heldIt
        ? `The stud held ${printTorque(provedNm, unit, 1)} on a spacer and did not turn or pull.`
        : `The stud turned or pulled at ${printTorque(provedNm, unit, 1)}. Replace it again.`
      : 'No proof torque is recorded. Tighten a nut on a spacer to the shop’s torque and look for turning.',
    source: 'as recorded',
    answer: null,
  };
}

/** The strength of a weld or a press fit is not worked out, and the finding says so. */
function root({ provedNm, heldIt, how }: ReplacedStudInput): Finding {
  const what = how === 'welded' ? 'the weld' : 'the press fit';
  return {
    id: 'replaced-root',
    title: how === 'welded' ? 'Weld' : 'Press fit',
    status: 'not-checked',
    value: null,
    limit: null,
    unit: '',
    sentence:
      provedNm !== null && heldIt === true
        ? `The strength of ${what} is not worked out; it held its proof torque.`
        : `The strength of ${what} is not worked out, and no proof torque shows that it holds.`,
    source: `${how === 'welded' ? 'welding belongs to licensed practice; ' : ''}common practice, no source`,
    answer: null,
  };
}

function refuse(input: ReplacedStudInput): void {
  const faults: Fault[] = [];
  const ask = (path: keyof ReplacedStudInput, name: string, unit: string, above: boolean) => {
    const value = input[path];
    if (typeof value !== 'number' || (Number.isFinite(value) && (above ? value > 0 : value >= 0))) return;
    const message = Number.isFinite(value)
      ? `${name} is ${value} ${unit}; it must be ${above ? 'more than 0' : '0'} ${unit}${above ? '' : ' or more'}.`
      : `${name} is not a number; give it in ${unit}.`;
    faults.push({ path, message });
  };
  ask('leanMm', 'Out of square', 'mm', false);
  ask('leanAtMm', 'The height of the squareness reading', 'mm', true);
  ask('offMm', 'Base off location', 'mm', false);
  ask('stackMm', 'The stack', 'mm', true);
  ask('tightestHoleMm', 'The tightest hole', 'mm', true);
  ask('studMostMm', 'The stud’s diameter', 'mm', true);
  ask('provedNm', 'The proof torque', 'N·m', true);
  if (faults.length > 0) throw new Refusal('replaced-stud-input', faults);
}
