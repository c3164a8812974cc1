import {
  OFF_SOLID,
  OFF_SOLID_DRAWN,
  offAtMost,
  offInWords,
  RING_WIDENED,
} from '../../../../shared/words/bending/solid.ts';
import {
  briefLength,
  type LengthUnit,
  printNumber,
  printShare,
  WAVINESS,
} from '../../../../shared/words/print.ts';
import { type Bent, bentFigures } from './exampleTables.tsx';

export interface SolidBeside {
  readonly name: string;
  readonly studCount: number;
  readonly trackWallMm: number;
  readonly found: Bent;
  readonly solid: Bent;
}

interface Shares {
  readonly ripple: number;
  readonly center: number;
  readonly peak: number;
}

export interface RingBeside {
  readonly name: string;
  readonly bonded: Shares;
  readonly unbonded: Shares;
  readonly joined: Shares;
  readonly apart: Shares;
}

interface BesideSolidProps {
  readonly covers: readonly SolidBeside[];
  readonly rings: readonly RingBeside[];
  readonly unit: LengthUnit;
}

/** Model, solid and difference, cover by cover, new and cut. */
export function BesideSolid({ covers, rings, unit }: BesideSolidProps) {
  return (
    <>
      <h3>Compared with a solid model</h3>
      <p>
        Five covers were also worked out as three-dimensional solids by an independent second implementation,
        not published. It has round pads joined to the wall, the side wall as a cylinder, and a conforming
        piston. A finer mesh moves its waviness by less than 1 %.
      </p>
      <p>
        With pads as drawn, the model’s waviness was {offInWords(OFF_SOLID_DRAWN.ripple)}, and the center of
        the solid deflected up to 9 % more. The change from new to cut agreed within{' '}
        {offAtMost(OFF_SOLID_DRAWN.cutRipple)} for waviness then, and within {offAtMost(OFF_SOLID.cutRipple)}{' '}
        now.
      </p>
      <Covers covers={covers} unit={unit} />
      <Rings rings={rings} unit={unit} />
      <p>
        Joined to the pads, waviness and pressure peak are between both bounds. Two rings are few, so the
        bounds are widened by {printShare(RING_WIDENED.ripple - 1, 0)} and{' '}
        {printShare(RING_WIDENED.peak - 1, 0)}, the largest difference above for the change from new to cut.
        The center is outside both bounds, so none is given for it.
      </p>
    </>
  );
}

function off(found: number, solid: number): string {
  const percent = 100 * (found / solid - 1);
  return `${percent < 0 ? '−' : '+'}${printNumber(Math.abs(percent), 1)} %`;
}

function Covers({ covers, unit }: Pick<BesideSolidProps, 'covers' | 'unit'>) {
  const three = (
    <>
      <th scope="col">model</th>
      <th scope="col">solid</th>
      <th scope="col">difference</th>
    </>
  );
  return (
    <div class="table-box" tabindex={0}>
      <table class="figures" id="beside-solid">
        <caption>Compared with an independent second implementation, not published</caption>
        <thead>
          <tr>
            <th scope="col" rowspan={2}>
              cover, wall on the friction surface
            </th>
            <th scope="colgroup" colspan={3}>
              waviness <span class="unit-in-head">{WAVINESS[unit].unit}</span>
            </th>
            <th scope="colgroup" colspan={3}>
              center <span class="unit-in-head">{unit}</span>
            </th>
            <th scope="colgroup" colspan={3}>
              peak ÷ mean
            </th>
          </tr>
          <tr>
            {three}
            {three}
            {three}
          </tr>
        </thead>
        <tbody>
          {covers.map((row) => (
            <CoverRow row={row} unit={unit} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function CoverRow({ row, unit }: { row: SolidBeside; unit: LengthUnit }) {
  const { name, studCount, trackWallMm, found, solid } = row;
  const [ours, theirs] = [bentFigures(found, unit), bentFigures(solid, unit)];
  const compared = [
    [ours.ripple, theirs.ripple, off(found.rippleMm, solid.rippleMm)],
    [ours.center, theirs.center, off(found.centerMm, solid.centerMm)],
    [ours.peak, theirs.peak, off(found.peak, solid.peak)],
  ];
  return (
    <tr>
      <th scope="row">
        {name}, {studCount} studs, {briefLength(trackWallMm, unit)}
      </th>
      {compared.flat().map((figure) => (
        <td>{figure}</td>
      ))}
    </tr>
  );
}

const SHARE_NAME = { ripple: 'waviness', peak: 'peak', center: 'center' } as const;

function Rings({ rings, unit }: Pick<BesideSolidProps, 'rings' | 'unit'>) {
  return (
    <div class="table-box" tabindex={0}>
      <table class="figures" id="ring-beside-solid">
        <caption>
          A stiffening ring {briefLength(6, unit)} thick on the cut cover, as shares of the same cover without
          it; compared with an independent second implementation, not published
        </caption>
        <thead>
          <tr>
            <th scope="col">cover</th>
            <th scope="col">share of</th>
            <th scope="col">model, bonded</th>
            <th scope="col">model, unbonded</th>
            <th scope="col">solid, joined to the pads</th>
            <th scope="col">solid, air around the pads</th>
          </tr>
        </thead>
        <tbody>
          {rings.flatMap(({ name, bonded, unbonded, joined, apart }) =>
            (['ripple', 'peak', 'center'] as const).map((of) => (
              <tr>
                <th scope="row">{name}</th>
                <td>{SHARE_NAME[of]}</td>
                <td>{printNumber(bonded[of], 2)}</td>
                <td>{printNumber(unbonded[of], 2)}</td>
                <td>{printNumber(joined[of], 2)}</td>
                <td>
                  {printNumber(apart[of], 2)}
                  {of === 'ripple' && ', reversed'}
                </td>
              </tr>
            )),
          )}
        </tbody>
      </table>
    </div>
  );
}
