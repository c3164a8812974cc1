import type { ComponentChildren } from 'preact';
import { printInstant } from '../../shared/words/day.ts';
import { CRITERIA } from '../../shared/words/fields/criteria.ts';
import { UNIT_WORD } from '../../shared/words/print.ts';
import type { Fault } from '../../shared/words/refusal.ts';
import { ENTRY_WORD } from '../../shared/words/terms.ts';
import type { Frame } from '../frame.ts';
import { Layout } from '../layout.tsx';
import { type EntryStale, EntryStaleShown } from '../parts/entryHistory.tsx';
import type { DoubtedLength } from '../parts/form/askedHere.ts';
import { Boxes } from '../parts/form/bodyFields.tsx';
import { ErrorSummary } from '../parts/form/errorSummary.tsx';
import { errorsOf } from '../parts/form/errorsOf.ts';
import { Choice, Field } from '../parts/form/fieldBox.tsx';
import { Hidden } from '../parts/form/hidden.tsx';
import { Questions } from '../parts/form/questionAt.tsx';
import { WhoField } from '../parts/form/whoField.tsx';
import { ZONE_SAYS, ZoneField, type ZoneHeld } from '../parts/form/zoneField.tsx';

export type ShopStep = 'shop' | 'limits';
export type EntryStep = 'family' | 'gauge' | 'stud' | 'stack';

export interface SettingUpProps {
  readonly frame: Frame;
  readonly now: Date;
  readonly zone: ZoneHeld;
  /** Of the shop limits; 0 while none were saved. */
  readonly revision: number;
  readonly shopDone: boolean;
  readonly limitsDone: boolean;
  /** The first entry of each kind; null while there is none. */
  readonly first: Readonly<Record<EntryStep, { readonly id: string; readonly name: string } | null>>;
  readonly step: ShopStep | null;
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
  readonly doubts: readonly DoubtedLength[];
  readonly stale: EntryStale | null;
}

/** What is typed in each of the first two steps. */
export const STEP_FIELDS = {
  shop: ['shopName', 'lengthUnit', 'decimalSign', 'timeZone'],
  limits: ['minimumWallMm', 'minimumWallFormula', 'cleanUpAllowanceMm', 'faceRunoutLimitMm', 'confidence'],
} as const satisfies Readonly<Record<ShopStep, readonly (keyof typeof CRITERIA)[]>>;

/** An empty shop, step by step: each is saved by itself, and the page goes on where it was left. */
export function SettingUpPage(props: SettingUpProps) {
  const { frame, shopDone, limitsDone, first } = props;
  const entries = ENTRY_STEPS.map(({ kind }) => first[kind]);
  const done = [shopDone, limitsDone, ...entries.map((entry) => entry !== null)];
  const next = done.indexOf(false);
  const state = (i: number) => (done[i] ? 'done' : i === next ? 'next' : 'later');
  return (
    <Layout title="Set up the shop" here="home" {...frame}>
      <h1>Set up the shop</h1>
      <p class="why">
        Seven steps. Each is saved as you finish it; leave at any time and come back to this page.
      </p>
      <ol class="set-up">
        <Step title="Shop and units" state={state(0)} id="step-shop">
          {shopDone ? <ShopSaved {...props} /> : <ShopForm {...props} />}
        </Step>
        <Step title="Limits" state={state(1)} id="step-limits">
          {limitsDone ? (
            <p>
              Saved. <a href="/criteria">All shop limits</a>
            </p>
          ) : (
            shopDone && <LimitsForm {...props} />
          )}
        </Step>
        {ENTRY_STEPS.map(({ kind, says }, i) => (
          <Step title={`First ${ENTRY_WORD[kind].one}`} state={state(i + 2)} id={`step-${kind}`}>
            <EntryOf kind={kind} says={says} entry={first[kind]} isNext={state(i + 2) === 'next'} />
          </Step>
        ))}
        <Step title="Check the first cover" state={next < 0 ? 'next' : 'later'} id="step-check">
          {next < 0 && <FirstCheck first={first} />}
        </Step>
      </ol>
    </Layout>
  );
}

const ENTRY_STEPS: readonly { readonly kind: EntryStep; readonly says: string }[] = [
  {
    kind: 'family',
    says: 'Take a cover in hand, best a new one: count its studs, measure the bolt circle, the friction surface inside and out, and the wall.',
  },
  { kind: 'gauge', says: 'The gauge walls are read with, and what its certificate says.' },
  { kind: 'stud', says: 'A stud in hand: thread, lengths, and the mark on its head.' },
  { kind: 'stack', says: 'The flexplate it bolts to: each layer with its thickness and hole.' },
];

const SAID = { done: 'Done', next: 'Now', later: 'Later' } as const;

function Step({
  title,
  state,
  id,
  children,
}: {
  title: string;
  state: keyof typeof SAID;
  id: string;
  children: ComponentChildren;
}) {
  return (
    <li id={id} aria-current={state === 'next' ? 'step' : undefined}>
      <h2>
        {title} <small>{SAID[state]}</small>
      </h2>
      {children}
    </li>
  );
}

function ShopSaved({ frame, now, zone }: SettingUpProps) {
  return (
    <p>
      {frame.shopName}, lengths in {UNIT_WORD[frame.lengthUnit]}. Here it is {printInstant(zone.holds, now)} (
      {zone.holds}). {ZONE_SAYS[zone.by]} <a href="/criteria">Change it under Shop limits</a>
    </p>
  );
}

function ShopForm(props: SettingUpProps) {
  const { frame, now, zone, step } = props;
  const { fields, faults, error } = sentOf(props, 'shop');
  const choice = (key: 'lengthUnit' | 'decimalSign') => (
    <Choice
      label={CRITERIA[key].label}
      name={key}
      as="radios"
      value={fields[key]}
      error={error(key)}
      options={Object.entries(CRITERIA[key].options).map(([value, label]) => ({ value, label }))}
    />
  );
  return (
    <form method="post" action="/setup/shop" id="shop-form">
      <Head {...props} step="shop" faults={faults} />
      <div class="fields">
        <Field
          label={CRITERIA.shopName.label}
          name="shopName"
          value={fields.shopName}
          error={error('shopName')}
          input={{ maxLength: CRITERIA.shopName.most }}
        />
        {choice('lengthUnit')}
        {choice('decimalSign')}
        <ZoneField
          value={step === 'shop' ? fields.timeZone : zone.holds}
          error={error('timeZone')}
          zone={zone}
        />
        <WhoField known={frame.initials} typed={fields.who} error={error('who')} />
      </div>
      <p class="hint">Here it is {printInstant(zone.holds, now)}.</p>
      <div class="actions">
        <button class="button first" type="submit" id="save-shop">
          Save and go on
        </button>
      </div>
    </form>
  );
}

function LimitsForm(props: SettingUpProps) {
  const { frame } = props;
  const { fields, faults, error } = sentOf(props, 'limits');
  return (
    <form method="post" action="/setup/limits" id="limits-form">
      <Head {...props} step="limits" faults={faults} />
      <p class="hint">
        The program has no limits of its own. A minimum wall comes from the maker of the cover or from whoever
        answers for the shop’s work; without one every answer is advice only.
      </p>
      <Questions doubts={faults.length > 0 ? props.doubts : []} fields={fields}>
        <div class="fields">
          <Boxes of={CRITERIA} only={STEP_FIELDS.limits} fields={fields} faults={faults} writing={frame} />
          <WhoField known={frame.initials} typed={fields.who} error={error('who')} />
        </div>
      </Questions>
      <div class="actions">
        <button class="button first" type="submit" id="save-limits">
          Save and go on
        </button>
      </div>
    </form>
  );
}

function sentOf({ step, fields, faults }: SettingUpProps, own: ShopStep) {
  const here = step === own;
  return {
    fields: here ? fields : {},
    faults: here ? faults : [],
    error: errorsOf(here ? faults : []),
  };
}

function Head({
  frame,
  revision,
  step,
  faults,
  stale,
}: Omit<SettingUpProps, 'step'> & { readonly step: ShopStep }) {
  const here = faults.length > 0 || stale !== null;
  return (
    <>
      {here && stale !== null && <EntryStaleShown stale={stale} />}
      <ErrorSummary faults={faults} />
      <Hidden fields={{ from: String(revision), unit: frame.lengthUnit, step }} />
    </>
  );
}

function EntryOf({
  kind,
  says,
  entry,
  isNext,
}: {
  kind: EntryStep;
  says: string;
  entry: { readonly id: string; readonly name: string } | null;
  isNext: boolean;
}) {
  if (entry !== null)
    return (
      <p>
        <a href={`/catalogue/${kind}/${encodeURIComponent(entry.id)}`}>{entry.name}</a>
      </p>
    );
  return (
    <>
      <p class="hint">{says}</p>
      {isNext && (
        <div class="actions">
          <a
            class="button first"
            href={`/catalogue/${kind}/new?back=${encodeURIComponent('/setup')}`}
            id={`add-${kind}`}
          >
            Add the {ENTRY_WORD[kind].one}
          </a>
        </div>
      )}
    </>
  );
}

/** With what was set up: the cover type and the gauge, the stack and the stud. */
function FirstCheck({ first }: Pick<SettingUpProps, 'first'>) {
  const cover = new URLSearchParams({ family: first.family!.id, wallGauge: first.gauge!.id });
  const stud = new URLSearchParams({ stack: first.stack!.id, stud: first.stud!.id });
  return (
    <>
      <p class="hint">
        The cover type, the gauge, the stud and the stack are chosen for you; the walls are yours to read.
      </p>
      <div class="actions">
        <a class="button first" href={`/cover?${cover}`} id="check-first">
          Check the first cover
        </a>
        <a class="button" href={`/stud?${stud}`} id="check-stud">
          See whether the stud fits
        </a>
        <a class="button" href="/jobs/new" id="first-job">
          Receive the first job
        </a>
      </div>
    </>
  );
}
