import Database from 'better-sqlite3';
import { afterEach, expect, test, vi } from 'vitest';
import { PreparedOnce } from '../../../src/records/database/preparedOnce.ts';

const raw = new Database(':memory:');
raw.exec('CREATE TABLE stud (id INTEGER PRIMARY KEY, name TEXT NOT NULL)');
raw.exec("INSERT INTO stud (name) VALUES ('short'), ('long')");
afterEach(() => {
  vi.restoreAllMocks();
});

const ALL = 'SELECT * FROM stud WHERE id <= ?';

test('a statement sent again is not prepared again, and answers as it stands', () => {
  const prepare = vi.spyOn(raw, 'prepare');
  const db = new PreparedOnce(raw);
  expect(db.prepare(ALL).all([1])).toEqual([{ id: 1, name: 'short' }]);
  expect(db.prepare(ALL).all([2])).toHaveLength(2);
  db.prepare('UPDATE stud SET name = ? WHERE id = ?').run(['shorter', 1]);
  expect(db.prepare(ALL).all([1])).toEqual([{ id: 1, name: 'shorter' }]);
  expect(prepare).toHaveBeenCalledTimes(2);
});

test('a statement prepared before a column was added tells of the column', () => {
  const db = new PreparedOnce(raw);
  db.prepare(ALL).all([1]);
  raw.exec("ALTER TABLE stud ADD COLUMN shelf TEXT NOT NULL DEFAULT 'A'");
  expect(db.prepare(ALL).all([1])).toEqual([expect.objectContaining({ id: 1, shelf: 'A' })]);
});

test('a statement that is being walked through can be asked again meanwhile', () => {
  const db = new PreparedOnce(raw);
  for (const _ of db.prepare(ALL).iterate([2])) expect(db.prepare(ALL).all([2])).toHaveLength(2);
});

test('only so many statements are kept, those used last, and no long one', () => {
  const db = new PreparedOnce(raw);
  db.prepare('SELECT 0').all([]);
  for (let i = 1; i < 200; i++) db.prepare(`SELECT ${i}`).all([]);
  const prepare = vi.spyOn(raw, 'prepare');
  db.prepare('SELECT 0').all([]);
  expect(prepare).toHaveBeenCalledTimes(0);
  db.prepare('SELECT 200').all([]);
  db.prepare('SELECT 0').all([]);
  expect(prepare).toHaveBeenCalledTimes(1);
  db.prepare('SELECT 1').all([]);
  expect(prepare).toHaveBeenCalledTimes(2);
  const long = `SELECT '${'x'.repeat(4000)}'`;
  for (let i = 0; i < 2; i++) db.prepare(long).all([]);
  expect(prepare).toHaveBeenCalledTimes(4);
});
