import type { NextFunction, Request, Response } from 'express';
import type * as z from 'zod';
import { withTrueMinus } from '../../../shared/quantity/inReadersUnit.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { type Fault, Refusal } from '../../../shared/words/refusal.ts';
import { unavailable } from '../../records/database/database.ts';
import { RecordsUnavailable } from '../../records/database/errors.ts';
import { WorkBusy } from '../../shop/work/workPool.ts';

/** Something wrong with a request: the status it is answered with, and the fields it names. */
export class ApiError extends Error {
  readonly status: number;
  readonly code: string;
  readonly fields: readonly Fault[];
  /** Stands beside the error: for a change that came too late, both versions. */
  readonly beside: Readonly<Record<string, unknown>>;

  constructor(
    status: number,
    code: string,
    message: string,
    fields: readonly Fault[] = [],
    beside: Readonly<Record<string, unknown>> = {},
  ) {
    super(message);
    this.name = 'ApiError';
    this.status = status;
    this.code = code;
    this.fields = fields;
    this.beside = beside;
  }
}

export const BODY_LIMIT = '1mb';
const BUSY =
  'Too many covers are waiting to be worked out. Nothing was changed. Send it again in a few seconds.';

/** Fields that cannot be used, each with its sentence; the first sentence stands for all. */
function wrongValues(asFound: readonly Fault[]): ApiError {
  const faults = asFound.map(({ path, message }) => ({ path, message: withTrueMinus(message) }));
  const [first] = faults;
  const message =
    faults.length === 1 && first
      ? first.message
      : `${faults.length} values can’t be used. Each is named under fields.`;
  return new ApiError(422, 'wrong-values', message, faults);
}

/** The value a schema makes of a body, or an ApiError that names every field that is wrong. */
export function readBody<T>(schema: z.ZodType<T>, body: unknown): T {
  const read = schema.safeParse(body);
  if (read.success) return read.data;
  throw wrongValues(faultsOf(read.error));
}

/** The errors of the body parser, by the type it gives them. */
const UNREAD: Readonly<Record<string, [status: number, code: string, message: string]>> = {
  'entity.parse.failed': [
    400,
    'malformed-json',
    'The body is not JSON. Check its quotes, commas and brackets.',
  ],
  'entity.too.large': [413, 'too-large', 'The body is over 1 MB. Send less at a time.'],
  'charset.unsupported': [415, 'not-json', 'The character set of the body is unknown. Send UTF-8.'],
  'encoding.unsupported': [
    415,
    'not-json',
    'The compression of the body is unknown. Send it plain or as gzip.',
  ],
  'request.size.invalid': [
    400,
    'malformed-json',
    'The body is shorter than its Content-Length. Send it again.',
  ],
};

function asApiError(thrown: unknown): ApiError {
  const error = unavailable(thrown);
  if (error instanceof ApiError) return error;
  if (error instanceof Refusal) {
    return error.code === 'not-found'
      ? new ApiError(404, 'not-found', error.message, error.faults)
      : wrongValues(error.faults);
  }
  if (error instanceof WorkBusy) return new ApiError(503, 'busy', BUSY);
  if (error instanceof RecordsUnavailable) return new ApiError(503, 'unavailable', error.message);
  if (error instanceof Error && 'type' in error) {
    const unread = UNREAD[String(error.type)];
    if (unread) return new ApiError(...unread);
  }
  const status = error instanceof Error && 'status' in error ? Number(error.status) : 500;
  if (status >= 400 && status < 500) {
    return new ApiError(status, 'unreadable', 'The request can’t be read. Check its address and headers.');
  }
  console.error(error);
  return new ApiError(
    500,
    'went-wrong',
    'The program made a mistake. Nothing was changed; its log has the details.',
  );
}

/** Any error as it leaves: its status, and the one shape errors have. */
export function errorBody(error: unknown): { status: number; body: unknown } {
  const { status, code, message, fields, beside } = asApiError(error);
  return { status, body: { error: { code, message, fields }, ...beside } };
}

/** The last stop of everything under /api. */
export function answerError(error: unknown, _req: Request, res: Response, next: NextFunction): void {
  if (res.headersSent) {
    next(error);
    return;
  }
  const { status, body } = errorBody(error);
  if (error instanceof WorkBusy) res.set('Retry-After', String(error.retryAfterS));
  res.status(status).json(body);
}
