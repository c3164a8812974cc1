import type { GaugeAtHand } from '../../../shared/words/cover.ts';
import { printCut, printRequired, printSure } from '../../../shared/words/cut.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, listInWords } from '../../../shared/words/print.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import { gaugeThatSettles } from '../cover/gaugeThatSettles.ts';
import { type Doubt, whatWouldSettle } from '../cover/whatWouldSettle.ts';

/**
 * How sure we are that every station keeps the minimum. Passes at the shop's confidence, fails only where a wall
 * is below the minimum outright; between, it is a caution that says what would settle it.
 */
export function sureFinding(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const { minimum, sure, uncertainty, confidence, least } = numbers;
  const source = numbers.usual.confidence
    ? 'the default of ISO 14253-1, 95 %; the shop has set none of its own'
    : 'the confidence the shop requires; decision rule of ISO 14253-1';
  const base = { id: 'sure-of-it', title: 'Confidence in the wall', limit: confidence, unit: '', source };
  if (minimum === null || uncertainty === null || sure === null) {
    const why =
      minimum === null
        ? 'no minimum wall is set'
        : 'no gauge figures are entered and no wall was read twice, so readings count as exact';
    return {
      ...base,
      status: 'not-checked',
      value: null,
      sentence: `Confidence is not worked out: ${why}.`,
      answer: null,
    };
  }
  const value = sure.all.value!;
  const share = printSure(value);
  const said = `${share} sure that no station is below the minimum; ${printRequired(confidence)} is required.`;
  const unsaid =
    uncertainty.missing.length > 0
      ? ` Not entered, so counted as zero: ${listInWords(uncertainty.missing)}.`
      : '';
  const told = `${said.charAt(0).toUpperCase()}${said.slice(1)}${unsaid}`;
  const whole = { ...base, value, answer: sure.all };
  if (least.wallMm < minimum.mm - 1e-9) return { ...whole, status: 'fail', sentence: told };
  if (value >= confidence - 1e-9) return { ...whole, status: 'pass', sentence: told };
  return { ...whole, status: 'caution', sentence: `Only ${said} ${settle(numbers, unit)}${unsaid}` };
}

/** What would change the verdict: more readings, a finer gauge, a lesser cut; or that nothing will. */
function settle(numbers: CoverNumbers, unit: LengthUnit): string {
  const { input, cut, cleanUp, minimum, uncertainty, sure, confidence, stations } = numbers;
  if (sure!.cleanUp >= confidence && cleanUp.dialledMm < cut.dialledMm - 1e-9) {
    return `Cut ${printCut(cleanUp.dialledMm, unit)} instead, the least that cleans up: that meets the confidence required.`;
  }
  const { gauge } = input;
  const doubt: Doubt = {
    marginsMm: cut.wallsAfterMm.map((wallMm) => wallMm - minimum!.mm),
    confidence,
    calibrationMm: gauge?.standardUncertaintyMm ?? 0,
    cutSettingMm: gauge?.cutSettingStandardUncertaintyMm ?? 0,
    indicatorMm: numbers.ways.length === 1 ? (gauge?.faceStandardUncertaintyMm ?? 0) : 0,
    resolutionMm: gauge?.resolutionMm ?? 0,
    repeatabilityMm: uncertainty!.repeatability?.mm ?? 0,
    readings: stations.map(({ repeats }) => repeats),
  };
  const settled = whatWouldSettle(doubt);
  const other = gaugeOfTheShop(doubt, input.gaugesAtHand ?? []);
  switch (settled.by) {
    case 'repeats':
      return `Take ${readings(settled.readings)} per station${other === null ? '' : `, or ${other}`}.`;
    case 'gauge':
      return other === null
        ? `More readings won’t settle it: it takes a gauge and an indicator with at most ${Math.floor(settled.share * 100)} % of this uncertainty.`
        : `More readings with this gauge won’t settle it: take ${other} per station.`;
    case 'nothing':
      return doubt.cutSettingMm > 0
        ? 'No gauge will settle it: the wall is closer to the minimum than the depth of cut can be set.'
        : 'No gauge will settle it: the wall is at its limit.';
  }
}

/** "1 reading", "5 readings". */
function readings(count: number): string {
  return count === 1 ? '1 reading' : `${count} readings`;
}

/** The shop's own gauge that would do, by name: "1 with Micrometer M2". null where none would, or none is known. */
function gaugeOfTheShop(doubt: Doubt, atHand: readonly GaugeAtHand[]): string | null {
  const found = atHand.length === 0 ? null : gaugeThatSettles(doubt, atHand);
  return found === null ? null : `${found.readings} with ${found.name}`;
}
