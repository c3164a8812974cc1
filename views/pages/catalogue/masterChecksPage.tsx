import type { CatalogueGauge, Entry } from '../../../shared/words/catalogue.ts';
import { printDay } from '../../../shared/words/day.ts';
import { MASTER_CHECK } from '../../../shared/words/fields/masterCheck.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import type { MasterCheck } from '../../../shared/words/gauges/masterChecks.ts';
import { briefLength } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import { ChecksOverTime } from '../../drawings/checksOverTime.tsx';
import { type Frame, may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';
import { Hidden } from '../../parts/form/hidden.tsx';
import { Questions } from '../../parts/form/questionAt.tsx';
import { WhoField } from '../../parts/form/whoField.tsx';
import { When } from '../../parts/when.tsx';

export interface MasterChecksProps {
  readonly frame: Frame;
  readonly gauge: Entry<'gauge'>;
  /** Oldest first, withdrawn ones too. */
  readonly checks: readonly MasterCheck[];
  readonly limitMm: number | null;
  /** What they say today; null where nothing is asked and nothing was checked. */
  readonly finding: Finding | null;
  readonly drift: readonly { readonly day: string; readonly offMm: number }[];
  /** What a drift amounts to in a month; null where there is none. */
  readonly driftMmPerMonth: number | null;
  readonly sentId: string;
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly doubts: readonly DoubtedLength[];
  /** The check whose withdrawal was refused. */
  readonly withdrawing: string | null;
}

/** A gauge on its master: the next check in seconds, and all before it over time. */
export function MasterChecksPage(props: MasterChecksProps) {
  const { frame, gauge, checks, finding } = props;
  const stand = checks.filter(({ withdrawn }) => withdrawn === null);
  const address = addressOf(gauge);
  return (
    <Layout title={`${gauge.name} on its master`} here="catalogue" {...frame}>
      <h1>{gauge.name} on its master</h1>
      <p class="hint">
        Read a gauge block, ring or rod of known size. The master counts as exact.{' '}
        <a href={`/catalogue/gauge/${encodeURIComponent(gauge.id)}`}>The gauge in the catalog</a>
      </p>
      {stand.length > 0 && <Drawn {...props} stand={stand} />}
      {finding !== null && <FindingList findings={[finding]} unit={frame.lengthUnit} />}
      {may(frame, 'recorder') ? (
        <NewCheck {...props} address={address} />
      ) : (
        <p class="note">Only who records readings can add a check.</p>
      )}
      {checks.length > 0 && <Table {...props} address={address} />}
    </Layout>
  );
}

const addressOf = ({ id }: Entry<'gauge'>) => `/gauges/${encodeURIComponent(id)}/checks`;

const isOff = (offMm: number, limitMm: number | null) => limitMm !== null && Math.abs(offMm) > limitMm + 1e-9;
const off = ({ readingMm, masterMm }: MasterCheck) => readingMm - masterMm;

function Drawn(props: MasterChecksProps & { readonly stand: readonly MasterCheck[] }) {
  const { frame, gauge, stand, limitMm, drift, driftMmPerMonth } = props;
  const unit = frame.lengthUnit;
  const { calibrationUMm } = gauge.body;
  return (
    <figure class="drawing" id="checks-drawn">
      <p class="view-caption">
        off its master <small>{unit}</small>
      </p>
      <ChecksOverTime
        checks={stand.map((one) => ({ day: one.day, offMm: off(one), off: isOff(off(one), limitMm) }))}
        uncertaintyMm={calibrationUMm}
        limitMm={limitMm}
        drift={drift}
        unit={unit}
      />
      <figcaption>
        {limitMm === null
          ? 'No uncertainty is entered for this gauge, so there is no limit to hold it to.'
          : `Red lines: how far off it may read, ${briefLength(limitMm, unit)}, from ${figuresIn(gauge.body)}.`}
        {calibrationUMm !== null && ` Gray: the certificate’s U, ${briefLength(calibrationUMm, unit)}.`}
        {driftMmPerMonth !== null &&
          ` Dashed: a drift of ${briefLength(driftMmPerMonth, unit)} a month, 95 % sure. A straight line through at least 5 checks under one calibration; common practice, no source.`}
      </figcaption>
    </figure>
  );
}

/** Which of its figures the limit was made of. */
function figuresIn({ calibrationUMm, resolutionMm, repeatabilityMm }: CatalogueGauge): string {
  const parts = [
    ...(calibrationUMm === null ? [] : ['uncertainty']),
    ...(resolutionMm === null ? [] : ['resolution']),
    ...(repeatabilityMm === null ? [] : ['repeatability']),
  ];
  return `its ${parts.join(', ')} in the catalog`;
}

function NewCheck(props: MasterChecksProps & { readonly address: string }) {
  const { frame, fields, faults, doubts, sentId, withdrawing, address } = props;
  const own = withdrawing === null ? faults : [];
  return (
    <form method="post" action={address} id="check-form">
      <h2>Add a check</h2>
      <ErrorSummary faults={own} />
      <Hidden fields={{ sentId, unit: frame.lengthUnit }} />
      <Questions doubts={doubts} fields={fields}>
        <div class="fields">
          <Boxes of={MASTER_CHECK} fields={fields} faults={own} writing={frame} />
          <WhoField
            known={frame.initials}
            typed={withdrawing === null ? fields.who : undefined}
            error={errorsOf(own)('who')}
          />
        </div>
      </Questions>
      <div class="actions">
        <button class="button first" type="submit" id="save-check">
          Save this check
        </button>
      </div>
    </form>
  );
}

function Table(props: MasterChecksProps & { readonly address: string }) {
  const { frame, checks, limitMm, address } = props;
  const unit = frame.lengthUnit;
  return (
    <section>
      <h2>Every check</h2>
      <section class="scroll" tabindex={0} aria-label="Every check">
        <table class="figures" id="checks">
          <thead>
            <tr>
              <th scope="col">Day</th>
              <th scope="col">Master</th>
              <th scope="col">Read</th>
              <th scope="col">Off</th>
              <th scope="col">Result</th>
              <th scope="col">By</th>
              <th scope="col">Mistyped</th>
            </tr>
          </thead>
          <tbody>
            {checks.toReversed().map((one) => (
              <tr>
                <td>{printDay(one.day)}</td>
                <td>{briefLength(one.masterMm, unit)}</td>
                <td>
                  {briefLength(one.readingMm, unit)}
                  {one.confirmed && <small> confirmed</small>}
                </td>
                <td>{briefLength(off(one), unit)}</td>
                <td>{resultOf(one, limitMm)}</td>
                <td>{one.who}</td>
                <td>
                  <Withdraw {...props} check={one} address={address} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p>
        <a href={`${address}.csv`} id="checks-csv">
          All checks as CSV
        </a>
      </p>
    </section>
  );
}

function resultOf(check: MasterCheck, limitMm: number | null): string {
  if (check.withdrawn !== null) return 'Withdrawn';
  if (limitMm === null) return 'Not checked';
  return isOff(off(check), limitMm) ? 'Not OK' : 'OK';
}

/** Taken back with a reason; what was taken back says by whom and why. */
function Withdraw(props: MasterChecksProps & { readonly check: MasterCheck; readonly address: string }) {
  const { frame, check, address, withdrawing, faults, fields } = props;
  if (check.withdrawn !== null) {
    const { who, at, why } = check.withdrawn;
    return (
      <>
        Withdrawn by {who}, <When at={at} />: {why}
      </>
    );
  }
  if (!may(frame, 'recorder')) return null;
  const here = withdrawing === check.id;
  const error = here ? errorsOf(faults) : () => null;
  return (
    <details class="change" open={here}>
      <summary>Withdraw</summary>
      <form method="post" action={`${address}/withdraw`}>
        <Hidden fields={{ id: check.id }} />
        <Field
          id={`why-${check.id}`}
          label="Why it is withdrawn"
          name="why"
          value={here ? fields.why : ''}
          error={error('why')}
        />
        <Field
          id={`who-${check.id}`}
          label="Your initials"
          name="who"
          value={here ? fields.who : frame.initials}
          error={error('who')}
          size="figure"
          input={{ maxLength: 8 }}
        />
        <div class="actions">
          <button class="button" type="submit">
            Withdraw this check
          </button>
        </div>
      </form>
    </details>
  );
}
