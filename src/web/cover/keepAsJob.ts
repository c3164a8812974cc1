import { createHash } from 'node:crypto';
import { Refusal } from '../../../shared/words/refusal.ts';
import { jobWithReading } from '../../records/jobs/readings.ts';
import { keepCover, readingsTyped, type TypedCover } from '../../shop/keepCover.ts';
import { readReceived } from '../job/receivedForm.ts';
import { gaugesSeen } from '../measuring/gaugesOnForm.ts';
import { type PageContext, todayIn } from '../request/pageContext.ts';
import { type Fields, splitRepeats } from '../request/typed.ts';
import type { CoverForm } from './coverForm.ts';

/** Keeps what was typed on the quick page as a job; a press that comes twice leads to the job made by the first. */
export async function keepAsJob(
  context: PageContext,
  form: CoverForm,
  fields: Fields,
): Promise<{ number: string; who: string }> {
  const { db } = context.shop;
  const { input, view } = form;
  if (view.family === null || input === null) {
    throw new Refusal('no-family', [
      {
        path: 'family',
        message: 'A job needs a cover type. Choose one, or add it to the catalog first.',
      },
    ]);
  }
  const who = (fields.initials ?? '').trim();
  const day = todayIn(context);
  const cover: TypedCover = {
    input,
    typedStations: form.typedStations.map(({ wall, ...rest }) => ({ walls: splitRepeats(wall), ...rest })),
    typedMarks: form.typedMarks,
    places: view.rows,
    placesAdded: view.rows.some((row) => row.own),
    gauges: form.gauges,
    cutTyped: (fields.cut ?? '').trim(),
  };
  const token = keepToken(fields, who, day);
  const readings = readingsTyped(cover, token);
  const kept = await jobWithReading(db, readings[0]?.id ?? '');
  if (kept !== null) return { number: kept, who };
  const asked = {
    family: form.familyId,
    number: fields.jobNumber ?? '',
    customer: fields.customer ?? '',
    receivedOn: day,
  };
  const seen = gaugesSeen(fields, form.gauges);
  const ctx = { who, why: 'saved from Check a cover', now: context.now };
  const received = await readReceived(db, asked, { today: day });
  return { number: await keepCover(db, ctx, cover, { ...received, readings, token, seen }), who };
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
