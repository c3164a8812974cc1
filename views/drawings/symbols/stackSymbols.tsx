import { Across, Sign, type SymbolDrawing, Upward, Word } from './symbolParts.tsx';

/** A stud in its stack, the converter a gap away. */
export const STACK: SymbolDrawing = {
  title: 'A stud in its flexplate stack, lengths from the pad face',
  names: [
    ['g', 'pull-forward gap'],
    ['S', 'flexplate stack'],
    ['w', 'washer'],
    ['H', 'nut height'],
    ['P', 'pitch of the thread'],
    ['start', 'first full thread, from the pad face'],
    ['end', 'last full thread, from the pad face'],
    ['projection', 'length from pad'],
  ],
  height: 250,
  Draw: ({ hatch }) => (
    <>
      <path d="M8 62H44V138H8Z" fill={`url(#${hatch})`} />
      <path d="M8 62H44V138H8" class="thick" />
      <path d="M44 82H284L296 90V110L284 118H44Z" class="stud-body" />
      <path d="M62 85H262M62 115H262M262 82V118" class="thin" />
      {[86, 118].map((y) => (
        <path d={y === 86 ? 'M84 40H134V78H84Z' : 'M84 122H134V160H84Z'} fill={`url(#${hatch})`} />
      ))}
      <path d="M84 40H134V78H84ZM84 122H134V160H84Z" class="thick" />
      <path d="M134 60H144V78H134ZM134 122H144V140H134Z" class="thick" />
      <path d="M144 54H194V80H144ZM144 120H194V146H144Z" class="nut-outside" />
      <path d="M2 100H312" class="chain" />
      <Across a={44} b={84} y={28} of="g" from={[60, 38]} />
      <Across a={84} b={134} y={28} of="S" from={[38, 38]} />
      <Across a={134} b={144} y={28} of="w" from={[38, 58]} outside />
      <Across a={144} b={194} y={44 - 16} of="H" from={[52, 52]} />
      <Across a={226} b={238} y={66} of="P" from={[84, 84]} outside />
      <Across a={44} b={62} y={182} of="" from={[140, 118]} outside />
      <Sign x={84} y={187} of="start" to="" />
      <Across a={44} b={262} y={208} of="end" from={[186, 120]} />
      <Across a={44} b={296} y={234} of="projection" from={[212, 112]} />
    </>
  ),
};

/** The forces of the joint. */
export const JOINT: SymbolDrawing = {
  title: 'One stud of the joint, tightened',
  names: [
    ['T', 'tightening torque'],
    ['F', 'preload in the stud'],
    ['d', 'basic major diameter of the thread'],
    ['d_W', 'diameter the nut bears on'],
    ['d_h', 'hole under the nut'],
    ['r', 'bolt circle radius, to the crank axis'],
  ],
  height: 268,
  Draw: ({ hatch }) => (
    <>
      <path d="M16 108H126V148H16ZM166 108H276V148H166Z" fill={`url(#${hatch})`} />
      <path d="M16 108H126V148H16ZM166 108H276V148H166Z" class="thick" />
      <path d="M36 148H256V192H36Z" fill={`url(#${hatch})`} />
      <path d="M36 192V148H256V192" class="thick" />
      <path d="M130 192V60H162V192" class="stud-body" />
      <path d="M134 64V148M158 64V148" class="thin" />
      <path d="M102 76H190V108H102Z" class="nut-outside" />
      <path d="M130 76V60H162V76" class="thick" />
      <path d="M146 30V240" class="chain" />
      <path d="M118 46A30 10 0 1 0 174 46" class="dim" />
      <path d="M174 46l-8 0l4 6Z" class="arrow" />
      <Sign x={190} y={46} of="T" />
      <path d="M146 172V128" class="symbol-force" />
      <path d="M146 122l-4 10h8Z" class="arrow" />
      <Sign x={170} y={168} of="F" />
      <Across a={130} b={162} y={24} of="d" from={[58, 58]} />
      <Across a={102} b={190} y={100} of="d_W" />
      <Across a={126} b={166} y={212} of="d_h" from={[150, 150]} outside />
      <path d="M330 150V256" class="chain" />
      <Word x={330} y={144}>
        axis
      </Word>
      <Across a={146} b={330} y={248} of="r" />
    </>
  ),
};

/** A thread’s profile. */
export const THREAD: SymbolDrawing = {
  title: 'The profile of the thread, upper half',
  names: [
    ['P', 'pitch; n threads in each unit of length is 1/P'],
    ['d', 'major diameter'],
    ['d2', 'pitch diameter'],
    ['D1', 'minor diameter of the nut'],
  ],
  height: 236,
  Draw: ({ hatch }) => (
    <>
      <path
        d="M16 96L30 96L50 56L62 56L82 96L94 96L114 56L126 56L146 96L158 96L178 56L190 56L210 96L222 96V200H16Z"
        fill={`url(#${hatch})`}
      />
      <path
        d="M16 96L30 96L50 56L62 56L82 96L94 96L114 56L126 56L146 96L158 96L178 56L190 56L210 96L222 96"
        class="thick"
      />
      <path d="M6 200H346" class="chain" />
      <path d="M6 76H300" class="thin dash" />
      <Across a={56} b={120} y={30} of="P" from={[52, 52]} />
      <Word x={88} y={70}>
        60°
      </Word>
      <Half x={246} from={96} of="D1" edge={224} />
      <Half x={284} from={76} of="d2" edge={300} />
      <Half x={322} from={56} of="d" edge={192} />
      <Word x={346} y={220} to="end">
        axis of the stud
      </Word>
    </>
  ),
};

/** Half a diameter, from the axis up. */
function Half({ x, from, of, edge }: { x: number; from: number; of: string; edge: number }) {
  return <Upward x={x} top={from} bottom={200} of={of} from={[edge, x - 4]} />;
}
