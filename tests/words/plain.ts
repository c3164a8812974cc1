/** Units that stand beside a figure or close a label. */
const UNIT = String.raw`(?:mm|µm|in|N·m|lb·ft|lb-ft|lbf·ft|kN|N|lbf|MPa\/mm|MPa|GPa|psi\/in|psi|ksi|bar|kPa|°C|°F|°|K|%|rpm|r\/min|m\/min|ft\/min|kg\/m³|lb\/in³|kg|lb|g·mm|oz·in|g|s|min|W\/m²|MW\/m²|J\/\(kg·K\)|W\/\(m·K\))`;
const NUMBER = String.raw`[-−+±]?(?:\d+ )?\d+(?:[.,]\d+)*(?:\/\d+)?(?:e[-+]?\d+)?`;
const MONTH = '(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)[a-z]*';

/** A figure or something typed, in the list. */
export const SIGN = '#';

/**
 * A text as the list has it: figures with their units, days, times, threads and what the demo shop typed become one
 * sign, so that neither figures, clock and zone nor the unit chosen change the list.
 */
export function plain(text: string, typed: readonly string[] = []): string {
  let out = text.replace(/\s+/g, ' ').trim();
  for (const one of typed) out = out.replaceAll(one, SIGN);
  out = out
    .replace(/\/\S*\/coverwright-[\w-]+/g, SIGN)
    // A password made for somebody.
    .replace(/\b[a-z\d]{4}(?:-[a-z\d]{4}){3}\b/g, SIGN)
    .replace(/\b(?:sha256|[0-9a-f]{12,})\b/g, SIGN)
    .replace(/\b\d{4}-\d{2}-\d{2}(?:T[\d:.]+Z?)?/g, SIGN)
    .replace(new RegExp(`\\b${MONTH} \\d{1,2}(?:, \\d{4})?\\b`, 'g'), SIGN)
    .replace(new RegExp(`\\b\\d{1,2} ${MONTH}(?: \\d{4})?\\b`, 'g'), SIGN)
    .replace(/\b\d{1,2}:\d{2}(?::\d{2})?(?: ?[AP]M\b)?(?: (?:UTC|GMT[-+\d:]*|[A-Z]{3,4})\b)?/g, SIGN)
    .replace(
      /\b(?:M\d+(?:\.\d+)?\s?[×x]\s?[\d.]+|\d+(?:\/\d+)?-\d+)(?: UN[A-Z]*)?(?:-\d[A-Z]\d?[A-Z]?)?\b/g,
      SIGN,
    )
    // "3 in the catalog" is no length; "0.005 in" is one.
    .replace(
      new RegExp(`${NUMBER}(?=\\s?in\\b(?! (?:the|a|an|this|that|all|stock|row)\\b))\\s?in\\b`, 'g'),
      SIGN,
    )
    .replace(new RegExp(`${NUMBER}\\s?${UNIT.replace('|in|', '|')}(?![\\p{L}])`, 'gu'), SIGN)
    .replace(new RegExp(NUMBER, 'g'), SIGN)
    .replace(new RegExp(`, ${UNIT}(?= at | #|$)`, 'g'), ', unit')
    .replace(/#(?:(?:,| and|;| to| or| ×|–|\/| ·|:)? ?#)+/g, SIGN);
  return out.replace(/\s+/g, ' ').trim();
}

/** Something to read is left: neither a sign, a unit nor a letter of a drawing alone. */
export function says(text: string): boolean {
  const rest = text.replaceAll(SIGN, '').replace(new RegExp(`(?<![\\p{L}])${UNIT}(?![\\p{L}])`, 'gu'), '');
  return /\p{L}{2}/u.test(rest);
}
