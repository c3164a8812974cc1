import type { Stud } from '../../shared/words/stud/stud.ts';
import { checkCover } from '../../src/calc/cover/checkCover.ts';
import { bendCover } from '../../src/calc/plate/bendCover.ts';
import { bestStuds } from '../../src/calc/stud/match/bestStuds.ts';
import { studTolerances } from '../../src/calc/stud/match/studTolerances.ts';
import { CRITERIA, coverInput, NO_GAUGE, SET_ONE } from '../calc/cover/sets.ts';
import { COVER } from '../calc/plate/example.ts';
import { layer, metric, unified, withStack } from '../calc/stud/example.ts';
import { quickest } from './quickest.ts';
import { atMost, type Row, under } from './rows.ts';

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

const THREADS = [
  unified(0.375, 24, '2A'),
  unified(0.4375, 20, '2A'),
  unified(0.3125, 24, '2A'),
  unified(0.5, 20, '2A'),
  metric(8, 1.25, '6g'),
  metric(10, 1.25, '6g'),
  metric(10, 1.5, '6g'),
  metric(12, 1.75, '6g'),
];

/** One of ten thousand: of eight threads, each in 25 lengths of thread and 50 of pilot, of which some fit. */
function studLike(stud: Stud, i: number): Stud {
  const threadEndMm = stud.threadEndMm - 12 + (i % 25);
  const thread = THREADS[Math.floor(i / 1250)]!;
  const projectionMm = threadEndMm + (Math.floor(i / 25) % 50) / 4;
  return { ...stud, thread, threadEndMm, projectionMm };
}

function sumsOfRandom(): number {
  let within = 0;
  for (let draw = 0; draw < DRAWS; draw++) {
    let sum = 0;
    for (let k = 0; k < 8; k++) sum += Math.random() - 0.5;
    if (Math.abs(sum) < 1) within += 1;
  }
  return within;
}

/** Calculations by themselves, in ms of computing. */
export async function sumRows(): Promise<Row[]> {
  const ofTwelve = await quickest(60, () => checkCover(twelve));
  const ofMany = await quickest(10, () => checkCover(fourHundred));
  const bending = await quickest(30, () => bendCover({ ...COVER, piston: 'rigid', trackWallMm: 4 }));
  const sizes = await quickest(10, () => studTolerances(fiveLayers));
  const random = await quickest(10, sumsOfRandom);
  const { stud, ...surroundings } = fiveLayers;
  const studs = Array.from({ length: 10_000 }, (_, i) => ({ id: `stud-${i}`, stud: studLike(stud, i) }));
  const among = await quickest(10, () => bestStuds({ ...surroundings, studs }, 20));
  return [
    under('cover check of 12 stations', [ofTwelve, 'ms'], 2),
    atMost('cover check of 400 stations', [ofMany, 'ms'], [ofTwelve, 'of 12 stations'], 40),
    under('one answer on bending', [bending, 'ms'], 5),
    atMost(
      'sizes of a five-layer stack, 100,000 draws',
      [sizes, 'ms'],
      [random, 'sums of 8 random numbers'],
      3,
    ),
    under('a stud found among 10,000', [among, 'ms'], 100),
  ];
}
