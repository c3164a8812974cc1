import type { Fault } from '../../../shared/words/refusal.ts';
import { type KeptSlip, type SlipCount, type SlipPart, slipName } from '../../../shared/words/stud/slip.ts';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { When } from '../../parts/when.tsx';
import { SlipSheet } from './slipSheet.tsx';

export interface KeptSlipProps {
  readonly frame: Frame;
  readonly slip: KeptSlip;
  /** What is handed over, with the stock as it is now (null: not counted); null where nobody said how many. */
  readonly parts: readonly (SlipPart & { readonly stock: number | null })[] | null;
  readonly counts: readonly SlipCount[];
  /** Numbers of the jobs begun from it. */
  readonly jobs: readonly string[];
  /** What the present calculation would say otherwise; null when it says the same. */
  readonly otherwise: string | null;
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  /** Too few lie on the shelf: asked whether to count it to zero. */
  readonly tooFew: boolean;
}

/** A saved slip: as it was answered, its paper, its stock, and the job begun from it. */
export function KeptSlipPage(props: KeptSlipProps) {
  const { frame, slip, jobs, otherwise } = props;
  const number = slipName(slip.number);
  const address = `/slips/${number}`;
  return (
    <Layout title={`Counter slip ${number}`} here="studs" {...frame}>
      <link rel="stylesheet" href="/assets/slip.css" />
      <h1 id="slip-number">Counter slip {number}</h1>
      <p class="hint">
        Saved by {slip.who}, <When at={slip.at} />
        {slip.customerReference !== '' && `, for ${slip.customerReference}`}.
      </p>
      <div class="actions">
        <a class="button first" href={`${address}/printed`} id="printed">
          Print
        </a>
        {may(frame, 'recorder') && (
          <a class="button" href={`/jobs/new?slip=${number}`} id="begin-job">
            Begin a job from it
          </a>
        )}
        <a class="button" href="/stud">
          Next caller
        </a>
        <a class="button" href="/slips" id="all-slips">
          All slips
        </a>
      </div>
      {jobs.length > 0 && (
        <p id="slip-jobs">
          Jobs begun from it:{' '}
          {jobs.map((job, i) => (
            <>
              {i > 0 && ', '}
              <a href={`/jobs/${encodeURIComponent(job)}`}>{job}</a>
            </>
          ))}
        </p>
      )}
      {otherwise !== null && <p class="note">{otherwise}</p>}
      <Stock {...props} address={address} />
      <SlipSheet
        slip={slip.answered}
        unit={slip.asked.unit}
        shopName={frame.shopName}
        customerReference={slip.customerReference}
        who={slip.who}
        at={slip.at}
        number={number}
      />
    </Layout>
  );
}

/** The parts with their shelf places, and the one press that counts them down. */
function Stock(props: KeptSlipProps & { address: string }) {
  const { frame, parts, counts, fields, faults, tooFew, address } = props;
  const out = counts.at(-1)?.what === 'out';
  const error = errorsOf(faults);
  const who = (
    <Field
      label="Your initials"
      name="who"
      value={fields.who ?? frame.initials}
      error={error('who')}
      size="figure"
      input={{ maxLength: 8 }}
    />
  );
  return (
    <section id="stock">
      <h2>{out ? 'Taken out of stock' : 'Take from the shelf'}</h2>
      {parts === null ? (
        <p>This slip does not say how many studs. Change the stock in the catalog.</p>
      ) : (
        <ul class="plain">
          {parts.map(({ name, count, shelf, stock }) => (
            <li>
              {count} × <b>{name}</b>
              {shelf !== '' && `, shelf ${shelf}`}: {stock === null ? 'not counted' : `${stock} in stock`}
            </li>
          ))}
        </ul>
      )}
      {parts !== null && (
        <form method="post" action={`${address}/${out ? 'back' : 'count'}`} id="stock-form">
          <ErrorSummary faults={faults} />
          <div class="fields">
            {out && (
              <Field
                label="Why they go back"
                name="why"
                value={fields.why}
                error={error('why')}
                size="full"
              />
            )}
            {who}
          </div>
          <div class="actions">
            <button class="button" type="submit" id={out ? 'count-back' : 'count-out'}>
              {out ? 'Put them back in stock' : 'Take them out of stock'}
            </button>
            {tooFew && (
              <button class="button" type="submit" name="toZero" value="1" id="count-to-zero">
                Set the stock to zero
              </button>
            )}
          </div>
        </form>
      )}
      {counts.length > 0 && (
        <ul class="plain" id="stock-history">
          {counts.map(({ what, who: by, at, why, lines }) => (
            <li>
              {what === 'out' ? 'Taken out' : 'Put back'} by {by}, <When at={at} />:{' '}
              {lines.map(({ name, from, to }) => `${name} ${from} → ${to}`).join('; ')}
              {why !== '' && `. Why: ${why}`}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
