import { type Job, LOOK_ITEMS, type Looked, type LookItem } from '../../../shared/words/job.ts';
import { Caution } from '../../parts/caution.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field, Tick } from '../../parts/form/fieldBox.tsx';
import { Sign } from '../../parts/form/sign.tsx';
import { JobForm, type Refused, Who } from './section.tsx';
import { ITEM_WORD } from './words.ts';

export interface LookProps {
  readonly job: Job;
  readonly initials: string;
  readonly refused: Refused | null;
  readonly readOnly: boolean;
}

const CRACK_WORD = {
  found: 'A crack was found',
  'none-found': 'No crack found',
  'not-done': 'Not looked for cracks',
} as const;
const METHOD_WORD = {
  'by-eye': 'by eye',
  dye: 'by dye penetrant',
  'magnetic-particle': 'by magnetic particle',
} as const;
const RESULT_WORD = { 'not-looked': 'not looked at', sound: 'sound', fault: 'fault' } as const;
const RESULT_STATUS = { 'not-looked': 'not-checked', sound: 'pass', fault: 'caution' } as const;

export function lookedSummary(job: Job): string {
  const looked = job.sections.looked?.body;
  if (!looked) return 'not yet';
  const faults = looked.items
    .filter((one) => one.result === 'fault')
    .map((one) => ITEM_WORD[one.item].toLowerCase());
  return `${CRACK_WORD[looked.crackTest]}${looked.crackMethod ? ` ${METHOD_WORD[looked.crackMethod]}` : ''}${faults.length > 0 ? `; fault: ${faults.join(', ')}` : ''}`;
}

/** What can be seen: cracks first, because a crack ends it. */
export function Look(props: LookProps) {
  const { job, refused, readOnly } = props;
  const kept = job.sections.looked;
  const body = kept?.body;
  const form = <LookForm {...props} />;
  return (
    <>
      {body && <Seen body={body} />}
      {kept && <Who kept={kept} />}
      <Caution kind="crack" />
      {body?.crackTest === 'not-done' && job.outcome !== 'replace' && (
        <p>
          It may be decided and cut, but to be used it is not signed before somebody has looked for cracks.
        </p>
      )}
      {body?.crackTest === 'found' && (
        <p>
          Only a new inspection by a second person, by dye or magnetic particle and with what was seen, lifts
          a crack.
        </p>
      )}
      {!readOnly &&
        (kept ? (
          <details class="change" open={refused !== null || job.stage === 'to-look'}>
            <summary>Look again</summary>
            {form}
          </details>
        ) : (
          form
        ))}
    </>
  );
}

function Seen({ body }: { body: Looked }) {
  return (
    <ul class="plain">
      <li>
        <Sign
          status={
            body.crackTest === 'found' ? 'fail' : body.crackTest === 'none-found' ? 'pass' : 'not-checked'
          }
        />{' '}
        {CRACK_WORD[body.crackTest]}
        {body.crackMethod && ` ${METHOD_WORD[body.crackMethod]}`}
        {body.crackNote !== '' && `: ${body.crackNote}`}
      </li>
      {body.items.map((one) => (
        <li>
          <Sign status={one.result === 'fault' && one.final ? 'fail' : RESULT_STATUS[one.result]} />{' '}
          {ITEM_WORD[one.item]}: {RESULT_WORD[one.result]}
          {one.final && one.result === 'fault' && ', and nothing can mend it'}
          {one.note !== '' && `: ${one.note}`}
        </li>
      ))}
    </ul>
  );
}

function LookForm({ job, initials, refused }: LookProps) {
  const kept = job.sections.looked;
  const fields = refused?.fields ?? fieldsOfLooked(job);
  const error = errorsOf(refused?.faults ?? []);
  return (
    <JobForm
      id="looked-form"
      action={`/jobs/${encodeURIComponent(job.number)}/looked`}
      revision={job.revision}
      initials={initials}
      signed={job.stage === 'signed'}
      refused={refused}
      submit={kept ? 'Save as a new revision' : 'Keep what was seen'}
    >
      <div class="fields">
        <Choice
          label="Cracks"
          name="crackTest"
          as="radios"
          value={fields.crackTest}
          error={error('crackTest')}
          options={[
            { value: 'none-found', label: 'none found' },
            { value: 'found', label: 'a crack was found' },
            { value: 'not-done', label: 'not looked for yet' },
          ]}
        />
        <Choice
          label="How they were looked for"
          name="crackMethod"
          as="radios"
          value={fields.crackMethod}
          error={error('crackMethod')}
          options={[
            { value: 'dye', label: 'dye penetrant' },
            { value: 'magnetic-particle', label: 'magnetic particle' },
            { value: 'by-eye', label: 'by eye' },
          ]}
        />
        <Field
          label="What was seen"
          name="crackNote"
          value={fields.crackNote}
          error={error('crackNote')}
          size="full"
          optional
        />
      </div>
      {LOOK_ITEMS.map((item) => (
        <ItemFields item={item} fields={fields} />
      ))}
    </JobForm>
  );
}

function ItemFields({ item, fields }: { item: LookItem; fields: Readonly<Record<string, string>> }) {
  return (
    <div class="fields look-item">
      <Choice
        label={ITEM_WORD[item]}
        name={`result.${item}`}
        value={fields[`result.${item}`]}
        options={[
          { value: 'not-looked', label: 'not looked at' },
          { value: 'sound', label: 'sound' },
          { value: 'fault', label: 'fault' },
        ]}
      />
      <Field
        label={`${ITEM_WORD[item]}: note`}
        name={`note.${item}`}
        value={fields[`note.${item}`]}
        optional
      />
      <Tick
        label="Nothing can mend it"
        name={`final.${item}`}
        value="1"
        checked={fields[`final.${item}`] === '1'}
      />
    </div>
  );
}

function fieldsOfLooked(job: Job): Record<string, string> {
  const body = job.sections.looked?.body;
  const fields: Record<string, string> = {
    crackTest: body?.crackTest ?? 'not-done',
    crackMethod: body?.crackMethod ?? '',
    crackNote: body?.crackNote ?? '',
  };
  for (const item of LOOK_ITEMS) {
    const one = body?.items.find((candidate) => candidate.item === item);
    fields[`result.${item}`] = one?.result ?? 'not-looked';
    fields[`note.${item}`] = one?.note ?? '';
    if (one?.final) fields[`final.${item}`] = '1';
  }
  return fields;
}
