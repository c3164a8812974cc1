import type { Fault } from '../../../shared/words/refusal.ts';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { errorsOf } from '../../parts/form/errorsOf.ts';
import { Field } from '../../parts/form/fieldBox.tsx';

type Fields = Readonly<Record<string, string>>;

/** A form that was not taken: where it was going, and what was typed. */
export interface Resend {
  readonly action: string;
  readonly fields: Fields;
}

export interface SignInProps {
  readonly frame: Frame;
  readonly fields: Fields;
  readonly faults: readonly Fault[];
  /** The page to return to. */
  readonly back: string;
  readonly resend: Resend | null;
  /** Something was sent that this page cannot hold: photos. */
  readonly notSent?: boolean;
  /** What makes a new password at the machine. */
  readonly resetCommand: { readonly command: string; readonly folderLeftOut: boolean } | null;
}

export function SignInPage(props: SignInProps) {
  const { frame, fields, faults, back, resend, notSent, resetCommand } = props;
  const error = errorsOf(faults);
  return (
    <Layout title="Sign in" {...frame} signedOut>
      <h1>Sign in</h1>
      {resend !== null && (
        <p class="note">
          You were signed out before this was saved. This page still has it: sign in, then send it again.
        </p>
      )}
      {notSent && (
        <p class="note">
          You were signed out before this was saved. Sign in, then choose it and send it again.
        </p>
      )}
      <form method="post" action="/sign-in" id="sign-in-form">
        <ErrorSummary faults={faults} />
        <input type="hidden" name="back" value={back} />
        {resend !== null && <Carried resend={resend} prefix="again." />}
        {resend !== null && <input type="hidden" name="action" value={resend.action} />}
        <div class="fields">
          <Field
            label="Name or initials"
            name="name"
            value={fields.name}
            error={error('name')}
            required
            input={{ autocomplete: 'username', maxLength: 60 }}
          />
          <PasswordField label="Password" name="password" autocomplete="current-password" />
        </div>
        <div class="actions">
          <button class="button first" type="submit" id="sign-in">
            Sign in
          </button>
        </div>
      </form>
      <p class="hint">Forgot your password? A manager can give you a new one on the People page.</p>
      {resetCommand !== null && (
        <p class="hint">
          The only manager? On the computer the program runs on, in its folder, run{' '}
          <code>{resetCommand.command}</code> with your name or initials.
          {resetCommand.folderLeftOut &&
            ' Open this page on that computer to see the command with its folder.'}
        </p>
      )}
    </Layout>
  );
}

/** Signed in again: the form that was on its way, to be sent now. */
export function ResendPage({ frame, resend }: { frame: Frame; resend: Resend }) {
  return (
    <Layout title="Send it now" {...frame}>
      <h1>You are signed in</h1>
      <p class="why">What you entered is not saved yet. Send it now to save it.</p>
      <form method="post" action={resend.action} id="resend-form">
        <Carried resend={resend} prefix="" />
        <div class="actions">
          <button class="button first" type="submit" id="resend">
            Send it now
          </button>
          <a class="button" href="/" id="leave-it">
            Don’t send
          </a>
        </div>
      </form>
    </Layout>
  );
}

export function Carried({ resend, prefix }: { resend: Resend; prefix: string }) {
  return (
    <>
      {Object.entries(resend.fields).map(([name, value]) => (
        <input type="hidden" name={`${prefix}${name}`} value={value} />
      ))}
    </>
  );
}

/** Filled again only where another box of its form was refused, so that a fault there empties nothing here. */
export function PasswordField(props: {
  label: string;
  name: string;
  autocomplete: string;
  hint?: string;
  value?: string | undefined;
  error?: string | null;
}) {
  const { autocomplete, ...field } = props;
  return <Field {...field} type="password" required input={{ autocomplete, maxLength: 200 }} />;
}

export interface FirstKeeperProps {
  readonly frame: Frame;
  readonly fields: Fields;
  readonly faults: readonly Fault[];
}

/** Nobody is known yet: whoever can read what the program printed becomes the first keeper. */
export function FirstKeeperPage({ frame, fields, faults }: FirstKeeperProps) {
  const error = errorsOf(faults);
  return (
    <Layout title="The first manager" {...frame} signedOut>
      <h1>The first manager</h1>
      <p class="why">
        Nobody has an account yet. The program printed a code in the window where it was started. Enter it to
        become the manager, who gives the others their accounts.
      </p>
      <form method="post" action="/first" id="first-form">
        <ErrorSummary faults={faults} />
        <div class="fields">
          <Field label="Code" name="code" value={fields.code} error={error('code')} required />
          <Field
            label="Your name"
            name="name"
            value={fields.name}
            error={error('name')}
            required
            input={{ autocomplete: 'username', maxLength: 60 }}
          />
          <InitialsField value={fields.newInitials} error={error('initials')} label="Your initials" />
          <NewPasswordFields error={error} fields={fields} />
        </div>
        <div class="actions">
          <button class="button first" type="submit" id="become-keeper">
            Become the manager
          </button>
        </div>
      </form>
    </Layout>
  );
}

/** Initials of an account in the making, which are nobody's yet. */
export function InitialsField(props: { label: string; value?: string; error: string | null }) {
  return (
    <Field
      id="f-initials"
      name="newInitials"
      size="figure"
      hint="Signed under every change; two people never share them"
      input={{ maxLength: 8 }}
      required
      {...props}
    />
  );
}

export function NewPasswordFields(props: { error: (name: string) => string | null; fields: Fields }) {
  const { error, fields } = props;
  const refused = error('password') !== null || error('again') !== null;
  const { password, again } = refused ? {} : fields;
  return (
    <>
      <PasswordField
        label="New password"
        name="password"
        autocomplete="new-password"
        hint="At least 10 characters"
        value={password}
        error={error('password')}
      />
      <PasswordField
        label="New password again"
        name="again"
        autocomplete="new-password"
        value={again}
        error={error('again')}
      />
    </>
  );
}
