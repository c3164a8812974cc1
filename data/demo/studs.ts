import { readThread } from '../../shared/quantity/readThread.ts';
import type { CatalogueStud } from '../../shared/words/catalogue.ts';

export interface DemoStud {
  readonly id: string;
  readonly entry: CatalogueStud;
}

/** What the long one of a pair has more than the short one: unthreaded pilot beyond the thread, and nothing else. */
const MORE_PILOT_MM = 6.35;

interface Pair {
  readonly slug: string;
  readonly thread: string;
  readonly threadStartMm: number;
  readonly threadEndMm: number;
  /** Tip of the short one. */
  readonly projectionMm: number;
  readonly pilotDiameterMm: number;
  /** Of the strength grade the note names. */
  readonly tensileMPa: number;
  readonly proofMPa: number;
  readonly grade: string;
  /** How many of the short and of the long one lie on the shelf. */
  readonly stock: readonly [short: number, long: number];
}

const GRADE_5 = { tensileMPa: 827, proofMPa: 586, grade: 'SAE J429 grade 5: 120/85 ksi' };
const GRADE_8 = { tensileMPa: 1034, proofMPa: 827, grade: 'SAE J429 grade 8: 150/120 ksi' };
const CLASS_8_8 = { tensileMPa: 800, proofMPa: 580, grade: 'ISO 898-1 class 8.8: 800/580 MPa' };
const CLASS_10_9 = { tensileMPa: 1040, proofMPa: 830, grade: 'ISO 898-1 class 10.9: 1040/830 MPa' };

const PAIRS: readonly Pair[] = [
  {
    slug: '5-16-24',
    thread: '5/16-24 UNF-2A',
    threadStartMm: 0.8,
    threadEndMm: 19.6,
    projectionMm: 20.4,
    pilotDiameterMm: 6.5,
    stock: [24, 12],
    ...GRADE_5,
  },
  {
    slug: '3-8-16',
    thread: '3/8-16 UNC-2A',
    threadStartMm: 0.8,
    threadEndMm: 22.5,
    projectionMm: 23.5,
    pilotDiameterMm: 7.5,
    stock: [60, 36],
    ...GRADE_5,
  },
  {
    slug: '3-8-24',
    thread: '3/8-24 UNF-2A',
    threadStartMm: 1,
    threadEndMm: 23,
    projectionMm: 24,
    pilotDiameterMm: 8,
    stock: [84, 48],
    ...GRADE_5,
  },
  {
    slug: '7-16-20',
    thread: '7/16-20 UNF-2A',
    threadStartMm: 1,
    threadEndMm: 25.7,
    projectionMm: 26.7,
    pilotDiameterMm: 9.4,
    stock: [16, 40],
    ...GRADE_8,
  },
  {
    slug: 'm8',
    thread: 'M8x1.25-6g',
    threadStartMm: 0.8,
    threadEndMm: 19.2,
    projectionMm: 20,
    pilotDiameterMm: 6.4,
    stock: [30, 18],
    ...CLASS_8_8,
  },
  {
    slug: 'm10-fine',
    thread: 'M10x1.25-6g',
    threadStartMm: 0.8,
    threadEndMm: 22.3,
    projectionMm: 23.2,
    pilotDiameterMm: 8.4,
    stock: [42, 24],
    ...CLASS_8_8,
  },
  {
    slug: 'm10',
    thread: 'M10x1.5-6g',
    threadStartMm: 0.8,
    threadEndMm: 22.6,
    projectionMm: 23.6,
    pilotDiameterMm: 8.1,
    stock: [36, 0],
    ...CLASS_8_8,
  },
  {
    slug: 'm12',
    thread: 'M12x1.75-6g',
    threadStartMm: 1,
    threadEndMm: 28.2,
    projectionMm: 29.2,
    pilotDiameterMm: 9.8,
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
  const { threadStartMm, threadEndMm, pilotDiameterMm, tensileMPa, proofMPa } = pair;
  return {
    id: `${length}-${pair.slug}`,
    entry: {
      name: `${length === 'short' ? 'Short' : 'Long'} stud ${read.thread.designation.replace(/-[26][Ag]$/, '')}`,
      threadTyped: pair.thread,
      stock: length === 'short' ? pair.stock[0] : pair.stock[1],
      shelf: `${length === 'short' ? 'S' : 'L'}-${PAIRS.indexOf(pair) + 1}`,
      stud: {
        thread: read.thread,
        threadStartMm,
        threadEndMm,
        projectionMm: pair.projectionMm + (length === 'long' ? MORE_PILOT_MM : 0),
        lengthToleranceMm: 0.25,
        pilotDiameterMm,
        tensileMPa,
        proofMPa,
        filletMm: null,
      },
      note: `Invented for the demonstration. Strength as ${pair.grade}.${length === 'long' ? ' The same thread as the short one; 6.35 mm more pilot.' : ''}`,
    },
  };
}
