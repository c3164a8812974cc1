import { type Request, type Response, Router } from 'express';
import { ApiError, answerError } from '../request/apiErrors.ts';
import { askerOf } from '../request/requestGone.ts';
import type { ApiCall, ApiNeeds } from './call.ts';
import { apiCalls } from './calls.ts';
import { jsonBody, notKept, onlyMethods } from './http.ts';
import { openApi } from './openapi.ts';

/**
 * The JSON interface: the same calculations as the pages, told in plain numbers. Mounted under /api. Everything
 * that leaves, errors too, is JSON, which has no −0, NaN or infinity.
 */
export function apiRouter(needs: ApiNeeds): Router {
  const router = Router();
  router.use(notKept);
  for (const call of apiCalls) answerCall(router, call, needs);
  router
    .route('/openapi.json')
    .get(async (_req, res) => {
      res.json(await openApi());
    })
    .all(onlyMethods(['GET']));
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

function answerCall(router: Router, { path, answer }: ApiCall, needs: ApiNeeds): void {
  router
    .route(path)
    .post(jsonBody, async (req: Request, res: Response) => {
      res.json(await answer(req.body, needs, askerOf(req, res, 'scripts')));
    })
    .all(onlyMethods(['POST']));
}
