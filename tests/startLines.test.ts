import { describe, expect, test } from 'vitest';
import type { Settings } from '../src/settings.ts';
import { startCode, startLines } from '../src/startLines.ts';
import { addressesToType, ownNames } from '../src/web/request/addresses.ts';

const MACHINE = {
  name: 'shop-pc',
  addresses: ['127.0.0.1', '::1', '169.254.3.4', '192.0.2.7', 'fe80::1', '2001:db8::7'],
};
const everywhere: Pick<Settings, 'host' | 'publicUrl' | 'dataDir'> = {
  host: '0.0.0.0',
  publicUrl: null,
  dataDir: '/srv/shop',
};
const lines = (settings: Partial<typeof everywhere>, people = 0) => {
  const all = { ...everywhere, ...settings };
  return startLines({
    settings: all,
    port: 4180,
    addresses: addressesToType(all, 4180, MACHINE),
    people,
    code: null,
    where: '/srv/shop/coverwright.sqlite',
    inPostgres: false,
  });
};

describe('what the program prints at start', () => {
  test('is addresses that can be typed on a tablet, never the one that means all', () => {
    expect(lines({})).toEqual([
      'Coverwright is ready: http://192.0.2.7:4180',
      'On tablets and other computers: http://192.0.2.7:4180  or  http://shop-pc.local:4180',
      'The shop is saved in /srv/shop/coverwright.sqlite',
    ]);
    expect(lines({ publicUrl: 'https://shop.example' }).slice(0, 2)).toEqual([
      'Coverwright is ready: http://192.0.2.7:4180',
      'On tablets and other computers: https://shop.example  or  http://192.0.2.7:4180  or  http://shop-pc.local:4180',
    ]);
    expect(lines({ host: '127.0.0.1' })[0]).toBe('Coverwright is ready: http://127.0.0.1:4180');
    expect(lines({ host: '127.0.0.1' })).toHaveLength(2);
  });

  test('warns of a public address that another day may not be this computer’s', () => {
    expect(lines({ publicUrl: 'http://192.0.2.7:4180' })).toContainEqual(
      expect.stringMatching(/^PUBLIC_URL is the address 192\.0\.2\.7\. .*printed tags/),
    );
    expect(lines({ publicUrl: 'http://shop.example:4180' }).join()).not.toContain('PUBLIC_URL');
  });

  test('says that there are accounts, and how many', () => {
    expect(lines({}, 1)).toContain('1 person has an account: everybody signs in, at this computer too.');
    expect(lines({}, 3)).toContain('3 people have accounts: everybody signs in, at this computer too.');
  });

  test('names the backup made because this version changed the records', () => {
    const settings = { ...everywhere, host: '127.0.0.1' };
    const started = { settings, port: 4180, people: 0, code: null, where: '/srv/shop', inPostgres: false };
    expect(startLines({ ...started, beforeUpgrade: 'coverwright-20260302-170405' })).toContain(
      'This version changed the records. Before that it made the backup coverwright-20260302-170405: to go back, restore it with the old version.',
    );
    expect(startLines(started).join()).not.toContain('This version');
  });

  test('shows the best address as a code, where others can reach the program', async () => {
    expect(await startCode(['http://127.0.0.1:4180', 'http://192.0.2.7:4180'])).toContain('▄');
    expect(await startCode(['http://127.0.0.1:4180'])).toBe('');
  });
});

test('the program answers to every address it prints', () => {
  for (const settings of [everywhere, { host: '192.0.2.9', publicUrl: 'https://shop.example' }]) {
    const own = ownNames(settings, () => MACHINE)();
    for (const one of addressesToType(settings, 4180, MACHINE)) expect(own).toContain(new URL(one).hostname);
  }
});
