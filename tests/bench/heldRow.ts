import { monitorEventLoopDelay } from 'node:perf_hooks';
import { options, type VNode } from 'preact';
import { renderPage } from '../../views/render.ts';
import { coverInput, SET_ONE } from '../calc/cover/sets.ts';
import { serve } from '../web/program.ts';
import { PAGES } from './pages.ts';
import { quickest } from './quickest.ts';
import { atMost, type Row } from './rows.ts';

/** How long the thread that serves is held at most while a script asks for a cover of hundreds of stations. */
export async function heldRow(): Promise<Row> {
  const program = await serve({ demo: true });
  const hooks = options as unknown as { __b?: (vnode: VNode) => void };
  let first: VNode | null = null;
  hooks.__b = (vnode) => {
    first ??= vnode;
  };
  await (await fetch(program.url + PAGES.job)).text();
  delete hooks.__b;
  const render = await quickest(20, () => renderPage(first!));
  const stations = Array.from({ length: 400 }, (_, i) => ({
    ...SET_ONE[i % SET_ONE.length]!,
    angleDeg: (i * 360) / 400,
    radiusMm: 110,
  }));
  const body = JSON.stringify(coverInput({ stations }));
  const headers = { 'content-type': 'application/json' };
  const send = () => fetch(`${program.url}/api/cover/check`, { method: 'POST', headers, body });
  for (let i = 0; i < 2; i++) await (await send()).text();
  const delay = monitorEventLoopDelay({ resolution: 1 });
  delay.enable();
  await (await send()).text();
  delay.disable();
  await program.close();
  return atMost(
    'longest hold while 400 stations are worked out',
    [delay.max / 1e6, 'ms'],
    [render, 'one render of the job’s page'],
    3,
  );
}
