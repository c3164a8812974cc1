import { printDay } from '../../shared/words/day.ts';
import { briefLength, type LengthUnit } from '../../shared/words/print.ts';
import { at } from './lettering.ts';
import { roundScale } from './ticks.ts';

export interface CheckDrawn {
  readonly day: string;
  readonly offMm: number;
  readonly off: boolean;
}

export interface ChecksOverTimeProps {
  /** Oldest first; at least one. */
  readonly checks: readonly CheckDrawn[];
  /** Expanded uncertainty of the certificate. */
  readonly uncertaintyMm: number | null;
  readonly limitMm: number | null;
  /** The straight line of a drift, by its ends. */
  readonly drift: readonly { readonly day: string; readonly offMm: number }[];
  readonly unit: LengthUnit;
}

const WIDTH = 352;
const LEFT = 58;
const RIGHT = WIDTH - 14;
const TOP = 14;
const BOTTOM = 178;
const DAY_MS = 24 * 3600 * 1000;
const time = (day: string) => Date.parse(`${day}T00:00:00Z`) / DAY_MS;

/** What a gauge read on its master less the master’s size, over time, with its stated uncertainty and its limits. */
export function ChecksOverTime(props: ChecksOverTimeProps) {
  const { checks, uncertaintyMm, limitMm, drift, unit } = props;
  const days = [...checks, ...drift].map(({ day }) => time(day));
  const [first, last] = [Math.min(...days), Math.max(...days)];
  const x = (day: string) =>
    first === last
      ? (LEFT + RIGHT) / 2
      : LEFT + 10 + ((RIGHT - LEFT - 20) * (time(day) - first)) / (last - first);
  const most = Math.max(
    limitMm ?? 0,
    uncertaintyMm ?? 0,
    ...[...checks, ...drift].map(({ offMm }) => Math.abs(offMm)),
  );
  // What is left of two equal figures after a subtraction is nothing to draw a scale by.
  const reach = 1.1 * (most < 1e-6 ? 0.01 : most);
  const scale = roundScale(-reach, reach, unit, 4);
  const y = (mm: number) => BOTTOM - ((BOTTOM - TOP) * (mm - scale.leastMm)) / (scale.mostMm - scale.leastMm);
  const firstDay = printDay(checks[0]!.day);
  const lastDay = printDay(checks.at(-1)!.day);
  return (
    <svg
      viewBox={`0 0 ${WIDTH} 206`}
      class="stud-drawing"
      role="img"
      aria-labelledby="checks-title checks-desc"
    >
      <title id="checks-title">Checks on a master over time</title>
      <desc id="checks-desc">{inWords(props)}</desc>
      {uncertaintyMm !== null && (
        <rect
          x={LEFT}
          y={at(y(uncertaintyMm))}
          width={RIGHT - LEFT}
          height={at(y(-uncertaintyMm) - y(uncertaintyMm))}
          class="metal"
        />
      )}
      {scale.ticks.map(({ mm, text }) => (
        <>
          <path d={`M${LEFT - (text === null ? 3 : 6)} ${at(y(mm))}H${LEFT}`} class="thin" />
          {text !== null && (
            <text x={LEFT - 9} y={at(y(mm) + 4)} class="label end">
              {text}
            </text>
          )}
        </>
      ))}
      <path d={`M${LEFT} ${TOP}V${BOTTOM}`} class="thin" />
      <path d={`M${LEFT} ${at(y(0))}H${RIGHT}`} class="chain" />
      {limitMm !== null &&
        [limitMm, -limitMm].map((mm) => <path d={`M${LEFT} ${at(y(mm))}H${RIGHT}`} class="limit" />)}
      {drift.length === 2 && (
        <path
          d={`M${at(x(drift[0]!.day))} ${at(y(drift[0]!.offMm))}L${at(x(drift[1]!.day))} ${at(y(drift[1]!.offMm))}`}
          class="cut-line dash"
        />
      )}
      {checks.map((one) => (
        <Point x={x(one.day)} y={y(one.offMm)} off={one.off} />
      ))}
      <text x={LEFT} y={200} class="label">
        {firstDay}
      </text>
      {firstDay !== lastDay && (
        <text x={RIGHT} y={200} class="label end">
          {lastDay}
        </text>
      )}
    </svg>
  );
}

/** Within the limit a dot; past it a cross, so that color is not alone. */
function Point({ x, y, off }: { readonly x: number; readonly y: number; readonly off: boolean }) {
  if (!off) return <circle cx={at(x)} cy={at(y)} r={3.6} class="st-measured" />;
  return <path d={`M${at(x - 5)} ${at(y - 5)}l10 10m0 -10l-10 10`} class="st-ring" />;
}

function inWords({ checks, limitMm, uncertaintyMm, drift, unit }: ChecksOverTimeProps): string {
  const last = checks.at(-1)!;
  const off = checks.filter((one) => one.off).length;
  return [
    `${checks.length === 1 ? '1 check' : `${checks.length} checks`}; the last, on ${printDay(last.day)}, was ${briefLength(last.offMm, unit)} off.`,
    limitMm === null
      ? 'No limit is known.'
      : `The limits are ${briefLength(limitMm, unit)} either side; ${off} past them.`,
    uncertaintyMm === null
      ? ''
      : `The certificate’s uncertainty is ${briefLength(uncertaintyMm, unit)} either side.`,
    drift.length === 2 ? 'A dashed line shows the drift.' : '',
  ]
    .filter((part) => part !== '')
    .join(' ');
}
