import { coverCheckSchema } from '../../shared/schemas/coverCheck.ts';
import { faultsOf } from '../../shared/schemas/faultsOf.ts';
import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import { type CoverCheckInput, type GaugeAtHand, isLost, type Station } from '../../shared/words/cover.ts';
import { dayIn } from '../../shared/words/day.ts';
import { lowerFirst } from '../../shared/words/fields/field.ts';
import type { MasterCheck } from '../../shared/words/gauges/masterChecks.ts';
import {
  ITEM_WORD,
  type Job,
  LOOK_ITEMS,
  type Looked,
  type LookItem,
  type Pass,
  type Reading,
  type ReadingKind,
} from '../../shared/words/job.ts';
import { READING_WORD } from '../../shared/words/readings.ts';
import type { Fault } from '../../shared/words/refusal.ts';
import { stationsRead } from '../calc/job/jobPlaces.ts';
import { stationPlace } from '../calc/judge/coverWords.ts';
import { limitsFor } from './limitsFor.ts';
import { gaugesUsed } from './mastersChecked.ts';

/** What a job's readings are worked out from; null while nothing was read, or where it cannot be used. */
export function jobInput(
  job: Job,
  criteria: ShopCriteria,
  atHand: readonly GaugeAtHand[],
  timeZone: string,
  masterChecks: readonly MasterCheck[] = [],
): { readonly input: CoverCheckInput | null; readonly faults: readonly Fault[] } {
  const raw = rawInput(job, criteria, { timeZone, atHand, masterChecks });
  if (raw === null) return { input: null, faults: [] };
  const parsed = coverCheckSchema.safeParse(raw);
  return parsed.success
    ? { input: parsed.data, faults: [] }
    : { input: null, faults: faultsOf(parsed.error) };
}

function rawInput(
  job: Job,
  criteria: ShopCriteria,
  {
    timeZone,
    atHand,
    masterChecks,
  }: {
    readonly timeZone: string;
    readonly atHand: readonly GaugeAtHand[];
    readonly masterChecks: readonly MasterCheck[];
  },
) {
  const family = job.sections.received?.body.family;
  if (!family) return null;
  const places = placesRead(job, 'before');
  const stations = places.filter(({ wallMm }) => wallMm.length > 0);
  const looked = job.sections.looked?.body;
  const found = {
    crackTest: looked?.crackTest ?? 'not-done',
    inspectionFailures: (looked?.items ?? [])
      .filter((one) => one.result === 'fault')
      .map((one) => ({ item: ITEM_WORD[one.item].toLowerCase(), final: one.final })),
  } as const;
  // A cover that is lost is decided without a wall; then nothing is made of a height or a mark either.
  if (stations.length === 0 && !isLost(found)) return null;
  const lastBefore = job.readings.findLast((one) => one.pass === 'before');
  const measuredOn = lastBefore ? dayIn(timeZone, lastBefore.at) : null;
  return {
    cover: {
      studCount: family.studCount,
      studCircleDiameterMm: family.studCircleDiameterMm,
      trackInnerDiameterMm: family.trackInnerDiameterMm,
      trackOuterDiameterMm: family.trackOuterDiameterMm,
      nominalWallMm: family.nominalWallMm,
    },
    stations,
    marks: places.flatMap(({ angleDeg, radiusMm, wallMm, markDepthMm }) =>
      stations.length > 0 && wallMm.length === 0 && markDepthMm !== null
        ? [{ angleDeg, radiusMm, depthMm: markDepthMm }]
        : [],
    ),
    gauge: job.sections.setup?.body.gaugeFigures ?? null,
    ...limitsFor(family, criteria, atHand),
    chucking: job.sections.setup?.body.chucking ?? null,
    plannedCutMm: job.sections.plan?.body.plannedCutMm ?? null,
    knockOn: job.sections.setup?.body.knockOn ?? null,
    releaseClearanceMm: job.sections.setup?.body.releaseClearanceMm ?? null,
    ...found,
    notInspected: notInspected(looked?.items ?? []),
    gaugesUsed: gaugesUsed(job.sections.setup?.body.gauges ?? [], masterChecks, measuredOn),
    measuredOn,
    doubtfulReadings: doubtedIn(job, 'before', family.studCount),
  };
}

/** The items of the inspection that nobody has looked at yet, as a sentence names them. */
export function notInspected(items: Looked['items']): readonly string[] {
  const seen = (item: LookItem) => items.some((one) => one.item === item && one.result !== 'not-looked');
  return LOOK_ITEMS.filter((item) => !seen(item)).map((item) => ITEM_WORD[item].toLowerCase());
}

/** Readings that look like a slip and were not confirmed: "wall behind stud 2 on the inner row". */
export function doubtedIn(job: Job, pass: Reading['pass'], studCount: number): string[] {
  return job.readings.flatMap((one, i) =>
    one.pass === pass && one.doubtful
      ? [`${lowerFirst(READING_WORD[pass][one.kind])} ${stationPlace(job.readings, i, studCount)}`]
      : [],
  );
}

/** What was read in one pass, place by place. */
export function placesRead(job: Job, pass: Pass): readonly Station[] {
  return stationsRead(job, pass).flatMap(({ angleDeg, radiusMm, readings }) => {
    const values = (kind: ReadingKind) =>
      readings.flatMap((one) => (one.kind === kind && one.valueMm !== null ? [one.valueMm] : []));
    const [heights, depths] = [values('face'), values('mark')];
    if (readings.length === 0) return [];
    return [
      {
        angleDeg,
        radiusMm,
        wallMm: values('wall'),
        // Repeats of a height are averaged like those of a wall, whichever tablet's came last.
        faceMm: heights.length === 0 ? null : mean(heights),
        // Of a mark read more than once the deepest counts: the layer has to go.
        markDepthMm: depths.length === 0 ? null : Math.max(...depths),
      },
    ];
  });
}

export const mean = (values: readonly number[]) =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
