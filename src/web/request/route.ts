import type { Request, RequestHandler, Response } from 'express';
import type { House } from './house.ts';

/** What one address of the program does. */
export type Route = (house: House, req: Request, res: Response) => Promise<void>;

/** The route as Express calls it. */
export function handledIn(house: House): (route: Route) => RequestHandler {
  return (route) => (req, res) => route(house, req, res);
}
