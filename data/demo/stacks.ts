import { readThread } from '../../shared/quantity/readThread.ts';
import type { CatalogueStack } from '../../shared/words/catalogue.ts';
import type { Layer, Nut } from '../../shared/words/stud/stud.ts';
import { inches, us } from './inches.ts';

export interface DemoStack {
  readonly id: string;
  readonly entry: CatalogueStack;
}

/** Height and its tolerance: mean and half the range of ISO 4032 and ASME B18.2.2 hex nuts; bearing Ø likewise. */
export const NUTS = {
  '5/16-24 UNF-2B': {
    heightMm: inches(0.2655),
    toleranceMm: inches(0.0075),
    bearingOuterDiameterMm: inches(0.469),
  },
  '3/8-16 UNC-2B': {
    heightMm: inches(0.3285),
    toleranceMm: inches(0.0085),
    bearingOuterDiameterMm: inches(0.528),
  },
  '3/8-24 UNF-2B': {
    heightMm: inches(0.3285),
    toleranceMm: inches(0.0085),
    bearingOuterDiameterMm: inches(0.528),
  },
  '7/16-20 UNF-2B': {
    heightMm: inches(0.375),
    toleranceMm: inches(0.01),
    bearingOuterDiameterMm: inches(0.646),
  },
  'M8x1.25-6H': { heightMm: 6.62, toleranceMm: 0.18, bearingOuterDiameterMm: 11.6 },
  'M10x1.25-6H': { heightMm: 8.22, toleranceMm: 0.18, bearingOuterDiameterMm: 14.6 },
  'M10x1.5-6H': { heightMm: 8.22, toleranceMm: 0.18, bearingOuterDiameterMm: 14.6 },
  'M12x1.75-6H': { heightMm: 10.585, toleranceMm: 0.215, bearingOuterDiameterMm: 16.6 },
} as const;
export type NutThread = keyof typeof NUTS;

/** Bolt circles of the invented cover types. */
const CIRCLES = {
  three: { holeCount: 3, holeCircleDiameterMm: inches(10) },
  four: { holeCount: 4, holeCircleDiameterMm: inches(11.25) },
  six: { holeCount: 6, holeCircleDiameterMm: inches(11.5) },
} as const;

interface Made {
  readonly id: string;
  readonly name: string;
  readonly circle: keyof typeof CIRCLES;
  readonly nut: NutThread;
  readonly holeIn: number;
  readonly plateIn: number;
  /** Only a two-piece flexplate has one. */
  readonly castingIn?: number;
  readonly tipRoomIn: number;
  readonly pullForwardIn: number;
}

const ONE_PIECE: readonly Made[] = [
  {
    id: 'one-piece-three-m8',
    name: 'One-piece, three M8 on a 10 in bolt circle',
    circle: 'three',
    nut: 'M8x1.25-6H',
    holeIn: 0.355,
    plateIn: 0.12,
    tipRoomIn: 0.95,
    pullForwardIn: 0.125,
  },
  {
    id: 'one-piece-three-5-16-24',
    name: 'One-piece, three 5/16-24 on a 10 in bolt circle',
    circle: 'three',
    nut: '5/16-24 UNF-2B',
    holeIn: 0.343,
    plateIn: 0.11,
    tipRoomIn: 0.95,
    pullForwardIn: 0.16,
  },
  {
    id: 'one-piece-four-3-8-16',
    name: 'One-piece, four 3/8-16 on an 11.25 in bolt circle',
    circle: 'four',
    nut: '3/8-16 UNC-2B',
    holeIn: 0.406,
    plateIn: 0.14,
    tipRoomIn: 1.1,
    pullForwardIn: 0.185,
  },
  {
    id: 'one-piece-four-3-8-24',
    name: 'One-piece, four 3/8-24 on an 11.25 in bolt circle',
    circle: 'four',
    nut: '3/8-24 UNF-2B',
    holeIn: 0.406,
    plateIn: 0.125,
    tipRoomIn: 1.1,
    pullForwardIn: 0.16,
  },
  {
    id: 'one-piece-six-m10-fine',
    name: 'One-piece, six M10×1.25 on an 11.5 in bolt circle',
    circle: 'six',
    nut: 'M10x1.25-6H',
    holeIn: 0.433,
    plateIn: 0.12,
    tipRoomIn: 1.06,
    pullForwardIn: 0.14,
  },
  {
    id: 'one-piece-six-m10',
    name: 'One-piece, six M10 on an 11.5 in bolt circle',
    circle: 'six',
    nut: 'M10x1.5-6H',
    holeIn: 0.433,
    plateIn: 0.16,
    tipRoomIn: 1.06,
    pullForwardIn: 0.18,
  },
];

const TWO_PIECE: readonly Made[] = [
  {
    id: 'two-piece-three-m8',
    name: 'Two-piece, three M8 on a 10 in bolt circle',
    circle: 'three',
    nut: 'M8x1.25-6H',
    holeIn: 0.355,
    plateIn: 0.1,
    castingIn: 0.315,
    tipRoomIn: 1.42,
    pullForwardIn: 0.14,
  },
  {
    id: 'two-piece-four-3-8-16',
    name: 'Two-piece, four 3/8-16 on an 11.25 in bolt circle',
    circle: 'four',
    nut: '3/8-16 UNC-2B',
    holeIn: 0.406,
    plateIn: 0.125,
    castingIn: 0.335,
    tipRoomIn: 1.58,
    pullForwardIn: 0.17,
  },
  {
    id: 'two-piece-four-3-8-24',
    name: 'Two-piece, four 3/8-24 on an 11.25 in bolt circle',
    circle: 'four',
    nut: '3/8-24 UNF-2B',
    holeIn: 0.406,
    plateIn: 0.125,
    castingIn: 0.375,
    tipRoomIn: 1.58,
    pullForwardIn: 0.16,
  },
  {
    id: 'two-piece-four-7-16-20',
    name: 'Two-piece, four 7/16-20 on an 11.25 in bolt circle',
    circle: 'four',
    nut: '7/16-20 UNF-2B',
    holeIn: 0.469,
    plateIn: 0.16,
    castingIn: 0.395,
    tipRoomIn: 1.65,
    pullForwardIn: 0.17,
  },
  {
    id: 'two-piece-six-m10-fine',
    name: 'Two-piece, six M10×1.25 on an 11.5 in bolt circle',
    circle: 'six',
    nut: 'M10x1.25-6H',
    holeIn: 0.433,
    plateIn: 0.12,
    castingIn: 0.355,
    tipRoomIn: 1.5,
    pullForwardIn: 0.15,
  },
  {
    id: 'two-piece-six-m12',
    name: 'Two-piece, six M12 on an 11.5 in bolt circle',
    circle: 'six',
    nut: 'M12x1.75-6H',
    holeIn: 0.531,
    plateIn: 0.16,
    castingIn: 0.435,
    tipRoomIn: 1.74,
    pullForwardIn: 0.18,
  },
];

/** Invented flexplate stacks, with the nuts that go on them. */
export const demoStacks: readonly DemoStack[] = [...ONE_PIECE, ...TWO_PIECE].map(made);

function made(stack: Made): DemoStack {
  const layer = (name: 'plate' | 'casting', thicknessIn: number, toleranceIn: number): Layer => ({
    name,
    kind: name,
    thicknessMm: inches(thicknessIn),
    toleranceMm: inches(toleranceIn),
    holeDiameterMm: inches(stack.holeIn),
    chamferMm: null,
  });
  const plate = layer('plate', stack.plateIn, 0.004);
  const two = stack.castingIn !== undefined;
  return {
    id: stack.id,
    entry: {
      name: stack.name,
      stack: {
        style: two ? 'two-piece' : 'one-piece',
        layers: stack.castingIn === undefined ? [plate] : [plate, layer('casting', stack.castingIn, 0.006)],
        ...CIRCLES[stack.circle],
        tipRoomMm: inches(stack.tipRoomIn),
        leastPullForwardMm: null,
        mostPullForwardMm: null,
      },
      nut: nutOf(stack.nut),
      nutThreadTyped: stack.nut,
      pullForwardMm: inches(stack.pullForwardIn),
      makerTorqueNm: null,
      makerTorqueSource: null,
      note: 'Invented for the demo. Measure the gap of the job in hand.',
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
    tensileMPa: us(130, 'stress'),
    countersinkMm: inches(0.004),
    washerMm: 0,
    prevailing: false,
  };
}
