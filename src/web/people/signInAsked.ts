import express, { type Request, type Response } from 'express';
import { SignInPage } from '../../../views/pages/people/signInPage.tsx';
import { renderPage } from '../../../views/render.ts';
import { ownAddress } from '../request/ownAddress.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { type Fields, fieldsOf } from '../request/typed.ts';
import { resetCommand } from './resetCommand.ts';

/** Four hundred stations with every field filled are under 64 KB. */
export const readForm = express.urlencoded({ extended: false, limit: '256kb', parameterLimit: 6000 });

/** Answers somebody who has not signed in, or no longer: the sign-in page, which leads back to where they were. */
export async function askToSignIn(context: PageContext, req: Request, res: Response): Promise<void> {
  const reads = req.method === 'GET' || req.method === 'HEAD';
  if (reads && req.headers['hx-request'] === 'true') {
    // A page that asks for itself has what was typed in its address, and may go to the sign-in. Any other stays: it
    // may hold a form, and says that nobody is signed in.
    const page = pathOf(String(req.headers['hx-current-url'] ?? ''));
    if (page?.split('?')[0] === req.path) {
      res.set('HX-Redirect', `/sign-in?back=${encodeURIComponent(ownAddress(req.originalUrl))}`);
    }
    res.status(401).end();
    return;
  }
  const typed = reads ? null : await typedForm(req, res);
  res.status(401).send(
    renderPage(
      SignInPage({
        frame: await frameOf(req, context),
        fields: {},
        back: ownAddress(reads ? req.originalUrl : (pathOf(req.headers.referer ?? '') ?? '/')),
        faults: [],
        notSent: !reads && typed === null,
        resetCommand: resetCommand(context.settings, req),
        resend: typed && { action: ownAddress(req.originalUrl), fields: typed },
      }),
    ),
  );
}

/** What was typed into a form that is not taken; null when it was no plain form. */
export async function typedForm(req: Request, res: Response): Promise<Fields | null> {
  const read = req.body !== undefined;
  const failed = read ? null : await new Promise<unknown>((resolve) => readForm(req, res, resolve));
  if (failed || !req.is('application/x-www-form-urlencoded')) return null;
  return fieldsOf(req.body);
}

function pathOf(address: string): string | null {
  return URL.canParse(address) ? new URL(address).pathname + new URL(address).search : null;
}
