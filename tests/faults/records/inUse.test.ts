import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { RestoreFailed } from '../../../src/records/database/errors.ts';
import { holdAlone } from '../../../src/records/database/restoreGuard.ts';

test('the mark that a program runs on a data folder goes with its process, however that ends', async () => {
  const dataDir = mkdtempSync(join(tmpdir(), 'coverwright-test-'));
  const script = join(dataDir, 'hold.mjs');
  const guard = new URL('../../../src/records/database/restoreGuard.ts', import.meta.url).href;
  writeFileSync(
    script,
    `import { holdShop } from '${guard}'; globalThis.held = holdShop(${JSON.stringify(dataDir)}); console.log('held'); setInterval(() => {}, 1000);`,
  );
  const child = spawn(process.execPath, ['--import', import.meta.resolve('tsx'), script]);
  await once(child.stdout, 'data');
  expect(() => holdAlone(dataDir)).toThrow(RestoreFailed);
  child.kill('SIGKILL');
  await once(child, 'close');
  holdAlone(dataDir).release();
  rmSync(dataDir, { recursive: true });
});
