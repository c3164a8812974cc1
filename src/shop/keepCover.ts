import type { CoverCheckInput } from '../../shared/words/cover.ts';
import type { ChosenGauge, NewReading, Received } from '../../shared/words/job.ts';
import type { Place } from '../../shared/words/places.ts';
import { refuseSeenOtherwise, type Seen } from '../records/catalogue.ts';
import { type Db, write } from '../records/database/database.ts';
import type { Ctx } from '../records/database/writing.ts';
import { createJob } from '../records/jobs/createJob.ts';
import { addReadings } from '../records/jobs/readings.ts';
import { reviseJob, type SectionEdit } from '../records/jobs/reviseJob.ts';
import type { Edit } from './jobEdits.ts';

/** A cover that was checked without a job, as it was typed. */
export interface TypedCover {
  readonly input: CoverCheckInput;
  /** What was typed for each station of the input: its walls one by one. */
  readonly typedStations: readonly {
    readonly walls: readonly string[];
    readonly face: string;
    readonly mark: string;
  }[];
  /** What was typed for the depth of each mark between stations. */
  readonly typedMarks: readonly string[];
  /** Every place it was laid out to be measured at, and whether some were added to the cover type's own. */
  readonly places: readonly Place[];
  readonly placesAdded: boolean;
  readonly gauges: readonly ChosenGauge[];
  readonly cutTyped: string;
}

/** Keeps it as a job: what was received, how it was measured, cracks found, the cut to try, and every reading as typed. */
export async function keepCover(
  db: Db,
  ctx: Ctx,
  cover: TypedCover,
  asked: {
    readonly number: string | null;
    readonly received: Received;
    readonly readings: readonly NewReading[];
    /** Of what was typed: a cover with no readings, sent twice, is known again by it. */
    readonly token: string;
    /** Gauges of the catalog, as the page showed them. */
    readonly seen: readonly Seen[];
  },
): Promise<string> {
  const { number, received, readings, token, seen } = asked;
  return write(db, async (trx) => {
    const sent = readings.length === 0 ? { sentId: token } : {};
    const job = await createJob(trx, ctx, { ...(number !== null && { number }), received, ...sent });
    if (job.revision > 1) return job.number;
    await refuseSeenOtherwise(trx, seen);
    let revision = job.revision;
    for (const edit of [...howMeasured(cover), ...cracksFound(cover), ...cutToTry(cover)]) {
      const change = { jobId: job.id, fromRevision: revision, ...edit } as SectionEdit;
      revision = (await reviseJob(trx, ctx, change)).revision;
    }
    await addReadings(trx, ctx, { jobId: job.id, readings });
    return job.number;
  });
}

function howMeasured({ input, gauges, places, placesAdded }: TypedCover): readonly Edit[] {
  const round = { knockOn: input.knockOn ?? null, releaseClearanceMm: input.releaseClearanceMm };
  const saidHow = [input.chucking, input.gauge, round.knockOn, round.releaseClearanceMm];
  if (!placesAdded && saidHow.every((said) => said === null)) return [];
  return [
    {
      what: 'setup',
      body: {
        gauge: gauges.find(({ use }) => use === 'wall')?.gauge.name ?? '',
        gaugeFigures: input.gauge,
        gauges,
        chucking: input.chucking,
        residualRunoutMm: null,
        wallReadThrough: 'bare',
        stations: places.map(({ angleDeg, radiusMm }) => ({ angleDeg, radiusMm })),
        ...round,
      },
    },
  ];
}

/** That none were found is not kept: how they were looked for, and the rest of the inspection, was not asked. */
function cracksFound({ input }: TypedCover): readonly Edit[] {
  if (input.crackTest !== 'found') return [];
  return [{ what: 'looked', body: { crackTest: 'found', crackMethod: null, crackNote: '', items: [] } }];
}

function cutToTry({ input, cutTyped }: TypedCover): readonly Edit[] {
  const { plannedCutMm } = input;
  return plannedCutMm === null ? [] : [{ what: 'plan', body: { plannedCutMm, typed: cutTyped } }];
}

/** Every reading as a job keeps it. The ids follow from `token`, so the same cover sent twice is kept once. */
export function readingsTyped(cover: TypedCover, token: string): readonly NewReading[] {
  const { input, typedStations, typedMarks } = cover;
  const base = { pass: 'before', gauge: '', doubtful: false, replaces: null } as const;
  const atStations = input.stations.flatMap((station, i): NewReading[] => {
    const { angleDeg, radiusMm, wallMm, faceMm, markDepthMm } = station;
    const typed = typedStations[i];
    const place = { ...base, angleDeg, radiusMm };
    const one = (kind: 'face' | 'mark', id: string, valueMm: number | null, as = ''): NewReading[] =>
      valueMm === null ? [] : [{ ...place, id: `${token}-${id}`, kind, valueMm, typed: as }];
    return [
      ...wallMm.map(
        (valueMm, j): NewReading => ({
          ...place,
          id: `${token}-w${i}-${j}`,
          kind: 'wall',
          valueMm,
          typed: typed?.walls[j] ?? '',
        }),
      ),
      ...one('face', `f${i}`, faceMm, typed?.face),
      ...one('mark', `d${i}`, markDepthMm, typed?.mark),
    ];
  });
  const between = input.marks.map(
    ({ angleDeg, radiusMm, depthMm: valueMm }, i): NewReading => ({
      ...base,
      id: `${token}-m${i}`,
      kind: 'mark',
      angleDeg,
      radiusMm,
      valueMm,
      typed: typedMarks[i] ?? '',
    }),
  );
  return [...atStations, ...between];
}
