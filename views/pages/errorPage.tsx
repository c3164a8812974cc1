import type { Frame } from '../frame.ts';
import { Layout } from '../layout.tsx';
import { Carried, type Resend } from './people/signInPage.tsx';

export interface ErrorProps {
  readonly frame: Frame;
  readonly title: string;
  readonly sentence: string;
  /** A form that was not saved; this page still has what was typed into it. */
  readonly resend?: Resend | null;
}

/** One sentence: what happened, and what to do. */
export function ErrorPage({ frame, title, sentence, resend = null }: ErrorProps) {
  return (
    <Layout title={title} {...frame}>
      <h1>{title}</h1>
      <p class="why">{sentence}</p>
      {resend !== null && (
        <form method="post" action={resend.action} id="resend-form">
          <p>What you entered is still on this page.</p>
          <Carried resend={resend} prefix="" />
          <div class="actions">
            <button class="button first" type="submit" id="resend">
              Send it again
            </button>
          </div>
        </form>
      )}
      <div class="actions">
        <a class={resend === null ? 'button first' : 'button'} href="/">
          Front page
        </a>
      </div>
    </Layout>
  );
}
