import type { Family } from '../../shared/words/catalogue.ts';
import { Hatch } from './hatch.tsx';

/** Widths and heights in mm, from the axis outward and from the friction surface up toward the engine. */
export interface HalfSection {
  readonly rimMm: number;
  readonly wallMm: number;
  readonly bossMm: number;
  readonly track: readonly [innerMm: number, outerMm: number];
  readonly pad: { readonly fromMm: number; readonly toMm: number; readonly topMm: number };
  readonly studMm: number;
}

type Given = 'studCircleDiameterMm' | 'trackInnerDiameterMm' | 'trackOuterDiameterMm' | 'nominalWallMm';
type Drawn = Pick<Family, Given | 'bossDiameterMm' | 'rimDiameterMm' | 'padDiameterMm' | 'padThicknessMm'>;

/** What a half section of a cover shows; what the cover type does not give is drawn at a usual share of what it gives. */
export function halfSectionOf(family: Drawn): HalfSection {
  const studMm = family.studCircleDiameterMm / 2;
  const outerMm = family.trackOuterDiameterMm / 2;
  const padMm = (family.padDiameterMm ?? family.nominalWallMm * 4.5) / 2;
  const wallMm = family.nominalWallMm;
  return {
    rimMm: (family.rimDiameterMm ?? 2 * Math.max(studMm + padMm, outerMm) + 4 * wallMm) / 2,
    wallMm,
    bossMm: (family.bossDiameterMm ?? family.trackInnerDiameterMm * 0.3) / 2,
    track: [family.trackInnerDiameterMm / 2, outerMm],
    pad: {
      fromMm: studMm - padMm,
      toMm: studMm + padMm,
      topMm: wallMm + (family.padThicknessMm ?? 2 * wallMm),
    },
    studMm,
  };
}

const WIDTH = 132;
const HEIGHT = 44;

/** A cover type in a list: half its section, axis at the left, engine side up, both ways to one scale. */
export function CoverSectionSmall({ id, family }: { id: string; family: Family }) {
  const section = halfSectionOf(family);
  const { rimMm, wallMm, bossMm, track, pad, studMm } = section;
  const k = (WIDTH - 4) / rimMm;
  const foot = HEIGHT - 14;
  const x = (mm: number) => (2 + k * mm).toFixed(1);
  const y = (mm: number) => (foot - k * mm).toFixed(1);
  const sideFoot = Math.min(HEIGHT - 2, foot + k * wallMm * 3).toFixed(1);
  const inside = rimMm - wallMm;
  const outline = [
    `M${x(0)} ${y(0)}`,
    `H${x(inside)}`,
    `V${sideFoot}`,
    `H${x(rimMm)}`,
    `V${y(wallMm)}`,
    ...(pad.toMm < rimMm ? [`H${x(pad.toMm)}`] : []),
    `V${y(pad.topMm)}`,
    `H${x(pad.fromMm)}`,
    `V${y(wallMm)}`,
    `H${x(bossMm)}`,
    `V${y(wallMm * 2.4)}`,
    `H${x(0)}`,
    'Z',
  ].join('');
  const studHalf = pad.toMm > pad.fromMm ? (pad.toMm - pad.fromMm) / 5 : wallMm;
  return (
    <svg class="section-small" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} width={WIDTH} height={HEIGHT}>
      <defs>
        <Hatch id={`${id}-hatch`} size={5} />
      </defs>
      <path d={outline} fill={`url(#${id}-hatch)`} />
      <path d={outline} class="thin" />
      <path
        d={`M${x(studMm - studHalf)} ${y(pad.topMm)}V3H${x(studMm + studHalf)}V${y(pad.topMm)}`}
        class="thin"
      />
      <path d={`M${x(track[0])} ${y(0)}H${x(track[1])}`} class="track-face" />
      <path d={`M2 4V${HEIGHT - 4}`} class="hair chain" />
    </svg>
  );
}
