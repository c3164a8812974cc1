import type { Job, Pass } from '../../../shared/words/job.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { Choice, TextArea } from '../../parts/form/fieldBox.tsx';
import { Hidden } from '../../parts/form/hidden.tsx';
import { Measure, type PlaceView } from '../job/measure.tsx';

/** What was pasted, station by station, before it is saved. */
export interface PastePreview {
  /** The rows of the measuring table that something was pasted into. */
  readonly places: readonly PlaceView[];
  readonly refused: readonly {
    readonly line: number;
    readonly column: number | null;
    readonly message: string;
  }[];
  readonly token: string;
  /** The boxes as they would be sent. */
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly doubts: readonly (DoubtedLength & { readonly question: string })[];
}

export interface PasteProps {
  readonly frame: Frame;
  readonly job: Job;
  readonly pass: Pass;
  readonly fields: Readonly<Record<string, string>>;
  readonly preview: PastePreview | null;
  /** Why there is nothing to show. */
  readonly nothing: string | null;
}

/** A column or a table of readings, pasted or from a file. */
export function PastePage(props: PasteProps) {
  const { frame, job, pass, preview } = props;
  const href = `/jobs/${encodeURIComponent(job.number)}`;
  return (
    <Layout title={`Paste readings, job ${job.number}`} here="jobs" {...frame} nothingSwaps>
      <link rel="stylesheet" href="/assets/bench.css" />
      <p class="measuring-of">
        <a href={`${href}/measure?${new URLSearchParams({ pass })}`}>Measure, job {job.number}</a>,{' '}
        {pass === 'before' ? 'before the cut' : 'after the cut'}
      </p>
      <h1>Paste readings</h1>
      {preview !== null && <Preview {...props} preview={preview} />}
      <PasteForm {...props} />
      <script type="module" src="/assets/modules/views/browser/bench/pasteFile.js" />
    </Layout>
  );
}

function PasteForm({ frame, job, pass, fields, preview, nothing }: PasteProps) {
  return (
    <form
      method="post"
      action={`/jobs/${encodeURIComponent(job.number)}/measure/paste`}
      id="paste-form"
      class="job-form"
    >
      {nothing !== null && <ErrorSummary faults={[{ path: 'text', message: nothing }]} />}
      <Hidden fields={{ pass }} />
      <TextArea
        label="Readings, one station on each line"
        name="text"
        rows={preview === null ? 10 : 4}
        value={fields.text}
        error={nothing}
        hint="In the order of the stations, or with headings: station, wall, indicator, heat mark. A heading may name the unit, such as wall (mm)."
      />
      <p class="field" id="paste-file-field" hidden>
        <label for="paste-file">Or a CSV file</label>
        <input type="file" id="paste-file" accept=".csv,.txt,text/csv,text/plain" />
      </p>
      <div class="fields">
        <Choice
          label="Without headings, the columns are"
          name="pasted"
          value={fields.pasted ?? 'wall'}
          options={[
            { value: 'wall', label: 'walls; more columns are repeats' },
            { value: 'all', label: 'wall, indicator reading, heat mark depth' },
            { value: 'face', label: 'indicator readings' },
            { value: 'mark', label: 'heat mark depths' },
          ]}
        />
        <Choice
          label="Units when none are typed"
          name="unit"
          value={fields.unit ?? frame.lengthUnit}
          options={[
            { value: 'in', label: 'inches' },
            { value: 'mm', label: 'millimeters' },
          ]}
        />
      </div>
      <div class="actions">
        <button class={preview === null ? 'button first' : 'button'} type="submit" id="show-pasted">
          Preview the readings
        </button>
      </div>
    </form>
  );
}

function Preview({ frame, job, pass, preview }: PasteProps & { readonly preview: PastePreview }) {
  const { places, refused, token, fields, faults, doubts } = preview;
  const asked = doubts.map(({ name, question }): Fault => ({ path: name, message: question }));
  return (
    <section aria-labelledby="pasted-head" id="pasted">
      <h2 id="pasted-head">Not saved yet: check each station</h2>
      {refused.length > 0 && (
        <div class="doubt" role="alert" id="pasted-refused">
          <p>
            <b>
              Not readable, and left out below: {refused.length} {refused.length === 1 ? 'entry' : 'entries'}
            </b>
          </p>
          <ul>
            {refused.map(({ line, column, message }) => (
              <li>
                Line {line}
                {column !== null && `, column ${column}`}: {message}
              </li>
            ))}
          </ul>
        </div>
      )}
      {places.length > 0 && (
        <Measure
          job={job}
          pass={pass}
          places={places}
          token={token}
          unit={fields.unit === 'in' ? 'in' : 'mm'}
          initials={frame.initials ?? ''}
          refused={{ section: 'readings', fields, faults: [...faults, ...asked], stale: null }}
          doubts={doubts}
          readOnly={false}
          mayAddType={false}
        />
      )}
    </section>
  );
}
