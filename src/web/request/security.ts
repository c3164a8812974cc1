import type { NextFunction, Request, Response } from 'express';
import helmet from 'helmet';
import { OtherSite } from './pageErrors.ts';

/**
 * Headers for a program that must also work over plain HTTP inside a shop: no upgrade to https, no HSTS, and
 * `same-origin` as referrer policy so that form posts carry an Origin to compare.
 */
export const headers = helmet({
  contentSecurityPolicy: {
    useDefaults: false,
    directives: {
      defaultSrc: ["'none'"],
      scriptSrc: ["'self'"],
      styleSrc: ["'self'"],
      imgSrc: ["'self'", 'data:'],
      fontSrc: ["'self'"],
      connectSrc: ["'self'"],
      formAction: ["'self'"],
      baseUri: ["'none'"],
      frameAncestors: ["'none'"],
    },
  },
  strictTransportSecurity: false,
  referrerPolicy: { policy: 'same-origin' },
  crossOriginOpenerPolicy: false,
  originAgentCluster: false,
});

/**
 * Answers only to names it knows as its own, so that a stranger's name pointed at this address reads nothing; whoever
 * came by a wrong name is told the right ones.
 */
export function onlyOwnNames(own: () => ReadonlySet<string>, right: (port: number) => readonly string[]) {
  return (req: Request, res: Response, next: NextFunction): void => {
    const host = (req.headers.host ?? '').toLowerCase().replace(/:\d+$/, '');
    if (own().has(host)) {
      next();
      return;
    }
    const addresses = right(req.socket.localPort ?? 80);
    const message = `"${host.slice(0, 100)}" is not an address of this shop.`;
    if (/^\/api(\/|$)/i.test(req.path)) {
      const told = `${message} Use ${addresses.join(' or ')}.`;
      res.status(421).json({ error: { code: 'wrong-address', message: told, fields: [] } });
      return;
    }
    const links = addresses.map((one) => `<li><a href="${inHtml(one)}">${inHtml(one)}</a></li>`).join('');
    res
      .status(421)
      .type('html')
      .send(plainPage('Wrong address', `<p>${inHtml(message)} Use:</p><ul>${links}</ul>`));
  };
}

/** A page without style or script, since neither is served to whoever comes this way; readable on a phone too. */
function plainPage(title: string, inside: string): string {
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${title}</title></head><body><h1>${title}</h1>${inside}</body></html>\n`;
}

function inHtml(text: string): string {
  return text.replace(/[&<>"]/g, (one) => `&#${one.charCodeAt(0)};`);
}

/**
 * A write must come from a page of our own. Browsers send Origin with every post; a script sends none, and is
 * taken only when it carries no cookie.
 */
export const onlyOwnPagesWrite =
  (publicUrl: string | null) =>
  (req: Request, res: Response, next: NextFunction): void => {
    const reads = req.method === 'GET' || req.method === 'HEAD';
    const origin = req.headers.origin;
    if (reads || (origin === undefined ? !req.headers.cookie : sameHost(origin, req.headers.host))) {
      next();
      return;
    }
    // The page is the shop's own, and something on the way gave the request another name.
    const renamed = publicUrl !== null && origin === publicUrl;
    const asked = String(req.headers.host).slice(0, 100);
    const from = (origin ?? '').slice(0, 100);
    const other = /^https?:/.test(from)
      ? ` It came from ${from}, the request for "${asked}". If ${from} is this shop's own address, set PUBLIC_URL to it, and set the proxy in between to pass on the Host header.`
      : '';
    const message = renamed
      ? `Nothing was saved: the page came from ${publicUrl}, the request for "${asked}". Set the proxy in between to pass on the Host header.`
      : `This change came from another site, so nothing was saved. Open the page from this program and try again.${other}`;
    if (req.path.startsWith('/api/')) {
      res.status(403).json({ error: { code: 'other-site', message, fields: [] } });
    } else {
      next(new OtherSite(message));
    }
  };

function sameHost(origin: string, host: string | undefined): boolean {
  try {
    return new URL(origin).host === host?.toLowerCase();
  } catch {
    return false;
  }
}
