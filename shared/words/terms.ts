import type { EntryKind } from './catalogue.ts';

/**
 * The words for things that are no field: how screens, sheets, lists and answers call them, and what they are. Labels,
 * help and units of fields are in `fields/`; verdicts and decisions in `verdicts.ts`.
 */
export interface Term {
  /** As it stands in a sentence. */
  readonly word: string;
  readonly many?: string;
  /** What it is, for somebody who reads the word the first time. */
  readonly is: string;
}

export const TERMS = {
  coverType: {
    word: 'cover type',
    many: 'cover types',
    is: 'A kind of cover the shop has figures for: studs, bolt circle, friction surface, wall when new.',
  },
  frictionSurface: { word: 'friction surface', is: 'The band of the cover the clutch lining runs on.' },
  center: { word: 'center of the cover', is: 'The middle of the cover, which carries the crank pilot.' },
  crankPilot: { word: 'crank pilot', is: 'The round part at the center that enters the crank.' },
  pad: {
    word: 'pad',
    many: 'pads',
    is: 'Mounting pad: the raised seat around a stud that bears on the flexplate.',
  },
  wall: { word: 'wall', is: 'Metal thickness of the cover at one station.' },
  minimumWall: {
    word: 'minimum wall',
    is: 'The thinnest wall allowed. The least wall is the thinnest found.',
  },
  station: {
    word: 'station',
    many: 'stations',
    is: 'Check point: where a wall or an indicator reading is taken.',
  },
  row: { word: 'row', many: 'rows', is: 'Stations on one radius: an inner row and an outer row.' },
  angle: {
    word: 'angle from stud 1',
    is: 'Where on the cover, clockwise, seen looking at the friction surface. Stud 1 is at 0°.',
  },
  indicatorReading: { word: 'indicator reading', is: 'What the dial indicator shows at a station.' },
  heatMark: {
    word: 'heat mark',
    many: 'heat marks',
    is: 'Darkened metal. Its depth runs down to sound metal.',
  },
  indicatedIn: {
    word: 'indicated in, with shims',
    is: 'The cover trued in the lathe on shims under its pads.',
  },
  depthOfCut: { word: 'depth of cut', is: 'What the machinist sets, from the highest point of the face.' },
  pass: { word: 'pass', many: 'passes', is: 'Once over the face with the tool.' },
  cleanUp: { word: 'clean-up cut', is: 'The least cut that leaves no low spot and no heat mark.' },
  stiffeningRing: {
    word: 'stiffening ring',
    many: 'stiffening rings',
    is: 'A ring welded to the cover near its rim, so that it bends less.',
  },
  billet: { word: 'billet', is: 'Turned from one piece of bar, not pressed from sheet.' },
  verdict: { word: 'verdict', many: 'verdicts', is: 'What the program says of a cover, and why.' },
  decision: { word: 'decision', many: 'decisions', is: 'What a person signs.' },
  confidence: {
    word: 'confidence required',
    is: 'How sure it must be that no station is below the minimum wall.',
  },
  boltCircle: { word: 'bolt circle', is: 'The circle through the centers of the studs.' },
  studPilot: { word: 'stud pilot', many: 'stud pilots', is: 'The end of a stud without thread.' },
  lengthFromPad: { word: 'length from pad', is: 'From the face of the pad to the end of the stud.' },
  replacedStud: {
    word: 'replaced stud',
    many: 'replaced studs',
    is: 'A stud welded in where an old one was taken out.',
  },
  flexplateStack: {
    word: 'flexplate stack',
    many: 'flexplate stacks',
    is: 'What the studs pass through: flexplate, casting, shims, washer and nut.',
  },
  pullForwardGap: {
    word: 'pull-forward gap',
    is: 'Play between pads and flexplate with the converter fully back.',
  },
  impellerHub: { word: 'impeller hub', is: 'The hub on the pump side, which drives the pump.' },
  retorque: { word: 're-torque', is: 'The nuts tightened once more after the first heat cycle.' },
  shopLimits: { word: 'shop limits', is: 'The figures this shop judges by, and who set them.' },
  catalog: {
    word: 'catalog',
    is: 'The shop’s cover types, studs, flexplate stacks, nuts, washers, shims, gauges, steels, linings and lathes.',
  },
  gauge: { word: 'gauge', many: 'gauges', is: 'A micrometer, caliper or indicator with its calibration.' },
  backups: { word: 'backups', is: 'Copies of everything the shop has saved.' },
} as const satisfies Record<string, Term>;

/** What an entry of the catalog is called, one and many. */
export const ENTRY_WORD: Readonly<
  Record<Exclude<EntryKind, 'criteria' | 'checklist'>, { one: string; many: string }>
> = {
  family: { one: TERMS.coverType.word, many: 'Cover types' },
  stud: { one: 'stud', many: 'Studs' },
  stack: { one: TERMS.flexplateStack.word, many: 'Flexplate stacks' },
  nut: { one: 'nut', many: 'Nuts' },
  washer: { one: 'washer or shim', many: 'Washers and shims' },
  gauge: { one: TERMS.gauge.word, many: 'Gauges' },
  steel: { one: 'steel', many: 'Steels' },
  lining: { one: 'lining', many: 'Linings' },
  lathe: { one: 'lathe', many: 'Lathes' },
};

/** Kinds a person finds in the catalog: all but the shop limits. */
export type CatalogueKind = keyof typeof ENTRY_WORD;
export const CATALOGUE_KINDS = Object.keys(ENTRY_WORD) as readonly CatalogueKind[];

export function isCatalogueKind(kind: unknown): kind is CatalogueKind {
  return CATALOGUE_KINDS.some((one) => one === kind);
}
