import type { Said, Taken } from '../../../shared/measuring/benchState.ts';
import { readReading } from '../../../shared/measuring/readReading.ts';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { type KeptReading, keptReadingSchema } from '../../../shared/schemas/measuring.ts';
import type { Job, NewReading } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import type { Db } from '../../records/database/database.ts';
import { type Ctx, samePerson } from '../../records/database/writing.ts';
import { allReadings } from '../../records/jobs/history.ts';
import { addReadings, sameContent } from '../../records/jobs/readings.ts';
import { heldAgainst } from '../../shop/doubts/jobReadingDoubt.ts';
import { breathEvery } from '../../shop/work/breath.ts';

const BESIDE =
  'Somebody else had already corrected that reading, so yours was saved beside theirs. Check both.';

/**
 * Keeps what a tablet sends, in the order it was typed. One reading that cannot be used holds up no other. A
 * correction that comes too late, because somebody else corrected the same reading, is kept as a reading of its own.
 * Sending the same again is harmless. Each is signed by whoever typed it, where `mayHaveTyped` knows them, although
 * somebody else may have signed in before it was sent. Throws Refusal where none can be kept: no initials, or a signed job.
 */
export async function keepTyped(
  db: Db,
  ctx: Ctx,
  job: Job,
  sent: readonly unknown[],
  mayHaveTyped: (who: string) => boolean,
): Promise<Taken> {
  const whole = {
    added: [] as string[],
    already: [] as string[],
    refused: [] as Said[],
    beside: [] as Said[],
  };
  for (const { who, readings } of byTypist(sent)) {
    const other = who !== '' && !samePerson(who, ctx.who) && mayHaveTyped(who);
    const typed = other ? { ...ctx, who, why: sentBy(ctx) } : ctx;
    const taken = await keepRun(db, typed, job, readings);
    whole.added.push(...taken.added);
    whole.already.push(...taken.already);
    whole.refused.push(...taken.refused);
    whole.beside.push(...taken.beside);
  }
  return whole;
}

/** A reading is signed by whoever typed it; that it waited, and who sent it, is on record beside it. */
function sentBy({ who, why = '' }: Ctx): string {
  return [why.trim(), `waited on the tablet, sent by ${who}`].filter((part) => part !== '').join('; ');
}

/** Readings as they were sent, in the runs that one person typed. */
function byTypist(
  sent: readonly unknown[],
): readonly { readonly who: string; readonly readings: unknown[] }[] {
  const runs: { who: string; readings: unknown[] }[] = [];
  for (const one of sent) {
    const said = typeof one === 'object' && one !== null && 'who' in one ? String(one.who).trim() : '';
    const last = runs.at(-1);
    if (last?.who === said) last.readings.push(one);
    else runs.push({ who: said, readings: [one] });
  }
  return runs;
}

async function keepRun(db: Db, ctx: Ctx, job: Job, sent: readonly unknown[]): Promise<Taken> {
  const nominalMm = job.sections.received?.body.family.nominalWallMm ?? 0;
  const refused: Said[] = [];
  const beside: Said[] = [];
  const already: string[] = [];
  let rest: NewReading[] = [];
  for (const [i, one] of sent.entries()) {
    await breathEvery(i);
    const read = readKept(one, nominalMm, job);
    if ('message' in read) refused.push(read);
    else rest.push(read);
  }
  while (rest.length > 0) {
    try {
      const taken = await addReadings(db, ctx, { jobId: job.id, readings: rest });
      return { added: taken.added, already: [...already, ...taken.already], refused, beside };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      const at = /^readings\.(\d+)\./.exec(error.faults[0]?.path ?? '')?.[1];
      const reading = at === undefined ? undefined : rest[Number(at)];
      if (reading === undefined) throw error;
      const others = rest.filter((one) => one !== reading);
      if (error.code === 'nothing-to-replace') {
        rest = rest.map((one) => (one === reading ? { ...one, replaces: null } : one));
        beside.push({ id: reading.id, message: BESIDE });
      } else if (error.code === 'reading-differs' && (await keptBeside(db, job, reading))) {
        already.push(reading.id);
        rest = others;
      } else {
        refused.push({ id: reading.id, message: error.message });
        rest = others;
      }
    }
  }
  return { added: [], already, refused, beside };
}

/** Whether this very reading is on record already, only that it replaces nothing. */
async function keptBeside(db: Db, job: Job, reading: NewReading): Promise<boolean> {
  const was = (await allReadings(db, job.id)).find((one) => one.id === reading.id);
  return (
    was !== undefined &&
    sameContent(was, { ...reading, gauge: was.gauge, doubtful: was.doubtful, replaces: null })
  );
}

/** A reading as it was typed, read into mm as any box of the program reads it. */
function readKept(sent: unknown, nominalMm: number, job: Job): NewReading | Said {
  const { weldedAt = 0, passesAt = [] } = job;
  const id = typeof sent === 'object' && sent !== null && 'id' in sent ? String(sent.id).slice(0, 64) : '';
  const parsed = keptReadingSchema.safeParse(sent);
  if (!parsed.success) {
    return {
      id,
      message: faultsOf(parsed.error)[0]?.message ?? 'The reading can’t be used as sent. Enter it again.',
    };
  }
  const {
    typed,
    unit,
    decimalSign,
    confirmed,
    weldedAt: known,
    who: _,
    ...reading
  }: KeptReading = parsed.data;
  if (known < weldedAt) {
    return {
      id,
      message: 'The ring was welded on after this was entered, so it does not count. Measure there again.',
    };
  }
  if (reading.pass === 'after' && known < (passesAt.at(-1) ?? 0)) {
    return {
      id,
      message:
        'Another pass was recorded after this page was opened. Reload the page and measure there again.',
    };
  }
  const read = readReading({
    kind: reading.kind,
    field: 'The reading',
    typed,
    unit,
    decimalSign,
    nominalWallMm: nominalMm,
    place: reading,
    ...heldAgainst(job, reading.pass, reading.replaces === null ? [] : [reading.replaces]),
  });
  if (!read.ok) return { id, message: read.message };
  return { ...reading, valueMm: read.valueMm, typed, doubtful: read.doubt !== null && !confirmed, confirmed };
}
