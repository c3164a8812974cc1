import { type Request, type Response, Router } from 'express';
import { answerError } from '../request/apiErrors.ts';
import { askerOf } from '../request/requestGone.ts';
import { fieldsOf } from '../request/typed.ts';
import { personOf } from '../request/whoSignedIn.ts';
import type { JobCall, JobNeeds } from './call.ts';
import { jsonBody, notKept, onlyMethods } from './http.ts';
import { jobCalls } from './jobCalls.ts';

/** Jobs and catalog lists as JSON. Mounted under /api before the calculations, to which anything else goes on. */
export function apiJobsRouter(needs: JobNeeds): Router {
  const router = Router();
  const paths = new Set(jobCalls.map((call) => call.path));
  for (const path of paths) {
    const here = jobCalls.filter((call) => call.path === path);
    const route = router.route(path.replace('{number}', ':number'));
    route.all(notKept);
    for (const call of here) {
      const answer = answerWith(call, needs);
      if (call.methods.includes('GET')) route.get(answer);
      if (call.methods.includes('PUT')) route.put(jsonBody, answer);
      if (call.methods.includes('POST')) route.post(jsonBody, answer);
    }
    route.all(onlyMethods(here.flatMap((call) => call.methods)));
  }
  router.use(answerError);
  return router;
}

function answerWith(call: JobCall, needs: JobNeeds) {
  return async (req: Request, res: Response): Promise<void> => {
    const asked = {
      named: String(req.params.number ?? ''),
      query: fieldsOf(req.query),
      body: signedBy(req),
      asker: askerOf(req, res, 'scripts'),
    };
    const { status, body } = await call.answer(needs, asked);
    if (status === 201) {
      const { number } = body as { number: string };
      res.location(`/api${call.path}/${encodeURIComponent(number)}`);
    }
    res.status(status).json(body);
  };
}

/** Where people sign in, a change is signed by whoever the token or the session belongs to, whatever was sent. */
function signedBy(req: Request): unknown {
  const person = personOf(req);
  const body: unknown = req.body;
  const plain = typeof body === 'object' && body !== null && !Array.isArray(body);
  return person && plain ? { ...body, who: person.initials } : body;
}
