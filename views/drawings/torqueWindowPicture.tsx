import { FORCE, type LengthUnit, printAs, printNumber, printTorque } from '../../shared/words/print.ts';
import { Hatch } from './hatch.tsx';
import { at, LETTER, spread, textWidth } from './lettering.ts';

export interface TorqueWindowProps {
  readonly id: string;
  readonly torqueNm: number;
  readonly enoughNm: number | null;
  readonly mostNm: number | null;
  readonly preloadN: { readonly nominal: number; readonly least: number | null; readonly most: number };
  readonly lossN: number | null;
  readonly proofShare: number | null;
  /** Preload each stud must keep for the joint to hold. */
  readonly neededN: number;
  readonly unit: LengthUnit;
}

const WIDTH = 352;
const LEFT = 10;
const RIGHT = WIDTH - 10;
const HALF = 20;
const ABOVE = 48;
const ROW = 20;
const MOST_OF_PROOF = 0.75;

/** The torque between enough and too much, and beside it what that torque leaves as preload. */
export function TorqueWindow(props: TorqueWindowProps) {
  return (
    <div class="views">
      <div class="view">
        <p class="view-caption">
          torque <small>{props.unit === 'in' ? 'lb·ft' : 'N·m'}</small>
        </p>
        <Torque {...props} />
      </div>
      <div class="view">
        <p class="view-caption">
          preload of each stud <small>{FORCE[props.unit].unit}</small>
        </p>
        <Preload {...props} />
      </div>
    </div>
  );
}

interface Zone {
  readonly from: number;
  readonly to: number;
  readonly word: string;
  readonly bad: boolean;
}

/** What happens along the scale of torque; pieces without width are left out. */
function zonesOf(enough: number | null, most: number | null, start: number, end: number): Zone[] {
  const holdsFrom = enough ?? start;
  const tooMuchFrom = most ?? end;
  const crossed = holdsFrom > tooMuchFrom;
  return [
    { from: start, to: Math.min(holdsFrom, tooMuchFrom), word: 'slips', bad: true },
    {
      from: Math.min(holdsFrom, tooMuchFrom),
      to: Math.max(holdsFrom, tooMuchFrom),
      word: crossed ? 'slips, and too much' : enough === null ? 'not known' : 'holds',
      bad: crossed,
    },
    { from: Math.max(holdsFrom, tooMuchFrom), to: end, word: 'too much', bad: true },
  ].filter((zone) => zone.to - zone.from > (end - start) / 1000);
}

function Torque({ id, torqueNm, enoughNm, mostNm, unit }: TorqueWindowProps) {
  // The scale begins and ends a little outside what matters, so that a narrow window is still seen.
  const known = [torqueNm, ...[enoughNm, mostNm].filter((value) => value !== null)];
  const [least, greatest] = [Math.min(...known), Math.max(...known)];
  const spare = 0.7 * Math.max(greatest - least, 0.1 * greatest);
  const [start, end] = [Math.max(0, least - spare), greatest + spare];
  const x = (Nm: number) => LEFT + ((RIGHT - LEFT) * (Nm - start)) / (end - start);
  const own = `${id}-torque`;
  const figure = (Nm: number) => printTorque(Nm, unit, 1);
  const limits = [
    ...(enoughNm === null ? [] : [{ value: enoughNm, says: `enough from ${figure(enoughNm)}` }]),
    ...(mostNm === null ? [] : [{ value: mostNm, says: `too much above ${figure(mostNm)}` }]),
  ];
  const zones = zonesOf(enoughNm, mostNm, start, end);
  return (
    <svg
      viewBox={`0 ${-HALF - ABOVE} ${WIDTH} ${2 * HALF + ABOVE + 14 + ROW * limits.length}`}
      class="stud-drawing"
      role="img"
      aria-labelledby={`${own}-title ${own}-desc`}
    >
      <title id={`${own}-title`}>The torque between enough and too much</title>
      <desc id={`${own}-desc`}>
        {`The torque is ${figure(torqueNm)}. ${limits.map((one) => `It is ${one.says}.`).join(' ')}`}
      </desc>
      <defs>
        <Hatch id={`${own}-hatch`} size={8} />
      </defs>
      {zones.map(({ from, to, bad }) => (
        <rect
          x={at(x(from))}
          y={-HALF}
          width={at(x(to) - x(from))}
          height={2 * HALF}
          class={bad ? undefined : 'metal'}
          fill={bad ? `url(#${own}-hatch)` : undefined}
        />
      ))}
      <Frame />
      <Limits limits={limits.map(({ value, says }) => ({ x: x(value), says }))} />
      <Pointer x={x(torqueNm)} figure={figure(torqueNm)} />
      {zones
        .filter(({ from, to, word }) => textWidth(word, LETTER) + 8 <= x(to) - x(from))
        .map(({ from, to, word, bad }) => (
          <text x={at((x(from) + x(to)) / 2)} y={5} class={`mid ${bad ? 'label halo' : 'strong halo-metal'}`}>
            {word}
          </text>
        ))}
    </svg>
  );
}

function Preload({ id, preloadN, lossN, proofShare, neededN, unit }: TorqueWindowProps) {
  const { nominal, least, most } = preloadN;
  const allowed = proofShare === null ? null : (MOST_OF_PROOF * most) / proofShare;
  const end = 1.08 * Math.max(most, neededN, allowed ?? 0);
  const x = (N: number) => LEFT + ((RIGHT - LEFT) * N) / end;
  const own = `${id}-preload`;
  const force = FORCE[unit];
  const load = (N: number) => printNumber(N * force.per, force.decimals);
  const said = (N: number) => printAs(N, force);
  const left = least ?? Math.max(0, 2 * nominal - most);
  const limits = [
    { value: neededN, says: `needed to hold ${load(neededN)}` },
    ...(allowed === null ? [] : [{ value: allowed, says: `75 % of proof ${load(allowed)}` }]),
  ];
  const figures = [
    { value: left, text: load(left), word: least === null ? 'low' : 'least' },
    { value: nominal, text: load(nominal), word: 'tightened' },
    { value: most, text: load(most), word: 'most' },
  ];
  return (
    <svg
      viewBox={`0 ${-HALF - ABOVE} ${WIDTH} ${2 * HALF + ABOVE + 14 + ROW * limits.length}`}
      class="stud-drawing"
      role="img"
      aria-labelledby={`${own}-title ${own}-desc`}
    >
      <title id={`${own}-title`}>Preload of each stud</title>
      <desc id={`${own}-desc`}>
        {`Tightened to ${said(nominal)}, at most ${said(most)}, ${
          lossN === null
            ? 'what is lost as it settles is not known'
            : `at least ${said(left)} once ${said(lossN)} is lost as it settles`
        }. ${limits.map((one) => `${one.says} ${force.unit}`).join('; ')}.`}
      </desc>
      <rect
        x={at(x(left))}
        y={-HALF + 6}
        width={at(x(most) - x(left))}
        height={2 * HALF - 12}
        class="metal"
      />
      <path d={`M${at(x(left))} ${-HALF + 6}V${HALF - 6}H${at(x(most))}V${-HALF + 6}Z`} class="thick" />
      <path d={`M${at(x(nominal))} ${-HALF + 6}V${HALF - 6}`} class="thin" />
      <Frame />
      <Limits limits={limits.map(({ value, says }) => ({ x: x(value), says }))} />
      <Figures figures={figures.map((one) => ({ ...one, x: x(one.value) }))} />
    </svg>
  );
}

/** Figures above the bar, each with a leader to its place in it, and none over another. */
function Figures({
  figures,
}: {
  figures: readonly { readonly x: number; readonly text: string; readonly word: string }[];
}) {
  const places = spread(
    figures.map(({ x }) => x),
    62,
    LEFT + 18,
    RIGHT - 18,
  );
  return (
    <>
      {figures.map(({ x, text, word }, index) => {
        const place = places[index] ?? 0;
        return (
          <>
            <path d={`M${at(x)} ${-HALF + 6}V${-HALF - 6}L${at(place)} ${-HALF - 12}`} class="leader" />
            <text x={at(place)} y={-HALF - 29} class="dim-figure mid">
              {text}
            </text>
            <text x={at(place)} y={-HALF - 15} class="label mid">
              {word}
            </text>
          </>
        );
      })}
    </>
  );
}

function Frame() {
  return <path d={`M${LEFT} ${HALF}H${RIGHT}`} class="thick" />;
}

/** Limits across the bar; the words of each on a line of their own below, so that no two meet. */
function Limits({ limits }: { limits: readonly { readonly x: number; readonly says: string }[] }) {
  const line = (row: number) => HALF + 18 + ROW * row;
  return (
    <>
      {limits.map(({ x }, row) => (
        <path d={`M${at(x)} ${-HALF - 4}V${at(line(row) - LETTER + 1)}`} class="limit" />
      ))}
      {limits.map(({ x, says }, row) => {
        const half = textWidth(says, LETTER) / 2 + 2;
        const place = Math.min(Math.max(x, half), WIDTH - half);
        return (
          <text x={at(place)} y={at(line(row))} class="mid strong halo">
            {says}
          </text>
        );
      })}
    </>
  );
}

function Pointer({ x, figure }: { x: number; figure: string }) {
  const half = textWidth(figure, 15) / 2 + 2;
  return (
    <>
      <path d={`M${at(x)} ${-HALF}l-6 -11h12Z`} class="arrow" />
      <path d={`M${at(x)} ${-HALF}V${HALF}`} class="scribe" />
      <text x={at(Math.min(Math.max(x, half), WIDTH - half))} y={-HALF - 18} class="dim-figure mid">
        {figure}
      </text>
    </>
  );
}
