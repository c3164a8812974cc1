import type { CoverCheck, CoverShape } from '../../shared/words/cover.ts';
import {
  type LengthUnit,
  lengthFigure,
  listInWords,
  printLength,
  printNumber,
} from '../../shared/words/print.ts';
import { arrowHead } from './dimension.tsx';
import { onPlan } from './facePlan.tsx';
import { at, LETTER } from './lettering.ts';

export interface TiltPlanProps {
  readonly id: string;
  readonly shape: CoverShape;
  readonly dialledIn: NonNullable<CoverCheck['dialledIn']>;
  readonly unit: LengthUnit;
}

const RIM = 96;
const PADS = 84;
const NAMES = 122;

/** How the cover is tilted when it is indicated in: the shim under each pad, and where the tool then cuts highest. */
export function TiltPlan({ id, shape, dialledIn, unit }: TiltPlanProps) {
  const { shimsMm, tiltDirectionDeg, tiltMm } = dialledIn;
  const pads = shimsMm.map((mm, index) => ({
    mm,
    angleDeg: (360 * index) / shape.studCount,
    name: index + 1,
  }));
  const most = Math.max(...shimsMm, 1e-9);
  const said = pads
    .filter(({ mm }) => mm >= 0.0005)
    .map(({ mm, name }) => `${printLength(mm, unit)} under stud ${name}`);
  return (
    <svg viewBox="-176 -150 352 300" class="tilt-plan" role="img" aria-labelledby={`${id}-title ${id}-desc`}>
      <title id={`${id}-title`}>Shims to indicate the cover in</title>
      <desc id={`${id}-desc`}>
        {`Shims: ${said.length === 0 ? 'none' : listInWords(said)}. They tilt the cover ${printLength(tiltMm, unit)} across the friction surface${tiltDirectionDeg === null ? '' : `, low side at ${printNumber(tiltDirectionDeg, 0)}°`}.`}
      </desc>
      <circle r={RIM} class="thick" />
      <circle r="30" class="thin" />
      <path d={`M${-RIM - 5} 0H${RIM + 5}M0 ${-RIM - 5}V${RIM + 5}`} class="chain" />
      {tiltDirectionDeg !== null && (
        <g transform={`rotate(${at(tiltDirectionDeg)})`}>
          <path d="M0 58V-58" class="cut-line" />
          <path d={arrowHead(0, -62, 'up')} class="tilt-arrow" />
        </g>
      )}
      {pads.map(({ mm, angleDeg, name }) => {
        const pad = onPlan(angleDeg, PADS);
        const label = onPlan(angleDeg, NAMES);
        const side = Math.abs(label.x) < 20 ? 'mid' : label.x > 0 ? '' : 'end';
        const x = Math.abs(label.x) < 20 ? label.x : Math.sign(label.x) * (RIM + 10);
        return (
          <>
            <circle cx={at(pad.x)} cy={at(pad.y)} r="9" class="st-missing" />
            {mm >= 0.0005 && (
              <circle cx={at(pad.x)} cy={at(pad.y)} r={at(9 * Math.sqrt(mm / most))} class="st-core" />
            )}
            <text x={at(x)} y={at(label.y - 2)} class={`${side} label`}>
              stud {name}
            </text>
            <text x={at(x)} y={at(label.y - 2 + LETTER + 2)} class={`${side} strong`}>
              {mm < 0.0005 ? 'no shim' : lengthFigure(mm, unit)}
            </text>
          </>
        );
      })}
    </svg>
  );
}
