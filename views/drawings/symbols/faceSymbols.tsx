import { at } from '../lettering.ts';
import { Across, Sign, type SymbolDrawing, Upward, Word } from './symbolParts.tsx';

/** The face unrolled: what stands highest, the deepest mark, and the plane the tool cuts to. */
export const FACE: SymbolDrawing = {
  title: 'The friction surface unrolled, clutch side up',
  names: [
    ['z', 'indicator reading, + where the face stands proud'],
    ['d', 'depth of the heat mark'],
    ['ε', 'clean-up allowance below the deepest mark'],
    ['c', 'height of the tool plane, from where the indicator shows zero'],
    ['k', 'depth of cut, from the highest point'],
    ['t', 'wall'],
  ],
  height: 214,
  Draw: ({ hatch }) => (
    <>
      <path d="M20 60C70 40 100 38 130 50S190 76 230 74S300 52 332 56V180H20Z" fill={`url(#${hatch})`} />
      <path d="M20 60C70 40 100 38 130 50S190 76 230 74S300 52 332 56" class="thick" />
      <path d="M20 180H332" class="thick" />
      <path d="M214 75C218 96 222 104 228 104S238 96 242 73" class="symbol-mark" />
      <path d="M6 66H346" class="thin dash" />
      <path d="M6 116H346" class="symbol-cut" />
      <Word x={346} y={204} to="end">
        engine side
      </Word>
      <Word x={8} y={132} to="">
        tool plane
      </Word>
      <Upward x={98} top={43} bottom={66} of="z" outside />
      <Upward x={228} top={74} bottom={104} of="d" from={[252, 252]} />
      <Upward x={278} top={104} bottom={116} of="ε" from={[230, 230]} outside />
      <Upward x={318} top={66} bottom={116} of="c" />
      <Upward x={56} top={43} bottom={116} of="k" from={[98, 98]} />
      <Upward x={160} top={63} bottom={180} of="t" />
    </>
  ),
};

/** A tilted plane between two that hold every point. */
export const PLANE: SymbolDrawing = {
  title: 'The readings across the face, tilt drawn large',
  names: [
    ['z', 'indicator reading at a station'],
    ['h', 'width of the zone that holds every reading'],
    ['D', 'friction surface outer diameter'],
    ['T', 'tilt of the plane over D'],
  ],
  height: 196,
  Draw: () => (
    <>
      <path d="M30 130L300 60" class="thick" />
      <path d="M30 146L300 76M30 114L300 44" class="thin dash" />
      {[
        [48, 112],
        [92, 128],
        [140, 90],
        [186, 104],
        [236, 66],
        [284, 74],
      ].map(([x, y]) => (
        <circle cx={x} cy={y} r="3.4" class="symbol-dot" />
      ))}
      <path d="M20 160H344" class="thin chain" />
      <Upward x={186} top={104} bottom={160} of="z" />
      <Upward x={310} top={44} bottom={76} of="" from={[302, 302]} />
      <Sign x={322} y={40} of="h" />
      <Upward x={334} top={60} bottom={130} of="" from={[302, 32]} />
      <Sign x={344} y={112} of="T" />
      <Across a={30} b={300} y={182} of="D" from={[150, 64]} />
    </>
  ),
};

/** The face seen from the clutch side: where a station lies. */
export const ROUND: SymbolDrawing = {
  title: 'The face from the clutch side, stud 1 at the top',
  names: [
    ['θ', 'angle clockwise from stud 1'],
    ['r', 'radius of the station from the crank axis'],
    ['x', 'distance toward stud 1'],
    ['y', 'distance across'],
    ['r_i', 'inner radius of the friction surface'],
    ['r_o', 'outer radius of the friction surface'],
    ['w', 'width of the friction surface'],
  ],
  height: 316,
  Draw: () => {
    const [cx, cy] = [150, 156];
    const station = { x: cx + 98 * Math.sin(0.87), y: cy - 98 * Math.cos(0.87) };
    return (
      <>
        <circle cx={cx} cy={cy} r="116" class="thick" />
        <circle cx={cx} cy={cy} r="78" class="thick" />
        <circle cx={cx} cy={cy} r="134" class="chain" />
        <path d={`M${cx} 8V${cy + 142}M6 ${cy}H${cx + 144}`} class="chain" />
        {[0, 1, 2, 3].map((i) => (
          <circle
            cx={at(cx + 134 * Math.sin((Math.PI / 2) * i))}
            cy={at(cy - 134 * Math.cos((Math.PI / 2) * i))}
            r="7"
            class="stud-body"
          />
        ))}
        <Word x={cx + 14} y={20} to="">
          stud 1
        </Word>
        <path d={`M${cx} ${cy}L${at(station.x)} ${at(station.y)}`} class="dim" />
        <path d={`M${at(station.x)} ${cy}V${at(station.y)}H${cx}`} class="thin dash" />
        <circle cx={at(station.x)} cy={at(station.y)} r="4" class="symbol-dot" />
        <path
          d={`M${cx} ${cy - 40}A40 40 0 0 1 ${at(cx + 40 * Math.sin(0.87))} ${at(cy - 40 * Math.cos(0.87))}`}
          class="dim"
        />
        <Sign x={cx + 20} y={cy - 46} of="θ" />
        <Sign x={cx + 62} y={cy - 34} of="r" />
        <Sign x={cx - 10} y={(cy + station.y) / 2} of="x" />
        <Sign x={(cx + station.x) / 2} y={cy + 16} of="y" />
        <Across a={cx - 78} b={cx} y={cy + 44} of="r_i" />
        <Across a={cx} b={cx + 116} y={302} of="r_o" from={[cy + 2, cy + 2]} />
        <Across a={cx + 78} b={cx + 116} y={cy + 34} of="w" from={[cy + 2, cy + 2]} outside />
      </>
    );
  },
};

/** The tool on the face. */
export const FACING: SymbolDrawing = {
  title: 'Facing the friction surface',
  names: [
    ['N', 'spindle speed'],
    ['D', 'diameter where the tool cuts'],
    ['V', 'cutting speed there'],
    ['f', 'feed in each turn'],
    ['r_i', 'inner radius of the friction surface'],
    ['r_o', 'outer radius of the friction surface'],
  ],
  height: 210,
  Draw: ({ hatch }) => (
    <>
      <path d="M20 84H300V70H20Z" fill={`url(#${hatch})`} />
      <path d="M20 84H300V70H20Z" class="thick" />
      <path d="M20 30V196" class="chain" />
      <path d="M170 70H270" class="symbol-cut" />
      <path d="M244 70l9 -34h-18z" class="stud-body" />
      <path d="M252 22H284" class="dim" />
      <path d="M284 22l-8 -2.6v5.2Z" class="arrow" />
      <Sign x={268} y={16} of="f" />
      <path d="M38 46A20 9 0 1 1 38 58" class="dim" />
      <path d="M38 58l8 -1.4l-4 5Z" class="arrow" />
      <Sign x={56} y={40} of="N" />
      <Sign x={222} y={60} of="V" to="end" />
      <Across a={20} b={170} y={116} of="r_i" from={[88, 88]} />
      <Across a={20} b={270} y={146} of="r_o" from={[120, 88]} />
      <path d="M244 90V189M12 182H244" class="extension" />
      <path d="M12 182H244" class="dim" />
      <path d="M244 182l-8 -2.6v5.2Z" class="arrow" />
      <Sign x={128} y={177} of="D" />
    </>
  ),
};

/** What a round nose leaves between two turns. */
export const SCALLOPS: SymbolDrawing = {
  title: 'What a round nose leaves, drawn large',
  names: [
    ['f', 'feed in each turn'],
    ['r', 'nose radius of the tool'],
    ['Rt', 'height from crest to root'],
  ],
  height: 172,
  Draw: ({ hatch }) => (
    <>
      <path
        d="M16 100A70 70 0 0 0 112 100A70 70 0 0 0 208 100A70 70 0 0 0 304 100V150H16Z"
        fill={`url(#${hatch})`}
      />
      <path d="M16 100A70 70 0 0 0 112 100A70 70 0 0 0 208 100A70 70 0 0 0 304 100" class="thick" />
      <circle cx="160" cy="49" r="70" class="thin dash" />
      <path d="M160 49L209.5 98.5" class="dim" />
      <path d="M209.5 98.5l-7.5 -3.8l3.7 -3.7Z" class="arrow" />
      <Sign x={194} y={72} of="r" />
      <Across a={64} b={160} y={164} of="f" from={[121, 121]} />
      <Upward x={326} top={100} bottom={119} of="Rt" from={[306, 258]} outside />
    </>
  ),
};

/** How sure: readings scatter round what was measured, and the limit cuts some off. */
export const SURE: SymbolDrawing = {
  title: 'Where the true wall may be',
  names: [
    ['m', 'margin: the wall less the minimum'],
    ['u', 'standard uncertainty of the wall'],
    ['P', 'share of the curve at or above the minimum'],
  ],
  height: 190,
  Draw: ({ hatch }) => {
    const curve = Array.from({ length: 61 }, (_, i) => {
      const s = -3 + i / 10;
      return [200 + 44 * s, 146 - 112 * Math.exp((-s * s) / 2)] as const;
    });
    const path = curve.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${at(x)} ${at(y)}`).join('');
    const above = curve.filter(([x]) => x >= 112);
    return (
      <>
        <path
          d={`${above.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${at(x)} ${at(y)}`).join('')}V146H${at(above[0]![0])}Z`}
          fill={`url(#${hatch})`}
        />
        <path d={path} class="thick" />
        <path d="M30 146H346" class="thin" />
        <path d="M112 20V176" class="symbol-limit" />
        <path d="M200 26V176" class="chain" />
        <Word x={106} y={30} to="end">
          minimum
        </Word>
        <Word x={346} y={162} to="end">
          wall
        </Word>
        <Across a={112} b={200} y={170} of="m" />
        <Across a={200} b={244} y={78} of="u" />
        <Sign x={172} y={126} of="P" />
      </>
    );
  },
};
