import type { Request, RequestHandler, Response } from 'express';
import type { PageContext } from './pageContext.ts';

/** What one address of the program does. */
export type Route = (context: PageContext, req: Request, res: Response) => Promise<void>;

/** The route as Express calls it. */
export function handledIn(context: PageContext): (route: Route) => RequestHandler {
  return (route) => (req, res) => route(context, req, res);
}
