import { printRequired } from '../../shared/words/cut.ts';
import type { GaugeReading } from '../../shared/words/gauges/gaugeReading.ts';
import { briefLength, type LengthUnit } from '../../shared/words/print.ts';
import { LETTERED_WIDTH as WIDTH } from './letteredDimension.tsx';
import { at, fitText, LETTER, textWidth } from './lettering.ts';

export interface GaugeBarsProps {
  readonly id: string;
  readonly reading: GaugeReading;
  readonly unit: LengthUnit;
}

interface Bar {
  readonly says: string;
  readonly mm: number | null;
  readonly look: 'room' | 'unsure' | 'part';
  readonly either?: boolean;
}

const ROW = 46;
const HIGH = 14;
/** Never so thin that it is not seen. */
const THINNEST = 1.5;
const BETWEEN = 28;

/** How far one reading is to be trusted, to one scale with what it is used for; below, enlarged, what that is made of. */
export function GaugeBars({ id, reading, unit }: GaugeBarsProps) {
  const { room, sureMm, parts } = reading;
  const above: Bar[] = [
    ...(room === null ? [] : [{ says: room.says, mm: room.mm, look: 'room' as const }]),
    { says: sureInWords(reading), mm: sureMm, look: 'unsure', either: reading.way === 'either' },
  ];
  const below = Object.entries(PART_WORDS).map(([part, says]): Bar => {
    return { says, mm: parts[part as keyof typeof parts], look: 'part' };
  });
  const split = above.length * ROW + BETWEEN;
  return (
    <svg
      viewBox={`0 -10 ${WIDTH} ${at(split + below.length * ROW + 10)}`}
      class="stud-drawing gauge-bars"
      role="img"
      aria-labelledby={`${id}-title ${id}-desc`}
    >
      <title id={`${id}-title`}>How sure one reading is, as typed</title>
      <desc id={`${id}-desc`}>
        {[...above, ...below].map((bar) => `${barInWords(bar, unit)}.`).join(' ')}
      </desc>
      <Bars bars={above} top={0} unit={unit} />
      <text x="1" y={at(split - 12)} class="label">
        made of these standard uncertainties, enlarged:
      </text>
      <Bars bars={below} top={split} unit={unit} />
    </svg>
  );
}

function Bars({ bars, top, unit }: { bars: readonly Bar[]; top: number; unit: LengthUnit }) {
  const most = Math.max(...bars.map(({ mm }) => mm ?? 0));
  return (
    <>
      {bars.map((bar, row) => {
        const y = top + ROW * row;
        const figure = figureOf(bar, unit);
        const width = bar.mm === null || most === 0 ? 0 : Math.max(THINNEST, ((WIDTH - 2) * bar.mm) / most);
        return (
          <>
            <text x="1" y={at(y + LETTER)} class="label">
              {fitText(bar.says, LETTER, WIDTH - textWidth(figure, LETTER + 2) - 12)}
            </text>
            <text x={WIDTH - 1} y={at(y + LETTER)} class="dim-figure end">
              {figure}
            </text>
            <rect x="1" y={at(y + LETTER + 7)} width={at(width)} height={HIGH} class={`bar-${bar.look}`} />
          </>
        );
      })}
    </>
  );
}

const PART_WORDS: Readonly<Record<keyof GaugeReading['parts'], string>> = {
  calibration: 'calibration, U / k',
  resolution: 'resolution / √12',
  repeatability: 'repeatability',
};

function sureInWords({ way, confidence }: GaugeReading): string {
  const sure = `${printRequired(confidence)} sure`;
  return way === 'above' ? `held back from the minimum to be ${sure}` : `one reading, ${sure}`;
}

function figureOf({ mm, either = false }: Bar, unit: LengthUnit): string {
  if (mm === null) return 'not entered';
  return `${either ? '± ' : ''}${briefLength(mm, unit)}`;
}

function barInWords(bar: Bar, unit: LengthUnit): string {
  return `${bar.says}: ${figureOf(bar, unit)}`;
}
