import { RecordsUnavailable } from './errors.ts';

/** Messages of the driver, which come without a code, when the connection is gone. */
const LINE_IS_GONE = /^(Connection terminated|Client has encountered a connection error|Client was closed)/;
const NO_LINE_FREE = /^timeout exceeded when trying to connect/;

/** The code PostgreSQL gave an error (`53100`) or the system did (`ECONNREFUSED`); '' for any other. */
export function postgresCode(error: unknown): string {
  if (!(error instanceof Error)) return '';
  if (LINE_IS_GONE.test(error.message)) return 'ECONNRESET';
  if (NO_LINE_FREE.test(error.message)) return 'ETIMEDOUT';
  if (!('code' in error) || typeof error.code !== 'string') return '';
  // What the server itself said comes with its severity.
  return 'severity' in error || 'syscall' in error || error instanceof AggregateError ? error.code : '';
}

/** Whether the server cannot be talked to, or broke off what it was told. */
export function isLost(code: string): boolean {
  return /^(E[A-Z_]+|08...|57P0[123]|25P0[34]|28...|3D000)$/.test(code);
}

/** An error of PostgreSQL in the shop's words; any other as it is. */
export function unavailablePostgres(error: unknown): unknown {
  const code = postgresCode(error);
  if (isLost(code)) {
    return new RecordsUnavailable(
      'lost',
      `The database can't be reached (${code}). This was not saved; check that its server is running and try again.`,
      error,
    );
  }
  if (/^(40...|55P03|57014|53[02346]..)$/.test(code)) {
    return new RecordsUnavailable(
      'busy',
      'The shop is busy saving something else. This was not saved; try again.',
      error,
    );
  }
  if (code === '53100') {
    return new RecordsUnavailable(
      'full',
      'The disk is full. This was not saved; free some space and try again.',
      error,
    );
  }
  if (/^(25006|42501|5[38]...|XX...)$/.test(code)) {
    return new RecordsUnavailable(
      'disk',
      `This could not be saved (PostgreSQL ${code}). Check the database server.`,
      error,
    );
  }
  return error;
}

/** Said when the line broke while a change was being kept, and the server could not be asked what became of it. */
export function unsure(cause: unknown): RecordsUnavailable {
  return new RecordsUnavailable(
    'unsure',
    'The connection broke during saving, so this may or may not be saved. Check before you send it again.',
    cause,
  );
}

/** Whether two programs collided, so that trying once more may work. */
export function isCollision(error: unknown): boolean {
  return error instanceof RecordsUnavailable && /^(40001|40P01)$/.test(postgresCode(error.cause));
}
