import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { lowerFirst } from '../../../shared/words/fields/field.ts';
import { INSPECTED, LOOKED } from '../../../shared/words/fields/job.ts';
import { type Job, LOOK_ITEMS, type Looked } from '../../../shared/words/job.ts';
import { Caution } from '../../parts/caution.tsx';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { Sign } from '../../parts/form/sign.tsx';
import { JobForm, type Refused, Who } from './section.tsx';
import { ITEM_WORD } from './stepWords.ts';

export interface LookProps {
  readonly job: Job;
  readonly writing: Writing;
  /** What is kept, box by box. */
  readonly typed: Readonly<Record<string, string>>;
  readonly initials: string;
  readonly refused: Refused | null;
  readonly readOnly: boolean;
}

const CRACK_WORD = {
  found: 'Crack found',
  'none-found': 'No cracks found',
  'not-done': 'Crack test not done',
} as const;
const CRACK_RESULT = {
  found: 'crack found',
  'none-found': 'no cracks found',
  'not-done': 'not done',
} as const;
const METHOD_WORD = {
  'by-eye': 'by eye',
  dye: 'by dye penetrant',
  'magnetic-particle': 'by magnetic particle',
} as const;
const RESULT_WORD = { 'not-looked': 'not inspected', sound: 'sound', fault: 'fault' } as const;
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
        <p>It can be decided and cut now. It cannot be signed for use until the crack test is done.</p>
      )}
      {body?.crackTest === 'found' && (
        <p>
          Only a second person, by dye or magnetic particle and with a note of what was seen, can clear a
          crack.
        </p>
      )}
      {!readOnly &&
        (kept ? (
          <details class="change" open={refused !== null || job.stage === 'to-look'}>
            <summary>Inspect again</summary>
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
        Crack test: {CRACK_RESULT[body.crackTest]}
        {body.crackMethod && ` ${METHOD_WORD[body.crackMethod]}`}
        {body.crackNote !== '' && `: ${body.crackNote}`}
      </li>
      {body.items.map((one) => (
        <li>
          <Sign status={one.result === 'fault' && one.final ? 'fail' : RESULT_STATUS[one.result]} />{' '}
          {ITEM_WORD[one.item]}: {RESULT_WORD[one.result]}
          {one.final && one.result === 'fault' && ', beyond repair'}
          {one.note !== '' && `: ${one.note}`}
        </li>
      ))}
    </ul>
  );
}

function LookForm({ job, writing, typed, initials, refused }: LookProps) {
  const kept = job.sections.looked;
  const boxes = { fields: refused?.fields ?? typed, faults: refused?.faults ?? [], writing };
  return (
    <JobForm
      id="looked-form"
      action={`/jobs/${encodeURIComponent(job.number)}/looked`}
      revision={job.revision}
      initials={initials}
      signed={job.stage === 'signed'}
      refused={refused}
      submit={kept ? 'Save as a new revision' : 'Save inspection'}
    >
      <div class="fields">
        <Boxes of={LOOKED} {...boxes} />
      </div>
      {LOOK_ITEMS.map((item) => (
        <div class="fields look-item">
          <Boxes of={itemFields(ITEM_WORD[item])} {...boxes} row={item} />
        </div>
      ))}
    </JobForm>
  );
}

/** The boxes of one item, each with the name of the item. */
function itemFields(word: string) {
  const { result, note, final } = INSPECTED;
  return {
    result: { ...result, label: word },
    note: { ...note, label: `${word}: note` },
    final: { ...final, label: `${word}: ${lowerFirst(final.label)}` },
  } as const;
}
