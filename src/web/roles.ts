import type { Role } from '../../shared/words/people.ts';

/** What it takes to use a route where people sign in: nothing, or a role at least. */
export type Least = 'anyone' | Role;

/**
 * Every route and the least role for it. Where several fit a request the strictest holds; a route that is not here
 * answers nobody, and a test says so.
 */
export const LEAST_ROLE: Readonly<Record<string, Least>> = {
  'GET /health': 'anyone',
  'GET /assets/htmx.js': 'anyone',
  'GET /assets/barlow-400.woff2': 'anyone',
  'GET /assets/barlow-600.woff2': 'anyone',
  'GET /sign-in': 'anyone',
  'POST /sign-in': 'anyone',
  'POST /sign-out': 'anyone',
  'GET /first': 'anyone',
  'POST /first': 'anyone',

  'GET /account': 'reader',
  'POST /account/password': 'reader',
  'POST /account/sign-out': 'reader',

  'GET /': 'reader',
  'POST /preferences': 'reader',
  'GET /cover': 'reader',
  'GET /cover/example/:id': 'reader',
  'GET /stud': 'reader',
  'GET /stud/slip': 'reader',
  'GET /stud/stacks': 'reader',
  'GET /jobs': 'reader',
  'GET /jobs/:number': 'reader',
  'GET /jobs/:number/sheet': 'reader',
  'GET /jobs/:number/tag': 'reader',
  'GET /jobs/:number/history': 'reader',
  'GET /jobs/:number/history/:revision': 'reader',
  'GET /photos/:name': 'reader',
  'GET /catalogue': 'reader',
  'GET /catalogue/:kind/:id': 'reader',
  'GET /criteria': 'reader',

  'POST /cover/keep': 'recorder',
  'GET /jobs/new': 'recorder',
  'POST /jobs': 'recorder',
  'POST /jobs/:number/readings': 'recorder',
  'POST /jobs/:number/received': 'recorder',
  'POST /jobs/:number/looked': 'recorder',
  'POST /jobs/:number/setup': 'recorder',
  'POST /jobs/:number/plan': 'recorder',
  'POST /jobs/:number/decision': 'recorder',
  'POST /jobs/:number/cuts': 'recorder',
  'POST /jobs/:number/studs': 'recorder',
  'POST /jobs/:number/signature': 'recorder',
  'POST /jobs/:number/photos': 'recorder',

  'GET /catalogue/:kind/new': 'keeper',
  'POST /catalogue/:kind': 'keeper',
  'POST /catalogue/:kind/:id': 'keeper',
  'POST /catalogue/:kind/:id/retire': 'keeper',
  'POST /catalogue/:kind/:id/reinstate': 'keeper',
  'POST /criteria': 'keeper',

  'GET /people': 'keeper',
  'POST /people': 'keeper',
  'GET /people/:id': 'keeper',
  'POST /people/:id': 'keeper',
  'POST /people/:id/retire': 'keeper',
  'POST /people/:id/reinstate': 'keeper',
  'POST /people/:id/password': 'keeper',
  'POST /people/:id/sign-out': 'keeper',
  'POST /tokens': 'keeper',
  'POST /tokens/:id/withdraw': 'keeper',

  'GET /api/openapi.json': 'reader',
  'POST /api/cover/check': 'reader',
  'POST /api/stud/check': 'reader',
  'POST /api/stud/match': 'reader',
  'POST /api/thread': 'reader',
};
