import { linesOf } from '../../../shared/quantity/fieldLines.ts';
import type { Writing } from '../../../shared/quantity/fieldText.ts';
import type { Entry } from '../../../shared/words/catalogue.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import { RING_WELDED } from '../../../shared/words/fields/weld.ts';
import type { Job, Pass } from '../../../shared/words/job.ts';
import { stationsOf, writePlace } from '../../../shared/words/places.ts';
import { briefLength, type LengthUnit } from '../../../shared/words/print.ts';
import { READING_WORD } from '../../../shared/words/readings.ts';
import { type EntryRow, EntryTable } from '../../parts/entryTable.tsx';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { day } from '../../parts/when.tsx';
import { ChosenGauges, OtherGauge } from '../cover/gaugeFields.tsx';
import { KnockOnBoxes } from '../cover/knockOnFields.tsx';
import { JobForm, type Refused, Who } from './section.tsx';

/** One place of the measuring table, with what stands there as it would be typed. */
export interface PlaceView {
  readonly index: number;
  readonly angleDeg: number;
  readonly radiusMm: number;
  /** "behind stud 1"; '' where the person types it. */
  readonly place: string;
  readonly own: boolean;
  readonly wall: string;
  readonly face: string;
  readonly mark: string;
  /** Ids of the readings shown, so that a change by somebody else is noticed. */
  readonly was: { readonly wall: string; readonly face: string; readonly mark: string };
}

export interface MeasureProps {
  readonly job: Job;
  readonly pass: Pass;
  readonly places: readonly PlaceView[];
  /** Makes the ids of the readings sent from this form, so that sending it twice is harmless. */
  readonly token: string;
  readonly unit: LengthUnit;
  readonly initials: string;
  readonly refused: Refused | null;
  readonly doubts: readonly DoubtedLength[];
  readonly readOnly: boolean;
  /** Whoever looks may add cover types. */
  readonly mayAddType: boolean;
}

const KEYS = ['wall', 'face', 'mark'] as const;
const LETTER = { wall: 'w', face: 'f', mark: 'd' } as const;

export function measuredSummary(job: Job, pass: Pass): string {
  const walls = job.readings.filter((one) => one.pass === pass && one.kind === 'wall');
  if (walls.length === 0) return 'no readings yet';
  const places = stationsOf(walls);
  const who = [...new Set(walls.map((one) => one.who))].join(', ');
  return `${walls.length} wall reading${walls.length === 1 ? '' : 's'} at ${places.length} station${places.length === 1 ? '' : 's'}, by ${who}`;
}

/** The readings of one pass, before the cut or after it. */
export function Measure(props: MeasureProps) {
  const { job, pass, places, token, unit, initials, refused, doubts, readOnly } = props;
  const table = <ReadingTable {...props} />;
  const planned = places.filter(({ own }) => !own);
  const measured = planned.filter(({ wall }) => wall !== '').length;
  if (readOnly) return table;
  const begins = props.mayAddType && pass === 'before' && places.some(({ wall }) => wall !== '');
  return (
    <>
      <p>
        <a
          class="button"
          id={`bench-${pass}`}
          href={`/jobs/${encodeURIComponent(job.number)}/measure?${new URLSearchParams({ pass })}`}
        >
          Measure at the bench
        </a>
      </p>
      <details class="change" id={`${pass}-typed`} open={refused !== null || doubts.length > 0}>
        <summary>
          Type readings in a table: {measured} of {planned.length} stations measured
        </summary>
        <JobForm
          id={`${pass}-form`}
          action={`/jobs/${encodeURIComponent(job.number)}/readings`}
          revision={job.revision}
          initials={initials}
          signed={job.stage === 'signed'}
          refused={refused}
          doubts={doubts}
          submit="Save readings"
          unit={unit}
        >
          <input type="hidden" name="pass" value={pass} />
          <input type="hidden" name="token" value={token} />
          <AsShown places={places} />
          {table}
        </JobForm>
      </details>
      {begins && (
        <p>
          <a href={`/catalogue/family/new?${new URLSearchParams({ job: job.number })}`} id="begin-type">
            Begin a cover type from this cover
          </a>
        </p>
      )}
    </>
  );
}

/** A row for each place; read only, those with a reading. */
function ReadingTable({ pass, places, unit, refused, readOnly }: MeasureProps) {
  const error = errorsOf(refused?.faults ?? []);
  const typed = refused?.fields;
  const shown = readOnly ? places.filter(({ wall, face, mark }) => wall + face + mark !== '') : places;
  const anyOwn = shown.some((place) => place.own);
  const rows = shown.map((place): EntryRow => {
    const { index } = place;
    const cell = (key: (typeof KEYS)[number]) => {
      const name = `${LETTER[key]}.${index}`;
      return { name, value: typed?.[name] ?? place[key], error: error(name), readonly: readOnly };
    };
    const at = (name: string) => ({
      name,
      value: typed?.[name] ?? '',
      error: error(name),
      readonly: readOnly,
    });
    return {
      id: `${pass}-${index}`,
      head: place.own ? (
        `${index + 1}`
      ) : (
        <>
          <b>{index + 1}</b> {place.place} <small>r {briefLength(place.radiusMm, unit)}</small>
        </>
      ),
      spoken: `at station ${index + 1}${place.place ? `, ${place.place}` : ''}`,
      cells: {
        ...(place.own && { angle: at(`a.${index}`), radius: at(`r.${index}`) }),
        wall: cell('wall'),
        face: cell('face'),
        mark: cell('mark'),
      },
    };
  });
  return (
    <EntryTable
      id={`${pass}-table`}
      caption="More than one reading? Separate with ; . A row with a heat mark and no wall is a mark between stations."
      headLabel="Station"
      columns={[
        ...(anyOwn
          ? [
              { key: 'angle', label: 'Angle from stud 1', unit: '°' },
              { key: 'radius', label: 'Radius', unit },
            ]
          : []),
        { key: 'wall', label: READING_WORD[pass].wall, unit },
        { key: 'face', label: READING_WORD[pass].face, unit },
        { key: 'mark', label: READING_WORD[pass].mark, unit },
      ]}
      rows={rows}
    />
  );
}

/** What each box held when it was shown: only what was changed is kept. */
function AsShown({ places }: Pick<MeasureProps, 'places'>) {
  return (
    <>
      {places.map((place) => (
        <>
          {!place.own && <input type="hidden" name={`at.${place.index}`} value={writePlace(place)} />}
          {KEYS.filter((key) => place.was[key] !== '').map((key) => (
            <input type="hidden" name={`was.${LETTER[key]}.${place.index}`} value={place.was[key]} />
          ))}
        </>
      ))}
    </>
  );
}

export interface SetupProps {
  readonly job: Job;
  readonly writing: Writing;
  /** What is kept, box by box. */
  readonly typed: Readonly<Record<string, string>>;
  readonly gauges: readonly Entry<'gauge'>[];
  readonly initials: string;
  readonly refused: Refused | null;
  readonly readOnly: boolean;
}

const { gauge, chucking, residualRunoutMm, wallReadThrough } = SETUP;
const JOINED_WORD = { true: 'yes', false: 'no', null: 'not known' } as const;
const SAID_FIRST = { gauge, chucking, residualRunoutMm, wallReadThrough } as const;

/** Which gauge, how it is held, and what the wall was read through. */
export function Setup({ job, writing, typed, gauges, initials, refused, readOnly }: SetupProps) {
  const kept = job.sections.setup;
  const body = kept?.body;
  const boxes = { fields: refused?.fields ?? typed, faults: refused?.faults ?? [], writing };
  return (
    <>
      <p>
        {body
          ? linesOf(SAID_FIRST, body, writing)
              .map(({ label, value }) => `${label}: ${value}`)
              .join('; ')
          : 'No gauge or chucking entered yet.'}
      </p>
      {body?.ringWelded && (
        <p class="note" id="ring-welded">
          Stiffening ring welded on {day(body.ringWelded.on)}
          {body.ringWelded.note !== '' && `: ${body.ringWelded.note}`}. Readings before it no longer count,
          because welding pulls the face; the history keeps them. Welded to the pads all around:{' '}
          {JOINED_WORD[`${body.ringWelded.joinedToPads ?? null}`]}.
        </p>
      )}
      {kept && <Who kept={kept} />}
      {(body?.gauges ?? [])
        .filter(({ id, revision }) => gauges.some((now) => now.id === id && now.revision > revision))
        .map((one) => (
          <p class="hint">
            {one.gauge.name} has changed in the catalog since. This job keeps it as it was; save gauge and
            chucking again to take it as it is now.
          </p>
        ))}
      {!readOnly && job.stage === 'signed' && refused === null && (
        <p class="no-print">
          <a href={`/jobs/${encodeURIComponent(job.number)}?again=setup#setup-form`}>
            Change gauge and chucking
          </a>
        </p>
      )}
      {!readOnly && (job.stage !== 'signed' || refused !== null) && (
        <details class="change" open={refused !== null}>
          <summary>Gauge and chucking</summary>
          <JobForm
            id="setup-form"
            action={`/jobs/${encodeURIComponent(job.number)}/setup`}
            revision={job.revision}
            initials={initials}
            signed={job.stage === 'signed'}
            unit={writing.lengthUnit}
            refused={refused}
            submit="Save as a new revision"
            first={false}
          >
            <div class="fields">
              {gauges.length > 0 && <ChosenGauges {...boxes} gauges={gauges} />}
              <Boxes of={SAID_FIRST} without={['gauge']} {...boxes} />
            </div>
            {body?.ringWelded && (
              <div class="fields">
                <Boxes
                  of={RING_WELDED}
                  without={['note']}
                  hints={{
                    on: 'A later day records another ring. Walls and cuts before it no longer count.',
                  }}
                  {...boxes}
                />
              </div>
            )}
            <OtherGauge {...boxes} gauges={gauges} />
            <KnockOnBoxes {...boxes} kept={typed} />
          </JobForm>
        </details>
      )}
    </>
  );
}
