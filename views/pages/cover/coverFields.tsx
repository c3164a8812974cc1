import { boxesOf } from '../../../shared/quantity/fieldText.ts';
import type { Entry, Family } from '../../../shared/words/catalogue.ts';
import { COVER_SHAPE, QUICK_LIMITS } from '../../../shared/words/fields/cover.ts';
import { LOOKED, PLAN } from '../../../shared/words/fields/job.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { briefLength, lengthFigure } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { type EntryRow, EntryTable } from '../../parts/entryTable.tsx';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { anyWrong, EnteredCount } from '../../parts/form/entered.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice } from '../../parts/form/fieldBox.tsx';
import { GaugeFields } from './gaugeFields.tsx';
import { KnockOnFields } from './knockOnFields.tsx';
import { OwnBendingFields } from './ownBendingFields.tsx';

export interface StationRowView {
  readonly index: number;
  readonly angleDeg: number;
  readonly radiusMm: number;
  /** Added by the person, so its place can be typed. */
  readonly own: boolean;
  /** "behind stud 1"; '' for a place of the person's own. */
  readonly place: string;
}

/** A reading that looks like a slip, or a limit that can hardly be meant. */
export interface DoubtView {
  /** Of its box. */
  readonly name: string;
  /** "Wall at station 3". */
  readonly label: string;
  readonly question: string;
  /** What the box would hold if the other reading was meant; null when nobody can tell. */
  readonly meant: string | null;
  /** null where it cannot be taken as it was typed. */
  readonly asTyped: string | null;
}

export interface CoverFormView {
  readonly fields: Readonly<Record<string, string>>;
  readonly familyId: string;
  readonly families: readonly { readonly id: string; readonly name: string }[];
  readonly cover: {
    readonly studCount: number;
    readonly studCircleDiameterMm: number;
    readonly trackInnerDiameterMm: number;
    readonly trackOuterDiameterMm: number;
    readonly nominalWallMm: number;
  } | null;
  readonly family: Family | null;
  readonly rows: readonly StationRowView[];
  readonly markRows: readonly number[];
  readonly doubts: readonly DoubtView[];
  readonly faults: readonly Fault[];
  readonly measuredCount: number;
  readonly gauges: readonly Entry<'gauge'>[];
  readonly lengthUnit: LengthUnit;
  readonly decimalSign: 'point' | 'comma';
}

const CRACK = { crackTest: { ...LOOKED.crackTest, inSight: false, box: 'crack' } } as const;
const { chucking } = SETUP;
const { minimumWallMm, ...OTHER_LIMITS } = QUICK_LIMITS;
const REST = { ...OTHER_LIMITS, ...PLAN } as const;

const SWAPS_PAGE = {
  'hx-get': '/cover',
  'hx-include': '#cover-form',
  'hx-target': '#cover-page',
  'hx-select': '#cover-page',
  'hx-swap': 'outerHTML',
  'hx-push-url': 'true',
  'hx-select-oob': '#unit-form',
};

/** What is asked first: which cover, its crack test, how it is held, its minimum. The rest is folded under when it is needed. */
export function CoverSetup({ form, given }: { form: CoverFormView; given: GivenLimits }) {
  const { fields, faults, familyId, lengthUnit } = form;
  const boxes = { fields, faults, writing: form };
  return (
    <>
      <div class="fields setup-fields">
        <Choice
          label="Cover type"
          name="family"
          value={familyId}
          options={[
            ...(familyId === '' ? [{ value: '', label: 'choose' }] : []),
            ...form.families.map(({ id, name }) => ({ value: id, label: name })),
            { value: 'own', label: 'other: enter its dimensions' },
          ]}
          select={SWAPS_PAGE}
        />
        {form.cover && (
          <>
            <Boxes of={CRACK} {...boxes} />
            <Boxes of={{ chucking }} {...boxes} />
            <Boxes of={{ minimumWallMm }} {...boxes} hints={limitHints(given, lengthUnit)} />
          </>
        )}
        <Choice
          label="Units when none are typed"
          name="unit"
          value={lengthUnit}
          options={[
            { value: 'mm', label: 'millimeters' },
            { value: 'in', label: 'inches' },
          ]}
          select={SWAPS_PAGE}
        />
        {form.family && <p class="hint family-in-words">{familyInWords(form.family, lengthUnit)}</p>}
        <noscript>
          <button class="button" type="submit">
            Show its stations
          </button>
        </noscript>
      </div>
      {familyId === 'own' && (
        <>
          <div class="fields">
            <Boxes of={COVER_SHAPE} {...boxes} />
          </div>
          <OwnBendingFields {...boxes} />
        </>
      )}
      {form.cover && (
        <div class="folds">
          <LimitsAndCut form={form} given={given} />
          <GaugeFields {...boxes} gauges={form.gauges} />
          <KnockOnFields {...boxes} />
        </div>
      )}
    </>
  );
}

export function familyInWords(family: Family, unit: LengthUnit): string {
  const make = family.make === 'from-solid' ? 'billet' : `stamped, ${family.sideWall} side wall`;
  const length = (mm: number) => briefLength(mm, unit);
  return `${make}; ${family.studCount} studs on Ø ${length(family.studCircleDiameterMm)}; friction surface Ø ${length(family.trackInnerDiameterMm)} to ${length(family.trackOuterDiameterMm)}; wall when new ${length(family.nominalWallMm)}`;
}

/** Wall, indicator reading and heat mark at each station, in the order they are measured. */
export function StationTable({ form }: { form: CoverFormView }) {
  const error = errorsOf(form.faults);
  const { fields, lengthUnit } = form;
  const cell = (name: string) => ({ name, value: fields[name] ?? '', error: error(name) });
  const anyOwn = form.rows.some((row) => row.own);
  const rows = form.rows.map((row): EntryRow => {
    const { index } = row;
    return {
      id: `station-${index}`,
      head: row.own ? (
        `${index + 1}`
      ) : (
        <>
          <b>{index + 1}</b> {row.place}
          <small> r {briefLength(row.radiusMm, lengthUnit)}</small>
        </>
      ),
      spoken: `at station ${index + 1}${row.place ? `, ${row.place}` : ''}`,
      cells: {
        ...(row.own && { angle: cell(`a.${index}`), radius: cell(`r.${index}`) }),
        wall: cell(`w.${index}`),
        face: cell(`f.${index}`),
        mark: cell(`d.${index}`),
      },
    };
  });
  return (
    <EntryTable
      id="stations"
      caption="Readings. More than one at a station? Separate them with ;"
      headLabel="Station"
      columns={[
        ...(anyOwn
          ? [
              { key: 'angle', label: 'Angle from stud 1', unit: '°' },
              { key: 'radius', label: 'Radius', unit: lengthUnit },
            ]
          : []),
        { key: 'wall', label: 'Wall', unit: lengthUnit },
        { key: 'face', label: 'Indicator reading', unit: lengthUnit },
        { key: 'mark', label: 'Heat mark depth', unit: lengthUnit },
      ]}
      rows={rows}
    />
  );
}

/** Marks that lie between stations. */
export function MarkTable({ form }: { form: CoverFormView }) {
  if (form.markRows.length === 0) return null;
  const error = errorsOf(form.faults);
  const cell = (name: string) => ({ name, value: form.fields[name] ?? '', error: error(name) });
  return (
    <EntryTable
      id="marks"
      caption="Heat marks between stations"
      headLabel="Heat mark"
      columns={[
        { key: 'angle', label: 'Angle from stud 1', unit: '°' },
        { key: 'radius', label: 'Radius', unit: form.lengthUnit },
        { key: 'depth', label: 'Depth', unit: form.lengthUnit },
      ]}
      rows={form.markRows.map((index) => ({
        id: `mark-${index}`,
        head: `${index + 1}`,
        spoken: `of heat mark ${index + 1}`,
        cells: { angle: cell(`ma.${index}`), radius: cell(`mr.${index}`), depth: cell(`md.${index}`) },
      }))}
    />
  );
}

/** Other limits than the shop's, and another cut, for this one cover. */
function LimitsAndCut({ form, given }: { form: CoverFormView; given: GivenLimits }) {
  const { fields, faults } = form;
  const names = boxesOf(REST);
  return (
    <details class="change" id="limits-and-cut" open={anyWrong(faults, names)}>
      <summary>
        Other limits or another cut, for this cover only
        <EnteredCount fields={fields} names={names} />
      </summary>
      <div class="fields">
        <Boxes
          of={REST}
          fields={fields}
          faults={faults}
          writing={form}
          hints={limitHints(given, form.lengthUnit)}
        />
      </div>
    </details>
  );
}

/** What holds where a box is left blank. */
function limitHints(given: GivenLimits, unit: LengthUnit) {
  const shown = (mm: number | null) => (mm === null ? 'none set' : `${lengthFigure(mm, unit)} ${unit}`);
  return {
    minimumWallMm: `Blank: ${shown(given.minimumWallMm)}${given.minimumWallMm === null ? '' : `, ${given.minimumSource}`}`,
    cleanUpAllowanceMm: `Blank: ${shown(given.cleanUpAllowanceMm)}`,
    faceRunoutLimitMm: `Blank: ${shown(given.faceRunoutLimitMm)}`,
    plannedCutMm: 'Blank: the least that cleans up',
  };
}

export interface GivenLimits {
  readonly minimumWallMm: number | null;
  readonly minimumSource: string;
  readonly cleanUpAllowanceMm: number;
  readonly faceRunoutLimitMm: number | null;
}
