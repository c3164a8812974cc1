/**
 * Loaded into the program before it starts, by tests alone: the process kills itself just before the first byte of an
 * answer to a tablet's readings, which it has kept by then. KILL_AT is which of these answers.
 */
import { ServerResponse } from 'node:http';

const { writeHead } = ServerResponse.prototype;
let answers = 0;
ServerResponse.prototype.writeHead = function (this: ServerResponse, status: number, ...rest: never[]) {
  const { method, url = '' } = this.req;
  if (method === 'POST' && url.includes('/measure/kept') && status === 200) {
    answers++;
    if (answers === Number(process.env.KILL_AT)) process.kill(process.pid, 'SIGKILL');
  }
  return writeHead.call(this, status, ...rest);
} as typeof writeHead;
