import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { PrintedPart } from '../../../shared/words/paper.ts';
import { ROOT } from '../../root.ts';
import { fontFile } from '../request/assets.ts';

/** What papers are printed with today: one style, and the type it asks for by its hash. */
export interface PartsToday {
  readonly styleHash: string;
  readonly parts: readonly PrintedPart[];
}

const STYLES = ['drawings.css', 'printed.css'];
const SLIP_STYLES = [...STYLES, 'slip.css'];
const WEIGHTS = [400, 600] as const;

let today: PartsToday | undefined;
let slipToday: PartsToday | undefined;

export function partsToday(): PartsToday {
  today ??= readParts(STYLES);
  return today;
}

/** The same for a counter slip. */
export function slipPartsToday(): PartsToday {
  slipToday ??= readParts(SLIP_STYLES);
  return slipToday;
}

function readParts(styles: readonly string[]): PartsToday {
  const faces: string[] = [];
  const parts: PrintedPart[] = [];
  for (const weight of WEIGHTS) {
    const type = partOf('woff2', readFileSync(fontFile(weight)));
    parts.push(type);
    faces.push(
      `@font-face{font-family:Sheet;font-weight:${weight};src:url('${type.hash}.woff2') format('woff2')}\n`,
    );
  }
  const sheets = styles.map((name) => readFileSync(join(ROOT, 'views', 'assets', name), 'utf8'));
  const style = partOf('css', Buffer.from([...faces, ...sheets].join('')));
  return { styleHash: style.hash, parts: [style, ...parts] };
}

function partOf(kind: PrintedPart['kind'], content: Buffer): PrintedPart {
  return {
    hash: createHash('sha256').update(content).digest('hex'),
    kind,
    base64: content.toString('base64'),
  };
}
