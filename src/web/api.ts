import express, { type NextFunction, type Request, type Response, Router } from 'express';
import { type ApiCall, type ApiNeeds, apiCalls } from './apiCalls.ts';
import { ApiError, answerError, BODY_LIMIT } from './apiErrors.ts';
import { openApi } from './openapi.ts';

/**
 * The JSON interface: the same calculations as the pages, told in plain numbers. Mounted under /api. Everything
 * that leaves, errors too, is JSON, which has no −0, NaN or infinity.
 */
export function apiRouter(needs: ApiNeeds): Router {
  const router = Router();
  router.use((_req, res, next) => {
    res.set('Cache-Control', 'no-store');
    next();
  });
  for (const call of apiCalls) answerCall(router, call, needs);
  router
    .route('/openapi.json')
    .get(async (_req, res) => {
      res.json(await openApi());
    })
    .all(onlyMethod('GET'));
  router.use((req) => {
    const path = `${req.baseUrl}${req.path}`.slice(0, 100);
    throw new ApiError(
      404,
      'no-such-path',
      `There is nothing at ${path}; /api/openapi.json lists what there is.`,
    );
  });
  router.use(answerError);
  return router;
}

const parse = express.json({ limit: BODY_LIMIT, strict: false });

function answerCall(router: Router, { path, answer }: ApiCall, needs: ApiNeeds): void {
  router
    .route(path)
    .post(onlyJson, parse, async (req, res) => {
      res.json(await answer(req.body, needs));
    })
    .all(onlyMethod('POST'));
}

function onlyJson(req: Request, _res: Response, next: NextFunction): void {
  const { 'content-length': length, 'transfer-encoding': encoding } = req.headers;
  if (encoding === undefined && (length === undefined || length === '0')) {
    throw new ApiError(400, 'malformed-json', 'The body is empty; send a JSON object.');
  }
  if (!req.is('application/json')) {
    throw new ApiError(
      415,
      'not-json',
      'The body must be JSON; send it with Content-Type: application/json.',
    );
  }
  next();
}

function onlyMethod(allowed: 'GET' | 'POST') {
  return (req: Request, res: Response): never => {
    res.set('Allow', allowed);
    throw new ApiError(405, 'wrong-method', `${req.method} does nothing here; use ${allowed}.`);
  };
}
