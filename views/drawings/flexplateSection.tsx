import { arrowHead } from './dimension.tsx';
import { Hatch } from './hatch.tsx';
import { at, LETTER } from './lettering.ts';

export interface FlexplateSectionProps {
  readonly id: string;
  readonly style: 'one-piece' | 'two-piece';
}

const WIDTH = 352;
const PAD_SIDE = 120;
const PLATE = 24;
const CASTING = 84;
const HOLE = 20;
const CASTING_HALF = 78;
const PLATE_HALF = 104;
const NUT = 46;
/** Where the caliper's jaws reach: beside the hole, on metal at both faces. */
const JAW = 52;

/** A flexplate cut through one stud hole, and where the caliper goes. A sketch: nothing in it is to scale. */
export function FlexplateSection({ id, style }: FlexplateSectionProps) {
  const two = style === 'two-piece';
  const engineSide = PAD_SIDE + PLATE + (two ? CASTING : 0);
  const words = two
    ? 'A thin plate, and against its engine side a thick casting that the studs pass through; the nut sits on the casting. Put one jaw of the caliper on the face the pads come to, the other on the face the nut sits on. Measure plate and casting together.'
    : 'One thin plate; the nut sits straight on it. Put one jaw of the caliper on the face the pads come to, the other on the face the nut sits on.';
  return (
    <svg
      viewBox={`0 -128 ${WIDTH} 290`}
      class="stud-drawing"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>{`A ${two ? 'two' : 'one'}-piece flexplate at a stud hole`}</title>
      <desc id={`${id}-desc`}>{words}</desc>
      <defs>
        {[45, 135].map((turn) => (
          <Hatch id={`${id}-h${turn}`} size={8} turn={turn} />
        ))}
      </defs>
      <Slab id={`${id}-h45`} left={PAD_SIDE} width={PLATE} half={PLATE_HALF} />
      {two && <Slab id={`${id}-h135`} left={PAD_SIDE + PLATE} width={CASTING} half={CASTING_HALF} />}
      <path d={`M${engineSide} ${-HOLE - 14}h${NUT}V${HOLE + 14}h${-NUT}Z`} class="phantom" />
      <path d={`M20 0H${WIDTH - 20}`} class="chain" />
      <text x={PAD_SIDE - 10} y={-112} class="label end">
        pad side
      </text>
      <text x={engineSide + 10} y={-112} class="label">
        engine side
      </text>
      <text x={engineSide + NUT + 8} y={-10} class="label halo">
        nut
      </text>
      <Leader x={PAD_SIDE + PLATE / 2} y={-92} to={PAD_SIDE - 14} says="plate" />
      {two && <Leader x={PAD_SIDE + PLATE + CASTING / 2} y={-66} to={engineSide + 14} says="casting" />}
      <Caliper left={PAD_SIDE} right={engineSide} />
    </svg>
  );
}

function Slab({ id, left, width, half }: { id: string; left: number; width: number; half: number }) {
  return (
    <>
      {[-1, 1].map((side) => {
        const box = {
          x: left,
          y: side < 0 ? -half : HOLE,
          width,
          height: half - HOLE,
        };
        return (
          <>
            <rect {...box} class="metal" />
            <rect {...box} fill={`url(#${id})`} />
            <rect {...box} class="thick" />
          </>
        );
      })}
    </>
  );
}

function Leader({ x, y, to, says }: { x: number; y: number; to: number; says: string }) {
  const away = to < x;
  return (
    <>
      <circle cx={x} cy={y} r="2" class="arrow" />
      <path d={`M${x} ${y}H${to}`} class="leader" />
      <text x={at(away ? to - 4 : to + 4)} y={at(y + LETTER * 0.36)} class={`label ${away ? 'end' : ''}`}>
        {says}
      </text>
    </>
  );
}

/** Two jaws and the bar between them, and the one length to read. */
function Caliper({ left, right }: { left: number; right: number }) {
  const bar = 128;
  return (
    <>
      <path
        d={`M${left} ${JAW - 12}l-14 10V${bar}H${left}ZM${right} ${JAW - 12}l14 10V${bar}H${right}Z`}
        class="stud-body"
      />
      <path d={`M${left - 30} ${bar}H${right + 60}v22H${left - 30}Z`} class="stud-body" />
      <path d={`M${left} ${bar - 12}H${right}`} class="dim" />
      <path
        d={right - left > 40 ? arrowHead(left, bar - 12, 'left') + arrowHead(right, bar - 12, 'right') : ''}
        class="arrow"
      />
      <text x={right + 22} y={bar - 14} class="strong halo">
        measure this
      </text>
    </>
  );
}
