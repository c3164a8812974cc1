import { readThread } from '../../shared/quantity/readThread.ts';
import type { CatalogueNut, CatalogueWasher } from '../../shared/words/catalogue.ts';
import { inches, us } from './inches.ts';
import { NUTS, type NutThread } from './stacks.ts';

export interface DemoNut {
  readonly id: string;
  readonly entry: CatalogueNut;
}

export interface DemoWasher {
  readonly id: string;
  readonly entry: CatalogueWasher;
}

const SHORT_NAMES: Readonly<Record<NutThread, string>> = {
  '5/16-24 UNF-2B': '5/16-24',
  '3/8-16 UNC-2B': '3/8-16',
  '3/8-24 UNF-2B': '3/8-24',
  '7/16-20 UNF-2B': '7/16-20',
  'M8x1.25-6H': 'M8',
  'M10x1.25-6H': 'M10×1.25',
  'M10x1.5-6H': 'M10',
  'M12x1.75-6H': 'M12',
};

/** A hex nut of each thread, and a thin one that is taken by mistake. */
export const demoNuts: readonly DemoNut[] = [
  ...(Object.keys(NUTS) as NutThread[]).map((thread, i) => made(thread, 'Hex nut', i)),
  made('3/8-24 UNF-2B', 'Thin nut', 8),
];

function made(thread: NutThread, kind: 'Hex nut' | 'Thin nut', place: number): DemoNut {
  const read = readThread(thread, 'internal');
  if (!read.ok) throw new Error(read.message);
  const thin = kind === 'Thin nut';
  const name = SHORT_NAMES[thread];
  return {
    id: `${thin ? 'thin' : 'hex'}-nut-${name.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-')}`,
    entry: {
      name: `${kind} ${name}`,
      threadTyped: thread,
      nut: {
        ...NUTS[thread],
        ...(thin && { heightMm: inches(0.219), toleranceMm: inches(0.008) }),
        thread: read.thread,
        proofMPa: null,
        tensileMPa: us(thin ? 90 : 130, 'stress'),
        countersinkMm: inches(0.004),
        prevailing: false,
      },
      stock: thin ? 20 : 120 - 12 * place,
      shelf: `N-${place + 1}`,
      note: 'Invented for the demo.',
    },
  };
}

interface MadeWasher {
  readonly name: string;
  readonly use: CatalogueWasher['use'];
  readonly innerIn: number;
  readonly outerIn: number;
  readonly thicknessIn: number;
  readonly stock: number;
  readonly shelf: string;
}

/** Invented washers, and the shims that go under pads of 3/8 in and M10 studs. */
export const demoWashers: readonly DemoWasher[] = (
  [
    washer('Washer 3/8', 'washer', [0.406, 0.812, 0.065], 90, 'W-1'),
    washer('Washer M10', 'washer', [0.413, 0.787, 0.079], 60, 'W-2'),
    washer('Shim 3/8 or M10, 0.030 in', 'shim', [0.42, 0.875, 0.03], 40, 'H-1'),
    washer('Shim 3/8 or M10, 0.060 in', 'shim', [0.42, 0.875, 0.06], 24, 'H-2'),
  ] satisfies MadeWasher[]
).map(({ name, use, innerIn, outerIn, thicknessIn, stock, shelf }) => ({
  id: name.toLowerCase().replaceAll(/[^a-z0-9.]+/g, '-'),
  entry: {
    name,
    use,
    innerDiameterMm: inches(innerIn),
    outerDiameterMm: inches(outerIn),
    thicknessMm: inches(thicknessIn),
    toleranceMm: inches(0.002),
    stock,
    shelf,
    note: 'Invented for the demo.',
  },
}));

function washer(
  name: string,
  use: CatalogueWasher['use'],
  [innerIn, outerIn, thicknessIn]: readonly [inner: number, outer: number, thickness: number],
  stock: number,
  shelf: string,
): MadeWasher {
  return { name, use, innerIn, outerIn, thicknessIn, stock, shelf };
}
