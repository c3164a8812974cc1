import { createHash } from 'node:crypto';
import type { NewReading } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { getEntry } from '../../records/catalogue.ts';
import { write } from '../../records/database/database.ts';
import { createJob } from '../../records/jobs/createJob.ts';
import { addReadings, jobWithReading } from '../../records/jobs/readings.ts';
import { reviseJob } from '../../records/jobs/reviseJob.ts';
import { readReceived } from '../job/receivedForm.ts';
import { type PageContext, todayIn } from '../request/pageContext.ts';
import { type Fields, splitRepeats } from '../request/typed.ts';
import type { CoverForm } from './coverForm.ts';

/** Keeps what was typed on the quick page as a job: readings as typed, marks, crack test, chucking and the cut to try. */
export async function keepAsJob(
  context: PageContext,
  form: CoverForm,
  fields: Fields,
): Promise<{ number: string; who: string }> {
  const { input, view } = form;
  const family = await getEntry(context.shop.db, 'family', form.familyId);
  if (family === null || input === null) {
    throw new Refusal('no-family', [
      {
        path: 'family',
        message: 'A job needs a cover family. Choose one, or add it to the catalogue first.',
      },
    ]);
  }
  const who = (fields.initials ?? '').trim();
  const ctx = { who, why: 'kept from the quick page', now: context.now };
  const day = todayIn(context);
  const readings = readingsOf(form, keepToken(fields, who, day));
  const kept = await jobWithReading(context.shop.db, readings[0]?.id ?? '');
  if (kept !== null) return { number: kept, who };
  const asked = {
    family: family.id,
    number: fields.jobNumber ?? '',
    customer: fields.customer ?? '',
    receivedOn: day,
  };
  const { number, received } = await readReceived(context.shop.db, asked, { today: day });
  return write(context.shop.db, async (trx) => {
    const job = await createJob(trx, ctx, { ...(number !== null && { number }), received });
    let revision = job.revision;
    const round = { knockOn: input.knockOn ?? null, releaseClearanceMm: input.releaseClearanceMm };
    const saidHow = [input.chucking, input.gauge, round.knockOn, round.releaseClearanceMm].some(
      (said) => said !== null,
    );
    if (saidHow || view.rows.some((row) => row.own)) {
      const setup = await reviseJob(trx, ctx, {
        jobId: job.id,
        fromRevision: revision,
        what: 'setup',
        body: {
          gauge: form.gauges.find(({ use }) => use === 'wall')?.gauge.name ?? '',
          gaugeFigures: input.gauge,
          gauges: form.gauges,
          chucking: input.chucking,
          residualRunoutMm: null,
          wallReadThrough: 'bare',
          stations: view.rows.map(({ angleDeg, radiusMm }) => ({ angleDeg, radiusMm })),
          ...round,
        },
      });
      revision = setup.revision;
    }
    if (input.crackTest === 'found') {
      const looked = await reviseJob(trx, ctx, {
        jobId: job.id,
        fromRevision: revision,
        what: 'looked',
        body: { crackTest: 'found', crackMethod: null, crackNote: '', items: [] },
      });
      revision = looked.revision;
    }
    if (input.plannedCutMm !== null) {
      await reviseJob(trx, ctx, {
        jobId: job.id,
        fromRevision: revision,
        what: 'plan',
        body: { plannedCutMm: input.plannedCutMm, typed: (fields.cut ?? '').trim() },
      });
    }
    await addReadings(trx, ctx, { jobId: job.id, readings });
    return { number: job.number, who };
  });
}

function readingsOf({ input, typedStations }: CoverForm, token: string): NewReading[] {
  if (input === null) return [];
  const base = { pass: 'before', gauge: '', doubtful: false, replaces: null } as const;
  const atStations = input.stations.flatMap((station, i): NewReading[] => {
    const { angleDeg, radiusMm, faceMm, markDepthMm } = station;
    const typed = typedStations[i];
    const walls = splitRepeats(typed?.wall ?? '');
    return [
      ...station.wallMm.map(
        (valueMm, j): NewReading => ({
          ...base,
          id: `${token}-w${i}-${j}`,
          kind: 'wall',
          angleDeg,
          radiusMm,
          valueMm,
          typed: walls[j] ?? '',
        }),
      ),
      ...(faceMm === null
        ? []
        : [
            {
              ...base,
              id: `${token}-f${i}`,
              kind: 'face' as const,
              angleDeg,
              radiusMm,
              valueMm: faceMm,
              typed: typed?.face ?? '',
            },
          ]),
      ...(markDepthMm === null
        ? []
        : [
            {
              ...base,
              id: `${token}-d${i}`,
              kind: 'mark' as const,
              angleDeg,
              radiusMm,
              valueMm: markDepthMm,
              typed: typed?.mark ?? '',
            },
          ]),
    ];
  });
  const between = input.marks.map(
    ({ angleDeg, radiusMm, depthMm }, i): NewReading => ({
      ...base,
      id: `${token}-m${i}`,
      kind: 'mark',
      angleDeg,
      radiusMm,
      valueMm: depthMm,
      typed: String(depthMm),
    }),
  );
  return [...atStations, ...between];
}

/**
 * Follows from what was typed, by whom and on which day: a press sent twice by a flaky connection makes the same ids,
 * and leads to the job that is there already.
 */
function keepToken(fields: Fields, who: string, day: string): string {
  const typed = Object.entries(fields)
    .filter(([name]) => name !== 'jobNumber')
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return createHash('sha256')
    .update(JSON.stringify([typed, who, day]))
    .digest('hex')
    .slice(0, 32);
}
