import { type LengthUnit, lengthFigure, printLength } from '../../shared/words/print.ts';
import { Dimension, type Length, placeLengths, ROW } from './dimension.tsx';
import { Hatch } from './hatch.tsx';
import { at } from './lettering.ts';

export interface PullForwardPictureProps {
  readonly id: string;
  readonly bareGapMm: number;
  readonly shimMm: number;
  readonly stackMm: number | null;
  readonly hubEngagementMm: number | null;
  readonly unit: LengthUnit;
}

const WIDTH = 352;
const EDGE = 8;
const BODY = 74;
const PAD = 16;
const HALF = 58;
/** Where nothing was measured, something to draw. */
const HUB_MM = 15;
const STACK_MM = 5;

/** Converter fully back on the pump, and drawn forward to the flexplate: gap, shims, stack and hub to one scale. */
export function PullForwardPicture(props: PullForwardPictureProps) {
  const gapMm = props.bareGapMm - props.shimMm;
  return (
    <div class="views">
      <div class="view">
        <p class="view-caption">
          fully back on the pump <small>{props.unit}</small>
        </p>
        <View {...props} forwardMm={0} />
      </div>
      {gapMm > 0 && (
        <div class="view">
          <p class="view-caption">
            bolted up, drawn forward {lengthFigure(gapMm, props.unit, 'coarse')} <small>{props.unit}</small>
          </p>
          <View {...props} forwardMm={gapMm} />
        </div>
      )}
    </div>
  );
}

/** Where everything lies in one view, from the left: the pump, whose face stays; the hub in it; the converter; pads,
 * shims, gap, flexplate. */
function placesOf(props: PullForwardPictureProps, forwardMm: number) {
  const { bareGapMm, shimMm } = props;
  const gapMm = Math.max(0, bareGapMm - shimMm);
  const leftMm = Math.max(0, gapMm - forwardMm);
  const hubMm = props.hubEngagementMm ?? HUB_MM;
  const stackMm = props.stackMm ?? STACK_MM;
  const k = Math.min(9, (WIDTH - 2 * EDGE - BODY - PAD - 40) / (hubMm + gapMm + shimMm + stackMm));
  const pumpFace = EDGE + 20 + k * hubMm;
  const hubTip = EDGE + 20 + k * forwardMm;
  const body = pumpFace + 10 + k * forwardMm;
  const pad = body + BODY;
  const shim = pad + PAD;
  const gap = shim + k * shimMm;
  const plate = gap + k * leftMm;
  return { k, leftMm, pumpFace, hubTip, body, pad, shim, gap, plate, end: plate + k * stackMm };
}

function lengthsOf(
  { hubEngagementMm, shimMm, stackMm, unit }: PullForwardPictureProps,
  forwardMm: number,
  { leftMm, pumpFace, hubTip, shim, gap, plate, end }: ReturnType<typeof placesOf>,
): Length[] {
  const figure = (mm: number) => lengthFigure(mm, unit, 'coarse');
  const ends = { partFrom: HALF + 3, partTo: HALF + 3 };
  const hubLeftMm = (hubEngagementMm ?? 0) - forwardMm;
  const hub = { from: hubTip, to: pumpFace, figure: figure(hubLeftMm), word: 'hub in pump', ...ends };
  return [
    ...(hubEngagementMm === null ? [] : [{ ...hub, bad: hubLeftMm <= 0 }]),
    ...(shimMm > 0 ? [{ from: shim, to: gap, figure: figure(shimMm), word: 'shim', ...ends }] : []),
    ...(leftMm > 0 ? [{ from: gap, to: plate, figure: figure(leftMm), word: 'gap', ...ends }] : []),
    ...(stackMm === null
      ? []
      : [{ from: plate, to: end, figure: figure(stackMm), word: 'flexplate', ...ends }]),
  ];
}

function View(props: PullForwardPictureProps & { forwardMm: number }) {
  const { id, shimMm, forwardMm } = props;
  const own = `${id}-${forwardMm > 0 ? 'forward' : 'back'}`;
  const places = placesOf(props, forwardMm);
  const { k, pumpFace, hubTip, body, pad, shim, plate, end } = places;
  const placed = placeLengths(lengthsOf(props, forwardMm, places), 2, WIDTH - 2);
  const rows = Math.max(1, ...placed.map((length) => length.row + 1));
  const hub = { x: at(hubTip), y: -13, width: at(body - hubTip), height: 26 };
  const converter = { x: at(body), y: -HALF + 6, width: BODY, height: 2 * HALF - 12 };
  return (
    <svg
      viewBox={`0 ${-HALF - 8} ${WIDTH} ${2 * HALF + 20 + ROW * rows}`}
      class="stud-drawing"
      role="img"
      aria-labelledby={`${own}-title ${own}-desc`}
    >
      <title id={`${own}-title`}>
        {forwardMm > 0
          ? 'The converter drawn forward to the flexplate'
          : 'The converter fully back on the pump'}
      </title>
      <desc id={`${own}-desc`}>{inWords(props, forwardMm, places.leftMm)}</desc>
      <defs>
        <Hatch id={`${own}-hatch`} size={8} />
      </defs>
      <Block left={EDGE} right={pumpFace} top={-HALF} bottom={-16} fill={`url(#${own}-hatch)`} />
      <Block left={EDGE} right={pumpFace} top={16} bottom={HALF} fill={`url(#${own}-hatch)`} />
      <text x={EDGE + 8} y={-HALF + 18} class="label halo">
        pump
      </text>
      <rect {...hub} class="metal" />
      <rect {...hub} class="thick" />
      <rect {...converter} class="metal" />
      <rect {...converter} class="thick" />
      <text x={at(body + BODY / 2)} y={26} class="mid label halo-metal">
        converter
      </text>
      {[-HALF + 10, HALF - 34].map((y) => (
        <>
          <rect x={at(pad)} y={y} width={PAD} height={24} class="thick" />
          {shimMm > 0 && <rect x={at(shim)} y={y} width={at(k * shimMm)} height={24} class="st-measured" />}
        </>
      ))}
      <Block left={plate} right={end} top={-HALF} bottom={HALF} fill={`url(#${own}-hatch)`} />
      <path d={`M${EDGE} 0H${at(end + 8)}`} class="chain" />
      {placed.map((length) => (
        <Dimension length={length} y={HALF + 22} away="down" />
      ))}
    </svg>
  );
}

function Block(props: { left: number; right: number; top: number; bottom: number; fill: string }) {
  const box = {
    x: at(props.left),
    y: at(props.top),
    width: at(props.right - props.left),
    height: at(props.bottom - props.top),
  };
  return (
    <>
      <rect {...box} fill={props.fill} />
      <rect {...box} class="thick" />
    </>
  );
}

function inWords(
  { shimMm, stackMm, hubEngagementMm, unit }: PullForwardPictureProps,
  forwardMm: number,
  leftMm: number,
): string {
  const mm = (x: number) => printLength(x, unit, 'coarse');
  return [
    forwardMm > 0
      ? 'Pads on the flexplate; no gap is left.'
      : leftMm > 0
        ? `Pads to flexplate ${mm(leftMm)}.`
        : 'No gap: the pads meet the flexplate before the converter is home.',
    shimMm > 0 ? `Shims ${mm(shimMm)} on every pad.` : 'No shims.',
    hubEngagementMm === null ? '' : `Hub in the pump ${mm(hubEngagementMm - forwardMm)}.`,
    stackMm === null ? '' : `Flexplate ${mm(stackMm)}.`,
  ]
    .filter((part) => part !== '')
    .join(' ');
}
