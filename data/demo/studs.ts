import { readThread } from '../../shared/quantity/readThread.ts';
import type { CatalogueStud } from '../../shared/words/catalogue.ts';
import { inches, us } from './inches.ts';

export interface DemoStud {
  readonly id: string;
  readonly entry: CatalogueStud;
}

/** What the long one of a pair has more than the short one: unthreaded pilot beyond the thread, and nothing else. */
const MORE_PILOT_IN = 0.25;

interface Pair {
  readonly slug: string;
  readonly thread: string;
  readonly threadStartIn: number;
  readonly threadEndIn: number;
  /** Length from pad of the short one. */
  readonly lengthIn: number;
  readonly pilotIn: number;
  /** Of the strength grade the note names. */
  readonly tensileMPa: number;
  readonly proofMPa: number;
  readonly grade: string;
  /** How many of the short and of the long one lie on the shelf. */
  readonly stock: readonly [short: number, long: number];
}

const GRADE_5 = {
  tensileMPa: us(120, 'stress'),
  proofMPa: us(85, 'stress'),
  grade: 'SAE J429 grade 5: 120/85 ksi',
};
const GRADE_8 = {
  tensileMPa: us(150, 'stress'),
  proofMPa: us(120, 'stress'),
  grade: 'SAE J429 grade 8: 150/120 ksi',
};
const CLASS_8_8 = { tensileMPa: 800, proofMPa: 580, grade: 'ISO 898-1 class 8.8' };
const CLASS_10_9 = { tensileMPa: 1040, proofMPa: 830, grade: 'ISO 898-1 class 10.9' };

const PAIRS: readonly Pair[] = [
  {
    slug: '5-16-24',
    thread: '5/16-24 UNF-2A',
    threadStartIn: 0.03,
    threadEndIn: 0.77,
    lengthIn: 0.8,
    pilotIn: 0.255,
    stock: [24, 12],
    ...GRADE_5,
  },
  {
    slug: '3-8-16',
    thread: '3/8-16 UNC-2A',
    threadStartIn: 0.03,
    threadEndIn: 0.885,
    lengthIn: 0.925,
    pilotIn: 0.295,
    stock: [60, 36],
    ...GRADE_5,
  },
  {
    slug: '3-8-24',
    thread: '3/8-24 UNF-2A',
    threadStartIn: 0.04,
    threadEndIn: 0.905,
    lengthIn: 0.945,
    pilotIn: 0.315,
    stock: [84, 48],
    ...GRADE_5,
  },
  {
    slug: '7-16-20',
    thread: '7/16-20 UNF-2A',
    threadStartIn: 0.04,
    threadEndIn: 1.01,
    lengthIn: 1.05,
    pilotIn: 0.37,
    stock: [16, 40],
    ...GRADE_8,
  },
  {
    slug: 'm8',
    thread: 'M8x1.25-6g',
    threadStartIn: 0.03,
    threadEndIn: 0.755,
    lengthIn: 0.79,
    pilotIn: 0.25,
    stock: [30, 18],
    ...CLASS_8_8,
  },
  {
    slug: 'm10-fine',
    thread: 'M10x1.25-6g',
    threadStartIn: 0.03,
    threadEndIn: 0.88,
    lengthIn: 0.915,
    pilotIn: 0.33,
    stock: [42, 24],
    ...CLASS_8_8,
  },
  {
    slug: 'm10',
    thread: 'M10x1.5-6g',
    threadStartIn: 0.03,
    threadEndIn: 0.89,
    lengthIn: 0.93,
    pilotIn: 0.32,
    stock: [36, 0],
    ...CLASS_8_8,
  },
  {
    slug: 'm12',
    thread: 'M12x1.75-6g',
    threadStartIn: 0.04,
    threadEndIn: 1.11,
    lengthIn: 1.15,
    pilotIn: 0.385,
    stock: [12, 20],
    ...CLASS_10_9,
  },
];

/** Invented studs, in pairs: one long, one short, that differ in nothing but the pilot. */
export const demoStuds: readonly DemoStud[] = PAIRS.flatMap((pair) => [
  made(pair, 'short'),
  made(pair, 'long'),
]);

function made(pair: Pair, length: 'short' | 'long'): DemoStud {
  const read = readThread(pair.thread, 'external');
  if (!read.ok) throw new Error(read.message);
  const { tensileMPa, proofMPa } = pair;
  return {
    id: `${length}-${pair.slug}`,
    entry: {
      name: `${length === 'short' ? 'Short' : 'Long'} stud ${read.thread.designation.replace(/-[26][Ag]$/, '')}`,
      threadTyped: pair.thread,
      stock: length === 'short' ? pair.stock[0] : pair.stock[1],
      shelf: `${length === 'short' ? 'S' : 'L'}-${PAIRS.indexOf(pair) + 1}`,
      stud: {
        thread: read.thread,
        threadStartMm: inches(pair.threadStartIn),
        threadEndMm: inches(pair.threadEndIn),
        projectionMm: inches(pair.lengthIn) + (length === 'long' ? inches(MORE_PILOT_IN) : 0),
        lengthToleranceMm: inches(0.01),
        pilotDiameterMm: inches(pair.pilotIn),
        tensileMPa,
        proofMPa,
        filletMm: null,
      },
      note: `Invented for the demo. Strength of ${pair.grade}.${length === 'long' ? ' Same thread as the short stud, with a 0.25 in longer pilot.' : ''}`,
    },
  };
}
