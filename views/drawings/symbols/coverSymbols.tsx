import { arrowHead } from '../dimension.tsx';
import { Across, Sign, type SymbolDrawing, Upward, Word } from './symbolParts.tsx';

const OUTLINE = 'M16 96H300V140H314V78H282V56H238V78H76V60H16Z';

/** Half the section of a cover under the lock-up pressure. */
export const COVER: SymbolDrawing = {
  title: 'Half section of the cover, engine side up',
  names: [
    ['p', 'pressure on the cover'],
    ['t', 'wall'],
    ['t_s', 'side wall'],
    ['d', 'pad diameter'],
    ['r_i', 'inner radius of the friction surface'],
    ['r_o', 'outer radius of the friction surface'],
    ['r_stud', 'bolt circle radius'],
    ['R', 'rim radius'],
  ],
  height: 268,
  Draw: ({ hatch }) => (
    <>
      <path d={OUTLINE} fill={`url(#${hatch})`} />
      <path d={OUTLINE} class="thick" />
      <path d="M16 40V258" class="chain" />
      <path d="M260 36V160" class="chain" />
      <path d="M160 96H240" class="symbol-cut" />
      {[170, 190, 210, 230].map((x) => (
        <>
          <path d={`M${x} 128V104`} class="dim" />
          <path d={arrowHead(x, 98, 'up')} class="arrow" />
        </>
      ))}
      <Sign x={152} y={126} of="p" />
      <Upward x={120} top={78} bottom={96} of="t" outside />
      <Across a={300} b={314} y={152} of="" from={[142, 142]} outside />
      <Sign x={336} y={148} of="t_s" />
      <Across a={238} b={282} y={34} of="d" from={[54, 54]} />
      <Across a={16} b={160} y={172} of="r_i" from={[150, 100]} />
      <Across a={16} b={240} y={198} of="r_o" from={[176, 100]} />
      <Across a={16} b={260} y={224} of="r_stud" from={[202, 160]} />
      <Across a={16} b={314} y={250} of="R" from={[228, 158]} />
    </>
  ),
};

/** The wall as a slab, heated on one face. */
export const SLAB: SymbolDrawing = {
  title: 'The wall heated on its rubbed face',
  names: [
    ['q₀', 'heat into the face at the start of the slip'],
    ['L', 'thickness of the wall'],
    ['θ', 'rise of temperature, highest at the rubbed face'],
  ],
  height: 188,
  Draw: ({ hatch }) => (
    <>
      <path d="M130 24H240V150H130Z" fill={`url(#${hatch})`} />
      <path d="M130 24V150M240 24V150" class="thick" />
      <path d="M130 40C150 96 190 128 240 134" class="symbol-cut" />
      {[50, 88, 126].map((y) => (
        <>
          <path d={`M74 ${y}H120`} class="dim" />
          <path d={arrowHead(128, y, 'right')} class="arrow" />
        </>
      ))}
      <Sign x={60} y={93} of="q₀" to="end" />
      <Sign x={166} y={74} of="θ" />
      <Word x={124} y={18} to="end">
        rubbed face
      </Word>
      <Word x={246} y={18} to="">
        engine side
      </Word>
      <Across a={130} b={240} y={176} of="L" from={[152, 152]} />
    </>
  ),
};

/** What shims and metal taken off change round the converter. */
export const LENGTHS: SymbolDrawing = {
  title: 'The pad, the gap and the flexplate',
  names: [
    ['t', 'pad thickness'],
    ['x', 'metal removed from the pads'],
    ['s', 'shims under the pads'],
    ['g', 'pull-forward gap, converter fully back'],
  ],
  height: 172,
  Draw: ({ hatch }) => (
    <>
      <path d="M20 60H60V140H20Z" fill={`url(#${hatch})`} />
      <path d="M60 60H104V140H60Z" fill={`url(#${hatch})`} />
      <path d="M20 40V160M20 60H104V140H20M60 60V140" class="thick" />
      <path d="M96 60V140" class="symbol-cut" />
      <path d="M190 60H204V140H190Z" class="thick" />
      <path d="M204 30H240V160H204Z" fill={`url(#${hatch})`} />
      <path d="M204 30H240V160H204Z" class="thick" />
      <Word x={222} y={24}>
        flexplate
      </Word>
      <Word x={14} y={34} to="">
        cover
      </Word>
      <Across a={60} b={104} y={46} of="t" from={[58, 58]} />
      <Across a={96} b={104} y={162} of="x" from={[142, 142]} outside />
      <Across a={190} b={204} y={46} of="s" from={[58, 58]} outside />
      <Across a={104} b={190} y={100} of="g" />
    </>
  ),
};
