import type { GaugeAtHand } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { type LengthUnit, listInWords, printShare } from '../../../shared/words/print.ts';
import type { CoverNumbers } from '../cover/coverNumbers.ts';
import { gaugeThatSettles } from '../cover/gaugeThatSettles.ts';
import { type Doubt, whatWouldSettle } from '../cover/whatWouldSettle.ts';
import { printCut } from './coverWords.ts';

/**
 * How sure we are that every station keeps the minimum. Passes at the shop's confidence, fails only where a wall
 * is below the minimum outright; between, it is a caution that says what would settle it.
 */
export function sureFinding(numbers: CoverNumbers, unit: LengthUnit): Finding {
  const { minimum, sure, uncertainty, confidence, least } = numbers;
  const asks = numbers.usual.confidence ? 'usual is' : 'the shop asks for';
  const source = numbers.usual.confidence
    ? 'the default of ISO 14253-1, 95 %; the shop has set no confidence of its own'
    : 'the shop’s confidence; decision rule of ISO 14253-1';
  const base = { id: 'sure-of-it', title: 'How sure', limit: confidence, unit: '', source };
  if (minimum === null || uncertainty === null || sure === null) {
    const why =
      minimum === null
        ? 'no minimum wall is set'
        : 'the gauge is not described and no wall was read more than once, so readings are taken as exact';
    return {
      ...base,
      status: 'not-checked',
      value: null,
      sentence: `How sure is not worked out: ${why}.`,
      answer: null,
    };
  }
  const value = sure.all.value!;
  // Never print 100 %: nothing measured is certain.
  const share = value > 0.999 ? 'More than 99.9 %' : printShare(value);
  const said = `${share} sure that every station keeps the minimum; ${asks} ${printShare(confidence)}.`;
  const unsaid =
    uncertainty.missing.length > 0
      ? ` Not given, and so counted as nothing: ${listInWords(uncertainty.missing)}.`
      : '';
  const whole = { ...base, value, answer: sure.all };
  if (least.wallMm < minimum.mm - 1e-9) return { ...whole, status: 'fail', sentence: `${said}${unsaid}` };
  if (value >= confidence - 1e-9) return { ...whole, status: 'pass', sentence: `${said}${unsaid}` };
  return { ...whole, status: 'caution', sentence: `Only ${said} ${settle(numbers, unit)}${unsaid}` };
}

/** What would change the verdict: more readings, a finer gauge, a lesser cut; or that nothing will. */
function settle(numbers: CoverNumbers, unit: LengthUnit): string {
  const { input, cut, cleanUp, minimum, uncertainty, sure, confidence, stations } = numbers;
  if (sure!.cleanUp >= confidence && cleanUp.dialledMm < cut.dialledMm - 1e-9) {
    return `The least cut that cleans up, ${printCut(cleanUp.dialledMm, unit)}, would leave enough to be sure of.`;
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
      return `${settled.readings} readings of the wall at every station would settle it, if their means stay as they are.${other}`;
    case 'gauge':
      return `More readings will not settle it; gauges with at most ${Math.floor(settled.share * 100)} % of these uncertainties would, if the walls read the same.${other}`;
    case 'nothing':
      return doubt.cutSettingMm > 0
        ? 'Neither more readings nor a finer gauge will settle it: the wall is too near the minimum for the setting of the cut.'
        : 'Neither more readings nor a finer gauge will settle it: the cover is at its limit.';
  }
}

/** The shop's own gauge that would do, by name; '' where the shop's gauges are not known. */
function gaugeOfTheShop(doubt: Doubt, atHand: readonly GaugeAtHand[]): string {
  if (atHand.length === 0) return '';
  const found = gaugeThatSettles(doubt, atHand);
  if (found === null) return ' No gauge of the catalogue would.';
  const times = found.readings === 1 ? 'once' : `${found.readings} times`;
  return ` Of the catalogue, ${found.name} would, read ${times} at every station.`;
}
