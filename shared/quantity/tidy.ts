const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Single spaces, `-` for every minus and hyphen, `/` for every stroke, `½` as `1/2`. Nothing else changes. */
export function tidy(text: string): string {
  return text
    .replace(/(\d?) ?([½¼¾⅛⅜⅝⅞])/g, (_, digit: string, sign: string) =>
      digit === '' ? `${VULGAR[sign]}` : `${digit} ${VULGAR[sign]}`,
    )
    .replace(/[−‐‑–]/g, '-')
    .replace(/[⁄∕]/g, '/')
    .replace(/\s+/g, ' ')
    .trim();
}

const SHOWN = 40;

/** What was typed, in quotes, cut short when it is long; control characters are left out. */
export function quoted(text: string): string {
  const shown = text.replace(/\p{C}/gu, '').trim();
  return `"${shown.length > SHOWN ? `${shown.slice(0, SHOWN)}…` : shown}"`;
}
