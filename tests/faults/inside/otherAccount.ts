/**
 * Loaded into the program before it starts, by tests alone: from its first look at the data folder on the program is
 * the account AS_UID. Started as that account it could not even be read where its clone lies in somebody's own folder.
 */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import Database from 'better-sqlite3';

const { AS_UID, DATA_DIR = '' } = process.env;
// Its compiled half is read when it is first used.
new Database(':memory:').close();

const exists = fs.existsSync;
fs.existsSync = (path) => {
  if (String(path).startsWith(DATA_DIR) && process.getuid?.() !== Number(AS_UID)) {
    process.setgroups?.([]);
    process.setgid?.(Number(AS_UID));
    process.setuid?.(Number(AS_UID));
  }
  return exists(path);
};
syncBuiltinESMExports();
