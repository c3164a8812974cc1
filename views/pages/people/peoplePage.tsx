import {
  type Person,
  type PersonChange,
  type PersonLine,
  ROLE_WORD,
  ROLES,
  type Role,
  type SessionLine,
  type TokenLine,
} from '../../../shared/words/people.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { EmptyState } from '../../parts/emptyState.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Choice, Field } from '../../parts/form/fieldBox.tsx';
import { When } from '../../parts/when.tsx';
import { Sessions } from './accountPage.tsx';
import { InitialsField } from './signInPage.tsx';

type Fields = Readonly<Record<string, string>>;

/** A password or token just made, which is not in the records. */
export interface ToldOnce {
  readonly kind: 'password' | 'token';
  readonly of: string;
  readonly secret: string;
  /** Names of tokens that a new password put out of use. */
  readonly withdrawn?: readonly string[];
}

export interface PeopleProps {
  readonly frame: Frame;
  readonly people: readonly Person[];
  readonly tokens: readonly TokenLine[];
  readonly history: readonly PersonLine[];
  readonly fields: Fields;
  readonly faults: readonly Fault[];
  readonly toldOnce: ToldOnce | null;
}

const ROLE_MAY: Readonly<Record<Role, string>> = {
  reader: 'Reader: looks things up, prints slips and sheets',
  recorder: 'Recorder: also receives, measures, decides and signs',
  keeper: 'Manager: also changes the catalog, shop limits, people and backups',
};

const CHANGE_WORDS: Readonly<Record<PersonChange, string>> = {
  added: 'added',
  changed: 'changed',
  retired: 'retired',
  reinstated: 'reinstated',
  'start-password': 'got a new password',
  'own-password': 'chose a password',
  token: 'token issued',
  'token-withdrawn': 'token withdrawn',
};

/** Who may come in, and as what. */
export function PeoplePage({ frame, people, tokens, history, fields, faults, toldOnce }: PeopleProps) {
  const forToken = faults.some((fault) => fault.path.startsWith('token'));
  return (
    <Layout title="People" here="people" {...frame}>
      <h1>People</h1>
      {toldOnce && <Told told={toldOnce} />}
      <ul class="rows">
        {people.map((person) => (
          <li>
            <a class="row entry-row" href={`/people/${person.id}`} id={`person-${person.id}`}>
              <b>{person.name}</b>
              <span class="row-text">
                {person.initials}, {ROLE_WORD[person.role]}
              </span>
              <span class="state-word">{person.retired && 'retired'}</span>
            </a>
          </li>
        ))}
      </ul>
      <AddSomebody fields={fields} faults={forToken ? [] : faults} />
      <Tokens tokens={tokens} people={people} fields={fields} faults={forToken ? faults : []} />
      <section id="history">
        <details>
          <summary>
            <h2>All changes, newest first</h2>
          </summary>
          <ul class="plain">
            {history.map((line) => (
              <li>
                {line.name}: {CHANGE_WORDS[line.what]}, {ROLE_WORD[line.role]}; {line.who},{' '}
                <When at={line.at} />
                {line.why !== '' && `: ${line.why}`}
              </li>
            ))}
          </ul>
        </details>
      </section>
    </Layout>
  );
}

function AddSomebody({ fields, faults }: Pick<PeopleProps, 'fields' | 'faults'>) {
  const error = errorsOf(faults);
  return (
    <section id="add">
      <h2>Add a person</h2>
      <form method="post" action="/people" id="add-form">
        <ErrorSummary faults={faults} />
        <div class="fields">
          <Field label="Name" name="name" value={fields.name} error={error('name')} required />
          <InitialsField label="Initials" value={fields.newInitials} error={error('initials')} />
          <RoleChoice value={fields.role ?? 'recorder'} error={error('role')} />
        </div>
        <div class="actions">
          <button class="button first" type="submit" id="add-person">
            Add, and show a password
          </button>
        </div>
      </form>
      <p class="hint">
        The password is shown once and works for a week. They choose their own when they first sign in.
      </p>
    </section>
  );
}

function Tokens({
  tokens,
  people,
  fields,
  faults,
}: Pick<PeopleProps, 'tokens' | 'people' | 'fields' | 'faults'>) {
  const error = errorsOf(faults);
  const nameOf = (id: number) => people.find((person) => person.id === id)?.name ?? '';
  return (
    <section id="tokens">
      <h2>Tokens for scripts</h2>
      {tokens.length === 0 ? (
        <p>
          None yet. A script that calls /api needs one. It acts for a person and signs with their initials.
        </p>
      ) : (
        <ul class="plain">
          {tokens.map((token) => (
            <Token token={token} name={nameOf(token.personId)} />
          ))}
        </ul>
      )}
      <form method="post" action="/tokens" id="token-form">
        <ErrorSummary faults={faults} />
        <div class="fields">
          <Field
            label="What it is for"
            name="tokenName"
            value={fields.tokenName}
            error={error('tokenName')}
            hint="Such as: gauge at lathe 2"
            required
          />
          <Choice
            label="Acts for"
            name="tokenPerson"
            value={fields.tokenPerson}
            error={error('tokenPerson')}
            options={people
              .filter((person) => !person.retired)
              .map((person) => ({ value: String(person.id), label: `${person.name}, ${person.initials}` }))}
          />
          <Choice
            label="Role"
            name="tokenRole"
            value={fields.tokenRole ?? 'recorder'}
            error={error('tokenRole')}
            options={ROLES.map((role) => ({ value: role, label: ROLE_WORD[role] }))}
          />
        </div>
        <div class="actions">
          <button class="button" type="submit" id="issue-token">
            Issue a token and show it
          </button>
        </div>
      </form>
    </section>
  );
}

function Token({ token, name }: { token: TokenLine; name: string }) {
  return (
    <li>
      <b>{token.name}</b>: {ROLE_WORD[token.role]}, for {name}; issued by {token.issuedBy},{' '}
      <When at={token.issuedAt} />;{' '}
      {token.usedAt === null ? (
        'never used'
      ) : (
        <>
          last used <When at={token.usedAt} />
        </>
      )}
      {token.withdrawnAt === null ? (
        <form method="post" action={`/tokens/${token.id}/withdraw`}>
          <button class="button" type="submit" id={`withdraw-${token.id}`}>
            Withdraw {token.name}
          </button>
        </form>
      ) : (
        <>
          ; withdrawn <When at={token.withdrawnAt} />
        </>
      )}
    </li>
  );
}

function Told({ told }: { told: ToldOnce }) {
  return (
    <section class="note" role="status" id="told-once">
      <h2>{told.kind === 'password' ? `Password for ${told.of}` : `Token "${told.of}"`}</h2>
      <p>
        <code id="secret">{told.secret}</code>
      </p>
      <p>Only you see it, on this page, for ten minutes. Write it down now; after that, make a new one.</p>
      {told.withdrawn?.map((token) => (
        <p>The token "{token}" no longer works. Issue a new one if its script is still needed.</p>
      ))}
    </section>
  );
}

function RoleChoice({ value, error }: { value: string; error: string | null }) {
  return (
    <Choice
      label="Role"
      name="role"
      as="radios"
      value={value}
      error={error}
      options={ROLES.map((role) => ({ value: role, label: ROLE_MAY[role] }))}
    />
  );
}

export interface PersonProps {
  readonly frame: Frame;
  readonly person: Person;
  readonly sessions: readonly SessionLine[];
  readonly fields: Fields;
  readonly faults: readonly Fault[];
  readonly toldOnce: ToldOnce | null;
  /** Asked once more before somebody is retired. */
  readonly retiring: boolean;
}

/** One person: what a keeper may change about them. */
export function PersonPage(props: PersonProps) {
  const { frame, person, sessions, fields, faults, toldOnce, retiring } = props;
  const action = `/people/${person.id}`;
  return (
    <Layout title={person.name} here="people" {...frame}>
      <h1>
        {person.name}, {person.initials}
        {person.retired && ': retired'}
      </h1>
      {toldOnce && <Told told={toldOnce} />}
      {retiring && <Retiring person={person} fields={fields} />}
      <PersonForm person={person} fields={fields} faults={faults} />
      {!person.retired && (
        <>
          <section>
            <h2>Password</h2>
            <form method="post" action={`${action}/password`} class="actions">
              <button class="button" type="submit" id="new-password">
                Make a new password and show it
              </button>
            </form>
            <p class="hint">
              They are signed out everywhere, and their tokens stop working. They choose their own password
              next.
            </p>
          </section>
          <section>
            <h2>Where they are signed in</h2>
            <Sessions sessions={sessions} />
            {sessions.length > 0 && (
              <form method="post" action={`${action}/sign-out`} class="actions">
                <button class="button" type="submit" id="sign-out-everywhere">
                  Sign out everywhere
                </button>
              </form>
            )}
          </section>
        </>
      )}
      <p>
        <a href="/people">All people</a>
      </p>
    </Layout>
  );
}

function Retiring({ person, fields }: Pick<PersonProps, 'person' | 'fields'>) {
  const action = `/people/${person.id}`;
  return (
    <form method="post" action={`${action}/retire`} class="note" id="retire-form">
      <h2>Retire {person.name}?</h2>
      <p>
        They are signed out everywhere and can’t sign in. What they signed stays, and you can reinstate them.
      </p>
      <input type="hidden" name="from" value={person.revision} />
      <input type="hidden" name="why" value={fields.why ?? ''} />
      <div class="actions">
        <button class="button first" type="submit" id="retire-yes" name="retire" value="yes">
          Yes, retire
        </button>
        <a class="button" href={action} id="retire-no">
          Don’t retire
        </a>
      </div>
    </form>
  );
}

function PersonForm({ person, fields, faults }: Pick<PersonProps, 'person' | 'fields' | 'faults'>) {
  const error = errorsOf(faults);
  const action = `/people/${person.id}`;
  return (
    <form method="post" action={action} id="person-form">
      <ErrorSummary faults={faults} />
      <input type="hidden" name="from" value={person.revision} />
      <div class="fields">
        <Field label="Name" name="name" value={fields.name ?? person.name} error={error('name')} required />
        <RoleChoice value={fields.role ?? person.role} error={error('role')} />
        <Field label="Why" name="why" value={fields.why} error={error('why')} size="full" optional />
      </div>
      <div class="actions">
        <button class="button first" type="submit" id="save">
          Save
        </button>
        {person.retired ? (
          <button class="button" type="submit" id="reinstate" formaction={`${action}/reinstate`}>
            Reinstate
          </button>
        ) : (
          <button class="button" type="submit" id="retire" formaction={`${action}/retire`}>
            Retire
          </button>
        )}
      </div>
    </form>
  );
}

/** While the program answers to this machine alone. */
export function PeopleWithoutAccounts({ frame }: { frame: Frame }) {
  return (
    <Layout title="People" here="people" {...frame}>
      <h1>People</h1>
      <EmptyState title="Nobody signs in here" actions={[{ label: 'To the front page', href: '/' }]}>
        Only this computer can reach the program, so people just enter their initials. To let other computers
        and tablets in, set HOST and start again. Then each person gets an account here.
      </EmptyState>
    </Layout>
  );
}
