import type { LengthUnit } from '../../shared/words/print.ts';
import { at } from './lettering.ts';
import { roundScale } from './ticks.ts';

export interface ReadingsByPersonProps {
  /** Readings by station, then person [mm]. */
  readonly stations: readonly {
    readonly label: string;
    readonly byPerson: readonly (readonly number[])[];
  }[];
  readonly people: readonly string[];
  readonly unit: LengthUnit;
}

const WIDTH = 352;
const LEFT = 52;
const RIGHT = WIDTH - 8;
const TOP = 12;
const BOTTOM = 196;
const KEY = 232;
/** Numbers of covers closer than this would touch. */
const ROOM = 22;

/** Every reading of a study: a column a station, each person with a sign and a place of their own in it. */
export function ReadingsByPerson({ stations, people, unit }: ReadingsByPersonProps) {
  const all = stations.flatMap(({ byPerson }) => byPerson.flat());
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const room = Math.max(0.05 * (most - least), 1e-4);
  const scale = roundScale(least - room, most + room, unit, 4);
  const y = (mm: number) => BOTTOM - ((BOTTOM - TOP) * (mm - scale.leastMm)) / (scale.mostMm - scale.leastMm);
  const column = (RIGHT - LEFT) / stations.length;
  const middle = (i: number) => LEFT + column * (i + 0.5);
  const offset = (person: number) =>
    (person - (people.length - 1) / 2) * Math.min(7, column / (people.length + 1));
  const every = Math.ceil(ROOM / column);
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${KEY + 18 * Math.ceil(people.length / 3)}`}
      class="stud-drawing"
      role="img"
      aria-labelledby="by-person-title by-person-desc"
    >
      <title id="by-person-title">Every reading, by cover and person</title>
      <desc id="by-person-desc">
        {stations.length} columns of readings; each person has a sign of their own. The figures are in the
        table of readings as CSV.
      </desc>
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
      <path d={`M${LEFT} ${TOP}V${BOTTOM}H${RIGHT}`} class="thin" />
      {stations.map(({ label, byPerson }, i) => (
        <>
          {i > 0 && <path d={`M${at(LEFT + column * i)} ${TOP}V${BOTTOM}`} class="thin faint-line" />}
          {i % every === 0 && (
            <text x={at(middle(i))} y={BOTTOM + 16} class="label mid">
              {label}
            </text>
          )}
          {byPerson.map((readings, person) =>
            readings.map((mm) => <PersonSign sign={person} x={middle(i) + offset(person)} y={y(mm)} />),
          )}
        </>
      ))}
      {people.map((name, person) => {
        const x = LEFT + (person % 3) * 96;
        const below = KEY + 18 * Math.floor(person / 3);
        return (
          <>
            <PersonSign sign={person} x={x + 5} y={below - 4} />
            <text x={x + 15} y={below} class="label">
              {name}
            </text>
          </>
        );
      })}
    </svg>
  );
}

/** Told apart by form, for whoever sees no colors: disk, square, triangle, ring, cross, open square. */
function PersonSign({ sign, x, y }: { readonly sign: number; readonly x: number; readonly y: number }) {
  const [cx, cy] = [at(x), at(y)];
  switch (sign % 6) {
    case 0:
      return <circle cx={cx} cy={cy} r={2.8} class="st-measured" />;
    case 1:
      return <rect x={at(x - 2.6)} y={at(y - 2.6)} width={5.2} height={5.2} class="st-core" />;
    case 2:
      return <path d={`M${at(x - 3.4)} ${at(y + 2.8)}h6.8L${cx} ${at(y - 3.4)}z`} class="mark" />;
    case 3:
      return <circle cx={cx} cy={cy} r={2.8} class="st-missing" />;
    case 4:
      return <path d={`M${at(x - 3)} ${at(y - 3)}l6 6m0 -6l-6 6`} class="thick" />;
    default:
      return <rect x={at(x - 2.6)} y={at(y - 2.6)} width={5.2} height={5.2} class="st-missing" />;
  }
}
