import { readThread } from '../../shared/quantity/readThread.ts';
import type { CatalogueStack } from '../../shared/words/catalogue.ts';
import type { Layer, Nut } from '../../shared/words/stud.ts';

export interface DemoStack {
  readonly id: string;
  readonly entry: CatalogueStack;
}

/** Height and its tolerance: mean and half the range of ISO 4032 and ASME B18.2.2 hex nuts; bearing Ø likewise. */
const NUTS = {
  '5/16-24 UNF-2B': { heightMm: 6.744, toleranceMm: 0.19, bearingOuterDiameterMm: 11.9 },
  '3/8-16 UNC-2B': { heightMm: 8.344, toleranceMm: 0.216, bearingOuterDiameterMm: 13.4 },
  '3/8-24 UNF-2B': { heightMm: 8.344, toleranceMm: 0.216, bearingOuterDiameterMm: 13.4 },
  '7/16-20 UNF-2B': { heightMm: 9.525, toleranceMm: 0.254, bearingOuterDiameterMm: 16.4 },
  'M8x1.25-6H': { heightMm: 6.62, toleranceMm: 0.18, bearingOuterDiameterMm: 11.6 },
  'M10x1.25-6H': { heightMm: 8.22, toleranceMm: 0.18, bearingOuterDiameterMm: 14.6 },
  'M10x1.5-6H': { heightMm: 8.22, toleranceMm: 0.18, bearingOuterDiameterMm: 14.6 },
  'M12x1.75-6H': { heightMm: 10.585, toleranceMm: 0.215, bearingOuterDiameterMm: 16.6 },
} as const;
type NutThread = keyof typeof NUTS;

/** Stud circles of the invented cover families. */
const CIRCLES = {
  three: { holeCount: 3, holeCircleDiameterMm: 258 },
  four: { holeCount: 4, holeCircleDiameterMm: 286 },
  six: { holeCount: 6, holeCircleDiameterMm: 292 },
} as const;

interface Made {
  readonly id: string;
  readonly name: string;
  readonly circle: keyof typeof CIRCLES;
  readonly nut: NutThread;
  readonly holeMm: number;
  readonly plateMm: number;
  /** Only a two-piece flexplate has one. */
  readonly castingMm?: number;
  readonly tipRoomMm: number;
  readonly pullForwardMm: number;
}

const ONE_PIECE: readonly Made[] = [
  {
    id: 'one-piece-three-m8',
    name: 'One-piece plate, three M8 on Ø 258',
    circle: 'three',
    nut: 'M8x1.25-6H',
    holeMm: 9,
    plateMm: 3,
    tipRoomMm: 24,
    pullForwardMm: 3.2,
  },
  {
    id: 'one-piece-three-5-16-24',
    name: 'One-piece plate, three 5/16-24 on Ø 258',
    circle: 'three',
    nut: '5/16-24 UNF-2B',
    holeMm: 8.7,
    plateMm: 2.8,
    tipRoomMm: 24,
    pullForwardMm: 4,
  },
  {
    id: 'one-piece-four-3-8-16',
    name: 'One-piece plate, four 3/8-16 on Ø 286',
    circle: 'four',
    nut: '3/8-16 UNC-2B',
    holeMm: 10.3,
    plateMm: 3.5,
    tipRoomMm: 28,
    pullForwardMm: 4.8,
  },
  {
    id: 'one-piece-four-3-8-24',
    name: 'One-piece plate, four 3/8-24 on Ø 286',
    circle: 'four',
    nut: '3/8-24 UNF-2B',
    holeMm: 10.3,
    plateMm: 3.2,
    tipRoomMm: 28,
    pullForwardMm: 4,
  },
  {
    id: 'one-piece-six-m10-fine',
    name: 'One-piece plate, six M10×1.25 on Ø 292',
    circle: 'six',
    nut: 'M10x1.25-6H',
    holeMm: 11,
    plateMm: 3,
    tipRoomMm: 27,
    pullForwardMm: 3.5,
  },
  {
    id: 'one-piece-six-m10',
    name: 'One-piece plate, six M10 on Ø 292',
    circle: 'six',
    nut: 'M10x1.5-6H',
    holeMm: 11,
    plateMm: 4,
    tipRoomMm: 27,
    pullForwardMm: 4.5,
  },
];

/** Their casting holds the converter far back: about 10 to 15 mm before it is drawn forward, where 3.2 to 4.8 is usual. */
const TWO_PIECE: readonly Made[] = [
  {
    id: 'two-piece-three-m8',
    name: 'Two-piece, plate and casting, three M8 on Ø 258',
    circle: 'three',
    nut: 'M8x1.25-6H',
    holeMm: 9,
    plateMm: 2.5,
    castingMm: 8,
    tipRoomMm: 36,
    pullForwardMm: 10,
  },
  {
    id: 'two-piece-four-3-8-16',
    name: 'Two-piece, plate and casting, four 3/8-16 on Ø 286',
    circle: 'four',
    nut: '3/8-16 UNC-2B',
    holeMm: 10.3,
    plateMm: 3.2,
    castingMm: 8.5,
    tipRoomMm: 40,
    pullForwardMm: 12.2,
  },
  {
    id: 'two-piece-four-3-8-24',
    name: 'Two-piece, plate and casting, four 3/8-24 on Ø 286',
    circle: 'four',
    nut: '3/8-24 UNF-2B',
    holeMm: 10.3,
    plateMm: 3.2,
    castingMm: 9.5,
    tipRoomMm: 40,
    pullForwardMm: 11.8,
  },
  {
    id: 'two-piece-four-7-16-20',
    name: 'Two-piece, plate and casting, four 7/16-20 on Ø 286',
    circle: 'four',
    nut: '7/16-20 UNF-2B',
    holeMm: 11.9,
    plateMm: 4,
    castingMm: 10,
    tipRoomMm: 42,
    pullForwardMm: 13,
  },
  {
    id: 'two-piece-six-m10-fine',
    name: 'Two-piece, plate and casting, six M10×1.25 on Ø 292',
    circle: 'six',
    nut: 'M10x1.25-6H',
    holeMm: 11,
    plateMm: 3,
    castingMm: 9,
    tipRoomMm: 38,
    pullForwardMm: 11.6,
  },
  {
    id: 'two-piece-six-m12',
    name: 'Two-piece, plate and casting, six M12 on Ø 292',
    circle: 'six',
    nut: 'M12x1.75-6H',
    holeMm: 13.5,
    plateMm: 4,
    castingMm: 11,
    tipRoomMm: 44,
    pullForwardMm: 14.6,
  },
];

/** Invented flexplate stacks, with the nuts that go on them. */
export const demoStacks: readonly DemoStack[] = [...ONE_PIECE, ...TWO_PIECE].map(made);

function made(stack: Made): DemoStack {
  const layer = (name: string, thicknessMm: number, toleranceMm: number): Layer => ({
    name,
    thicknessMm,
    toleranceMm,
    holeDiameterMm: stack.holeMm,
    chamferMm: null,
  });
  const plate = layer('plate', stack.plateMm, 0.1);
  const two = stack.castingMm !== undefined;
  return {
    id: stack.id,
    entry: {
      name: stack.name,
      stack: {
        style: two ? 'two-piece' : 'one-piece',
        layers: stack.castingMm === undefined ? [plate] : [plate, layer('casting', stack.castingMm, 0.15)],
        ...CIRCLES[stack.circle],
        tipRoomMm: stack.tipRoomMm,
      },
      nut: nutOf(stack.nut),
      nutThreadTyped: stack.nut,
      pullForwardMm: stack.pullForwardMm,
      note: two
        ? 'Invented for the demonstration. The gap is far more than the usual 3.2 to 4.8 mm, which is why the long stud is wanted: measure yours.'
        : 'Invented for the demonstration. Measure the gap of the job in hand.',
    },
  };
}

function nutOf(thread: NutThread): Nut {
  const read = readThread(thread, 'internal');
  if (!read.ok) throw new Error(read.message);
  return {
    ...NUTS[thread],
    thread: read.thread,
    proofMPa: null,
    tensileMPa: 900,
    countersinkMm: 0.1,
    washerMm: 0,
    prevailing: false,
  };
}
