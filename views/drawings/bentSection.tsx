import type { StiffnessAnswer } from '../../shared/words/bending/stiffness.ts';
import {
  type LengthUnit,
  lengthFigure,
  MM_PER_UNIT,
  printLength,
  printNumber,
  UNIT_WORD,
} from '../../shared/words/print.ts';
import { at, LETTER } from './lettering.ts';
import { lineAt, placeAmong } from './pressureBands.ts';

type Section = StiffnessAnswer['section'];

export interface BentCurve {
  /** `new wall`, `wall now`, `after the cut`, `with a ring`. */
  readonly label: string;
  readonly section: Section;
}

export interface BentSectionProps {
  /** Starts every id in the drawing; one per drawing on a page. */
  readonly id: string;
  /** Four at most; more have no line type of their own. */
  readonly curves: readonly BentCurve[];
  readonly trackInnerDiameterMm: number;
  readonly trackOuterDiameterMm: number;
  readonly bossDiameterMm: number;
  readonly rimDiameterMm: number;
  readonly studCircleDiameterMm: number;
  readonly unit: LengthUnit;
}

const WIDTH = 348;
const LEFT = 6;
const RIGHT = 342;
const ROOM = 104;
const HEAD = 22;
const FOOT = 12;

interface Panel {
  readonly title: string;
  readonly valuesOf: (section: Section) => readonly number[];
  readonly stud: boolean;
  /** The scale stands where no curve goes: low at the rim, which is held, or at the center, which moves as one. */
  readonly barAtRim: boolean;
}

const PANELS: readonly Panel[] = [
  { title: 'behind a stud', valuesOf: (section) => section.behindStudMm, stud: true, barAtRim: true },
  {
    title: 'midway between two studs',
    valuesOf: (section) => section.betweenStudsMm,
    stud: false,
    barAtRim: true,
  },
  {
    title: 'the difference',
    valuesOf: ({ behindStudMm, betweenStudsMm }) => betweenStudsMm.map((w, i) => w - behindStudMm[i]!),
    stud: false,
    barAtRim: false,
  },
];

/** The largest of 1, 2, 3, 5 × 10ⁿ that is no more than this. */
function roundDown(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  return ([5, 3, 2].find((step) => step * power <= value * (1 + 1e-9)) ?? 1) * power;
}

/** One panel where it stands, with the factor its deflections are drawn by. */
interface Placed extends Panel {
  readonly top: number;
  readonly zero: number;
  readonly times: number;
  readonly bottom: number;
  readonly barMm: number;
}

interface Scale {
  readonly k: number;
  readonly x: (radiusMm: number) => number;
}

function scaleOf({ bossDiameterMm, rimDiameterMm }: BentSectionProps): Scale {
  const [center, rim] = [bossDiameterMm / 2, rimDiameterMm / 2];
  const k = (RIGHT - LEFT) / (rim - center);
  return { k, x: (radiusMm) => LEFT + k * (radiusMm - center) };
}

/** One under the other; the first two share their scale. */
function placePanels({ curves, unit }: BentSectionProps, k: number): readonly Placed[] {
  const extent = (panels: readonly Panel[]) => {
    const all = panels.flatMap(({ valuesOf }) => curves.flatMap(({ section }) => valuesOf(section)));
    return { least: Math.min(0, ...all), most: Math.max(0, ...all) };
  };
  const both = extent(PANELS.slice(0, 2));
  let top = 0;
  return PANELS.map((panel) => {
    const { least, most } = panel === PANELS[2] ? extent([panel]) : both;
    const span = Math.max(most - least, 1e-9);
    const times = roundDown(ROOM / span / k);
    const zero = top + HEAD - times * k * least;
    const height = HEAD + times * k * span + FOOT;
    const barMm = roundDown((0.45 * ROOM) / (times * k) / MM_PER_UNIT[unit]) * MM_PER_UNIT[unit];
    const placed = { ...panel, top, zero, times, bottom: top + height, barMm };
    top += height + LETTER;
    return placed;
  });
}

/**
 * The section of the flat, bent, behind a stud and midway between two, and the difference of the two, which is what
 * the lining feels. Deflections are exaggerated, and it says how much. It brings its own figure, key and table.
 */
export function BentSection(props: BentSectionProps) {
  const { id, curves } = props;
  const scale = scaleOf(props);
  const panels = placePanels(props, scale.k);
  const words = curves.map((curve) => curveInWords(curve, props));
  return (
    <figure class="drawing bent-section">
      <svg
        viewBox={`0 0 ${WIDTH} ${at(panels.at(-1)!.bottom + 4)}`}
        class="bent"
        role="img"
        aria-labelledby={`${id}-title ${id}-desc`}
      >
        <title id={`${id}-title`}>Section of the cover, bent by the pressure; deflections exaggerated</title>
        <desc id={`${id}-desc`}>{words.map(({ sentence }) => sentence).join(' ')}</desc>
        {panels.map((panel) => (
          <BentPanel panel={panel} scale={scale} {...props} />
        ))}
      </svg>
      <BentKey curves={curves} />
      <figcaption>
        The middle of the wall from the center of the cover (left) to the rim (right), clutch side up; the
        thin line is the cover without pressure. Down is toward the engine.
      </figcaption>
      <BentFigures rows={words} unit={props.unit} />
    </figure>
  );
}

function BentPanel({ panel, scale: { k, x }, ...props }: BentSectionProps & { panel: Placed; scale: Scale }) {
  const { top, bottom, zero, times, barMm } = panel;
  const y = (w: number) => zero + times * k * w;
  return (
    <g>
      <rect
        x={at(x(props.trackInnerDiameterMm / 2))}
        y={at(top + HEAD - 4)}
        width={at(k * (props.trackOuterDiameterMm - props.trackInnerDiameterMm) * 0.5)}
        height={at(bottom - top - HEAD)}
        class="metal"
      />
      {panel.stud && (
        <path
          d={`M${at(x(props.studCircleDiameterMm / 2))} ${at(top + HEAD - 4)}V${at(bottom - FOOT - times * k * barMm - 6)}`}
          class="chain"
        />
      )}
      <path d={`M${LEFT} ${at(zero)}H${RIGHT}`} class="thin" />
      {props.curves.map(({ section }, index) => (
        <path
          d={curvePath(section.radiiMm, panel.valuesOf(section), x, y)}
          class={`bent-${Math.min(index, 3)}`}
        />
      ))}
      <text x={LEFT} y={at(top + LETTER)} class="strong">
        {panel.title}
      </text>
      <text x={RIGHT} y={at(top + LETTER)} class="end label">
        exaggerated {printNumber(times, times < 10 ? 1 : 0)} times
      </text>
      <ScaleBar
        atRim={panel.barAtRim}
        bottom={bottom - FOOT}
        height={times * k * barMm}
        figure={smallLength(barMm, props.unit)}
      />
    </g>
  );
}

function BentKey({ curves }: Pick<BentSectionProps, 'curves'>) {
  return (
    <ul class="plan-key bent-key">
      {curves.map(({ label }, index) => (
        <li>
          <svg viewBox="0 0 46 14" width="46" height="14" aria-hidden="true">
            <path d="M1 7H45" class={`bent-${Math.min(index, 3)}`} />
          </svg>
          {label}
        </li>
      ))}
      <li>
        <svg viewBox="0 0 22 14" width="22" height="14" aria-hidden="true">
          <rect width="22" height="14" class="metal" />
        </svg>
        friction surface
      </li>
    </ul>
  );
}

function BentFigures({ rows, unit }: { rows: readonly ReturnType<typeof curveInWords>[]; unit: LengthUnit }) {
  return (
    <div class="table-box" tabindex={0}>
      <table class="figures">
        <caption>
          How far the center of the cover and the middle of the friction surface move toward the engine, in{' '}
          {UNIT_WORD[unit]}
        </caption>
        <thead>
          <tr>
            <th scope="col">cover</th>
            <th scope="col">center</th>
            <th scope="col">behind a stud</th>
            <th scope="col">midway</th>
            <th scope="col">difference</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr>
              <th scope="row">{row.label}</th>
              <td>{lengthFigure(row.centerMm, unit)}</td>
              <td>{lengthFigure(row.behindMm, unit)}</td>
              <td>{lengthFigure(row.midwayMm, unit)}</td>
              <td>{smallLength(row.midwayMm - row.behindMm, unit)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function curvePath(
  radiiMm: readonly number[],
  values: readonly number[],
  x: (radius: number) => number,
  y: (w: number) => number,
): string {
  return `M${radiiMm.map((radius, i) => `${at(x(radius))} ${at(y(values[i]!))}`).join(' ')}`;
}

/** A length along the exaggerated direction. */
function ScaleBar(props: { atRim: boolean; bottom: number; height: number; figure: string }) {
  const { atRim, bottom, height, figure } = props;
  const [x, tick] = atRim ? [RIGHT - 4, -8] : [LEFT + 4, 8];
  return (
    <>
      <path d={`M${x + tick} ${at(bottom)}h${-tick}v${at(-height)}h${tick}`} class="dim" />
      <text
        x={at(x + 1.5 * tick)}
        y={at(bottom - height / 2 + LETTER * 0.36)}
        class={atRim ? 'end label halo' : 'label halo'}
      >
        {figure}
      </text>
    </>
  );
}

/** `11.9 µm` or `0.5 mm`; `0.0005 in`. */
function smallLength(mm: number, unit: LengthUnit): string {
  const [value, decimals, name] =
    unit === 'in'
      ? [mm / MM_PER_UNIT.in, 5, 'in']
      : Math.abs(mm) < 0.1
        ? [1000 * mm, 1, 'µm']
        : [mm, 3, 'mm'];
  return `${printNumber(value, decimals).replace(/\.?0+$/, '')} ${name}`;
}

function curveInWords({ label, section }: BentCurve, props: BentSectionProps) {
  const middle = placeAmong(section.radiiMm, (props.trackInnerDiameterMm + props.trackOuterDiameterMm) / 4);
  const row = {
    label,
    centerMm: section.behindStudMm[0]!,
    behindMm: lineAt(section.behindStudMm, middle),
    midwayMm: lineAt(section.betweenStudsMm, middle),
  };
  return {
    ...row,
    sentence: `${label}: the center moves ${printLength(row.centerMm, props.unit)} toward the engine, the middle of the friction surface ${printLength(row.behindMm, props.unit)} behind a stud and ${printLength(row.midwayMm, props.unit)} midway between two.`,
  };
}
