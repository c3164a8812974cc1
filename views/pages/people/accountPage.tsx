import { type Person, ROLE_WORD, type SessionLine } from '../../../shared/words/people.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { When } from '../../parts/when.tsx';
import { NewPasswordFields, PasswordField } from './signInPage.tsx';

export interface AccountProps {
  readonly frame: Frame;
  readonly person: Person;
  readonly mustChoosePassword: boolean;
  readonly sessions: readonly SessionLine[];
  /** The page to go on to after a temporary password. */
  readonly back: string;
  /** What was typed, where it was refused. */
  readonly fields: Readonly<Record<string, string>>;
  readonly faults: readonly Fault[];
}

/** What somebody may do about their own account. */
export function AccountPage(props: AccountProps) {
  const { frame, person, mustChoosePassword, sessions, back, fields, faults } = props;
  const error = errorsOf(faults);
  return (
    <Layout title="Your account" {...frame}>
      <h1>{person.name}</h1>
      {mustChoosePassword ? (
        <p class="note">You signed in with a temporary password. Choose your own before you go on.</p>
      ) : (
        <p class="hint">
          Your changes are signed {person.initials}. Your role: {ROLE_WORD[person.role]}.
        </p>
      )}
      <section>
        <h2>Change your password</h2>
        <form method="post" action="/account/password" id="password-form">
          <ErrorSummary faults={faults} />
          {mustChoosePassword && <input type="hidden" name="back" value={back} />}
          <div class="fields">
            <PasswordField
              label="Current password"
              name="old"
              autocomplete="current-password"
              {...(mustChoosePassword && { hint: 'The one you just signed in with' })}
              value={error('old') === null ? fields.old : undefined}
              error={error('old')}
            />
            <NewPasswordFields error={error} fields={fields} />
          </div>
          <div class="actions">
            <button class="button first" type="submit" id="change-password">
              Change password
            </button>
          </div>
        </form>
        <p class="hint">This signs you out everywhere else.</p>
      </section>
      {!mustChoosePassword && (
        <section>
          <h2>Where you are signed in</h2>
          <Sessions sessions={sessions} />
          <form method="post" action="/account/sign-out" class="actions">
            <button class="button" type="submit" id="sign-out-everywhere">
              Sign out everywhere
            </button>
          </form>
        </section>
      )}
    </Layout>
  );
}

export function Sessions({ sessions }: { sessions: readonly SessionLine[] }) {
  if (sessions.length === 0) return <p>Nowhere.</p>;
  return (
    <ul class="plain">
      {sessions.map((session) => (
        <li>
          <b>{session.device.replace(/^./, (first) => first.toUpperCase())}</b>, since{' '}
          <When at={session.beganAt} />, last used <When at={session.usedAt} />
        </li>
      ))}
    </ul>
  );
}
