import Database from 'better-sqlite3';
import pg from 'pg';
import { describe, expect, it } from 'vitest';
import { unavailable } from '../../../src/records/database/database.ts';
import { RecordsUnavailable } from '../../../src/records/database/errors.ts';
import { isLost, unavailablePostgres } from '../../../src/records/database/postgresErrors.ts';

const message = 'failed';
const ofSqlite = (code: string) =>
  code.startsWith('SQLITE_')
    ? new Database.SqliteError(message, code)
    : Object.assign(new Error(message), { code, syscall: 'write' });
const ofPostgres = (code: string) =>
  code.startsWith('E')
    ? Object.assign(new Error(message), { code, syscall: 'connect' })
    : Object.assign(new pg.DatabaseError(message, 1, 'error'), { code, severity: 'ERROR' });
const told = (error: unknown) => (error instanceof RecordsUnavailable ? error.code : 'as it is');

describe('what a shop is told of an error beneath its records', () => {
  // Result codes of SQLite (sqlite.org/rescode.html) and of POSIX (errno.h), from memory.
  it.each([
    ['SQLITE_BUSY', 'busy'],
    ['SQLITE_BUSY_SNAPSHOT', 'busy'],
    ['SQLITE_FULL', 'full'],
    ['ENOSPC', 'full'],
    ['EDQUOT', 'full'],
    ['SQLITE_CORRUPT', 'disk'],
    ['SQLITE_CORRUPT_INDEX', 'disk'],
    ['SQLITE_NOTADB', 'disk'],
    ['SQLITE_IOERR_WRITE', 'disk'],
    ['SQLITE_READONLY', 'disk'],
    ['SQLITE_CANTOPEN', 'disk'],
    ['EACCES', 'disk'],
    ['EROFS', 'disk'],
    ['EIO', 'disk'],
    ['SQLITE_CONSTRAINT_UNIQUE', 'as it is'],
    ['SQLITE_ERROR', 'as it is'],
    ['ENOENT', 'as it is'],
    ['', 'as it is'],
  ])('%s of the file or the disk is told as %s', (code, wanted) => {
    const error = code === '' ? new Error('unforeseen') : ofSqlite(code);
    const found = unavailable(error);
    expect(told(found)).toBe(wanted);
    // Nothing of it is lost to whoever looks for the reason.
    expect(found instanceof RecordsUnavailable ? found.cause : found).toBe(error);
    expect(found instanceof RecordsUnavailable && /disk is full/.test(found.message)).toBe(wanted === 'full');
  });

  // Appendix A of the manual, "PostgreSQL Error Codes", from memory.
  it.each([
    ['08006', 'lost'],
    ['57P01', 'lost'],
    ['ECONNREFUSED', 'lost'],
    ['28P01', 'lost'],
    ['3D000', 'lost'],
    ['40001', 'busy'],
    ['40P01', 'busy'],
    ['55P03', 'busy'],
    ['57014', 'busy'],
    ['53200', 'busy'],
    ['53300', 'busy'],
    ['53100', 'full'],
    ['58030', 'disk'],
    ['XX001', 'disk'],
    ['XX002', 'disk'],
    ['25006', 'disk'],
    ['42501', 'disk'],
    ['23505', 'as it is'],
    ['42P01', 'as it is'],
  ])('%s of PostgreSQL is told as %s', (code, wanted) => {
    const error = ofPostgres(code);
    const found = unavailablePostgres(error);
    expect(told(found)).toBe(wanted);
    expect(found instanceof RecordsUnavailable ? found.cause : found).toBe(error);
    expect(isLost(code)).toBe(wanted === 'lost');
  });
});
