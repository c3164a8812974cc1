import type { KnockOn } from '../../../shared/words/cover.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';

/** One length; `heights` are several, parted by semicolons; `within` are three: measured, at least, at most. */
export interface KnockOnRow {
  readonly key: keyof KnockOn;
  readonly label: string;
  readonly kind: 'length' | 'heights' | 'within';
}

const length = (key: keyof KnockOn, label: string): KnockOnRow => ({ key, label, kind: 'length' });

export const KNOCK_ON: readonly { readonly head: string; readonly rows: readonly KnockOnRow[] }[] = [
  {
    head: 'The chuck',
    rows: [
      length('clampedFaceMm', 'Face height, clamped'),
      length('releasedFaceMm', 'The same place, released'),
    ],
  },
  {
    head: 'The pads',
    rows: [
      length('padsResurfacedMm', 'Taken off the pads'),
      length('shimsMm', 'Shims under them, equal at all'),
      length('padThicknessMm', 'Pad thickness before'),
      length('leastPadThicknessMm', 'Pad thickness, at least'),
      { key: 'padHeightsMm', label: 'Pad heights, one after another', kind: 'heights' },
      length('padsCoplanarWithinMm', 'They may differ by'),
    ],
  },
  {
    head: 'Pull-forward and the hub in the pump',
    rows: [
      length('pullForwardMm', 'Gap, fully back'),
      length('leastPullForwardMm', 'Gap, at least'),
      length('mostPullForwardMm', 'Gap, at most'),
      length('hubEngagementMm', 'Hub engaged, fully back'),
      length('leastHubEngagementMm', 'Hub engaged, at least'),
    ],
  },
  {
    head: 'The crank pilot',
    rows: [
      length('crankPilotMm', 'Pilot Ø'),
      length('crankBoreMm', 'Crank bore Ø'),
      length('mostPilotClearanceMm', 'Clearance, at most'),
      length('pilotEngagedMm', 'Length engaged'),
      length('leastPilotEngagedMm', 'Engaged, at least'),
      length('pilotRoomMm', 'Depth of the bore'),
    ],
  },
  {
    head: 'After parting and closing',
    rows: [
      { key: 'sideWallHeightMm', label: 'Side wall height', kind: 'within' },
      { key: 'overallHeightMm', label: 'Overall height', kind: 'within' },
      { key: 'endPlayMm', label: 'End play', kind: 'within' },
    ],
  },
];

/** What was measured round the face, all of it optional: what is not given is not spoken of. */
export function KnockOnFields(props: {
  fields: Readonly<Record<string, string>>;
  faults: readonly Fault[];
  unit: LengthUnit;
  /** Asks for the release clearance too. */
  release?: boolean;
}) {
  const { fields, faults, unit, release = false } = props;
  const error = errorsOf(faults);
  const names = Object.keys(fields).filter(
    (name) => (name.startsWith('k.') || (release && name === 'release')) && fields[name] !== '',
  );
  const box = (label: string, name: string, hint?: string) => (
    <Field
      label={label}
      name={name}
      value={fields[name]}
      unit={unit}
      error={error(name)}
      {...(hint !== undefined && { hint })}
      optional
    />
  );
  return (
    <details class="change" open={names.length > 0}>
      <summary>What the job changes elsewhere: chuck, pads, hub, crank pilot, heights</summary>
      {release && (
        <div class="fields">{box('Lock-up release clearance before', 'release', 'Grows by the cut')}</div>
      )}
      {KNOCK_ON.map(({ head, rows }) => (
        <fieldset class="group">
          <legend>{head}</legend>
          <div class="fields">
            {rows.map(({ key, label, kind }) =>
              kind === 'within' ? (
                <>
                  {box(label, `k.${key}`)}
                  {box(`${label}, at least`, `k.${key}.least`)}
                  {box(`${label}, at most`, `k.${key}.most`)}
                </>
              ) : (
                box(label, `k.${key}`, kind === 'heights' ? 'Part them with a semicolon' : undefined)
              ),
            )}
          </div>
        </fieldset>
      ))}
    </details>
  );
}
