import { createServer, type RequestListener } from 'node:http';
import type { AddressInfo } from 'node:net';
import express from 'express';
import { checkCover } from '../../src/calc/cover/checkCover.ts';
import { studTolerances } from '../../src/calc/stud/match/studTolerances.ts';
import { CRITERIA, coverInput, NO_GAUGE, SET_ONE } from '../calc/cover/sets.ts';
import { layer, withStack } from '../calc/stud/example.ts';
import { serve } from '../web/program.ts';
import { quickest } from './quickest.ts';

/** How long answers take, each beside a yardstick of the same run: `wanted` is the most it may be times that. */
interface Row {
  readonly what: string;
  readonly run: () => unknown;
  readonly yardstick: string;
  readonly beside: () => unknown;
  readonly wanted: number;
}

const DRAWS = 100_000;
const stationsAt = (count: number) =>
  coverInput({
    stations: Array.from({ length: count }, (_, i) => ({
      ...SET_ONE[0]!,
      angleDeg: (i * 360) / count,
      radiusMm: 110,
      wallMm: [4.9 + 1e-4 * (i % 97)],
      faceMm: 1e-4 * (i % 89),
    })),
    gauge: { ...NO_GAUGE, standardUncertaintyMm: 0.005, repeatabilityMm: 0.003 },
    criteria: { ...CRITERIA, faceRunoutLimitMm: 0.1, minimumWallMm: 4.64 },
  });
const [twelve, fourHundred] = [stationsAt(12), stationsAt(400)];
const fiveLayers = withStack({ layers: [1, 2, 3, 4, 5].map((mm) => layer(mm)) });

function sumsOfRandom(): number {
  let within = 0;
  for (let draw = 0; draw < DRAWS; draw++) {
    let sum = 0;
    for (let k = 0; k < 8; k++) sum += Math.random() - 0.5;
    if (Math.abs(sum) < 1) within += 1;
  }
  return within;
}

const program = await serve({ demo: true });
const walls = Object.fromEntries(SET_ONE.map((station, i) => [`w.${i}`, String(station.wallMm[0])]));
const typed = new URLSearchParams({ family: '1125-4-plain', crack: 'none-found', ...walls, try: '0.42' });
const bare = express();
const page = await (await fetch(`${program.url}/cover/what-if?${typed}`)).text();
bare.get('/', (_, res) => void res.send(page));
const yard = createServer(bare as RequestListener).listen(0, '127.0.0.1');
await new Promise((resolve) => yard.once('listening', resolve));
const bareUrl = `http://127.0.0.1:${(yard.address() as AddressInfo).port}/`;

const ROWS: readonly Row[] = [
  {
    what: 'cover check of 400 stations',
    run: () => checkCover(fourHundred),
    yardstick: 'of 12 stations',
    beside: () => checkCover(twelve),
    wanted: 40,
  },
  {
    what: 'sizes of a five-layer stack, 100,000 draws',
    run: () => studTolerances(fiveLayers),
    yardstick: 'as many sums of eight random numbers',
    beside: sumsOfRandom,
    wanted: 3,
  },
  {
    what: 'what another cut would leave, over HTTP',
    run: async () => (await fetch(`${program.url}/cover/what-if?${typed}`)).text(),
    yardstick: 'the same answer, ready, from bare Express',
    beside: async () => (await fetch(bareUrl)).text(),
    wanted: 20,
  },
];

console.log('\nanswers, in ms of computing, and times their yardstick');
for (const { what, run, yardstick, beside, wanted } of ROWS) {
  const [ms, besideMs] = [await quickest(20, run), await quickest(20, beside)];
  console.log(
    `  ${what}: ${ms.toFixed(1)} ms, ${(ms / besideMs).toFixed(1)} × ${yardstick} (${besideMs.toFixed(2)} ms; wanted: ${wanted} × or less)`,
  );
}
yard.close();
await program.close();
