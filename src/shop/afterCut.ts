import type { ComparedWall, NextPass, PassView } from '../../shared/words/afterCut.ts';
import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import type { MeasuredCheck } from '../../shared/words/cover.ts';
import type { Finding } from '../../shared/words/finding.ts';
import type { Job, Reading } from '../../shared/words/job.ts';
import { countingPasses, passesBeforeRing } from '../../shared/words/passes.ts';
import { samePlace } from '../../shared/words/places.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import { COVER_CALC_VERSION, checkCover } from '../calc/cover/checkCover.ts';
import { placeName } from '../calc/cover/placeNames.ts';
import { type AsCut, asCut, inputAsItStands, nextPass, type PassMade } from '../calc/judge/nextPass.ts';
import { verifyCut } from '../calc/judge/verifyCut.ts';
import { doubtedIn, mean, placesRead } from './jobInput.ts';
import { chosenWeights } from './limits/whatStops.ts';
import { shopMinimum } from './limitsFor.ts';
import { Remembered } from './remembered.ts';

const cuts = new Remembered<AsCut>(100);

/** What the passes made, and the readings after them, amount to. */
export interface AfterCut {
  /** Each station read since: before the cut, what the decision and the cut made would leave, and what was measured. */
  readonly compared: readonly ComparedWall[];
  /** What was decided and cut against what is measured. Empty until a wall was measured. */
  readonly found: readonly Finding[];
  /** What the last pass showed, and whether another still leaves the minimum; null before any, or with nothing decided. */
  readonly nextPass: NextPass | null;
}

/** Worked out from the decision as it was kept, so that it needs a decision, whether that still stands or not. */
export function afterCut(job: Job, criteria: ShopCriteria, unit: LengthUnit): AfterCut {
  return afterCutUnder(job, shopMinimum(job.sections.received?.body.family ?? null, criteria).mm, unit);
}

/** The same under the minimum wall the shop had at some time. */
export function afterCutUnder(job: Job, minimumMm: number | null, unit: LengthUnit): AfterCut {
  const made = passesMade(job);
  if (made === null) return { compared: [], found: [], nextPass: null };
  const cut = made.passes > 0 || made.after.length > 0 ? orNull(() => asCutOnce(made, unit)) : null;
  const compared = comparedWalls(job, made, cut);
  const wanted = made.passes > 0 && job.outcome !== null && job.outcome !== 'replace';
  return {
    compared,
    found: compared.length === 0 ? [] : found(job, made, compared, cut, minimumMm, unit),
    nextPass: wanted && cut ? orNull(() => nextPass(made, unit, cut)) : null,
  };
}

/** The page, the signature and the sheet kept with it ask this of the same passes and readings. */
function asCutOnce(made: PassMade, unit: LengthUnit): AsCut {
  return cuts.once([made, unit, COVER_CALC_VERSION], () => asCut(made, unit));
}

/** What cannot be worked out from these readings is left out. */
function orNull<T>(attempt: () => T): T | null {
  try {
    return attempt();
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/** What a cut cover is worked out from as it now stands; null while nothing was cut or measured after the cut. */
export function inputOnceCut(job: Job): ReturnType<typeof inputAsItStands> | null {
  const made = passesMade(job);
  return made === null || (made.passes === 0 && made.after.length === 0) ? null : inputAsItStands(made);
}

/** The cover after another pass of this depth; null with nothing decided, or where it cannot be worked out. */
export function passTried(job: Job, depthMm: number, unit: LengthUnit): MeasuredCheck | null {
  const made = passesMade(job);
  if (made === null) return null;
  const { input } = inputAsItStands(made);
  return orNull(() => checkCover({ ...input, plannedCutMm: (input.plannedCutMm ?? 0) + depthMm }, unit));
}

function passesMade(job: Job): (PassMade & { readonly passes: number }) | null {
  const decision = job.sections.decision?.body;
  // A cover given up without a wall measured is not cut, and there is nothing to hold readings against.
  if (!decision?.check.cut) return null;
  const passes = countingPasses(job);
  return {
    passes: passes.length,
    decided: decision.input,
    plannedMm: decision.check.cut.dialledMm,
    cutMm: passes.reduce((sum, { depthMm }) => sum + depthMm, 0),
    look: passes.at(-1)?.look ?? null,
    after: placesRead(job, 'after'),
  };
}

function comparedWalls(job: Job, { decided, after }: PassMade, cut: AsCut | null): readonly ComparedWall[] {
  const { check } = job.sections.decision!.body;
  return after.flatMap(({ wallMm, ...place }) => {
    if (wallMm.length === 0) return [];
    const index = decided.stations.findIndex((one) => samePlace(one, place));
    const before = check.stations[index];
    return [
      {
        ...place,
        place: placeName(place.angleDeg, decided.cover.studCount),
        beforeMm: before?.wallMm ?? null,
        decidedMm: before?.wallAfterMm ?? null,
        cutMm: cut?.wallsMm[index] ?? null,
        measuredMm: mean(wallMm),
      },
    ];
  });
}

function found(
  job: Job,
  made: PassMade & { readonly passes: number },
  compared: readonly ComparedWall[],
  cut: AsCut | null,
  minimumTodayMm: number | null,
  unit: LengthUnit,
): readonly Finding[] {
  const { decided, after, cutMm, plannedMm, look } = made;
  const decision = job.sections.decision!.body;
  const wanted = decision.criteria.confidence;
  const share = made.passes > 0 ? (cut?.stands.conformanceProbability ?? null) : null;
  return verifyCut(
    {
      cover: decided.cover,
      stations: compared.map(({ angleDeg, radiusMm, measuredMm, cutMm: cutWallMm }) => ({
        angleDeg,
        radiusMm,
        wallMm: measuredMm,
        cutWallMm,
      })),
      heights: after.flatMap(({ angleDeg, radiusMm, faceMm }) =>
        faceMm === null ? [] : [{ angleDeg, radiusMm, faceMm }],
      ),
      truedAgain: countingPasses(job).at(-1)?.truedAgain ?? null,
      marksLeft: after.flatMap(({ angleDeg, radiusMm, markDepthMm }) =>
        markDepthMm === null ? [] : [{ angleDeg, radiusMm, depthMm: markDepthMm }],
      ),
      doubtful: doubtedIn(job, 'after', decided.cover.studCount),
      sureness: share === null || wanted === null ? null : { share, wanted },
      measuredBefore: decided.stations,
      minimumWall: decision.check.minimumWall,
      minimumTodayMm,
      faceRunoutLimitMm: decision.criteria.faceRunoutLimitMm,
      cleanUpAllowanceMm: decision.criteria.cleanUpAllowanceMm,
      dialledMm: cutMm,
      plannedMm,
      look,
      whatStops: chosenWeights(decision.criteria),
    },
    unit,
  );
}

/** Each pass with what was seen and read after it, until the next. */
export function passesOf(job: Job): readonly PassView[] {
  const at = job.passesAt ?? [];
  const after = [...(job.earlierAfter ?? []), ...job.readings.filter((one) => one.pass === 'after')];
  const before = passesBeforeRing(job);
  let totalMm = 0;
  return (job.sections.cuts?.body.cuts ?? []).map((cut, i) => {
    totalMm = i === before ? cut.depthMm : totalMm + cut.depthMm;
    const [from, to] = [at[i] ?? 0, at[i + 1] ?? Number.POSITIVE_INFINITY];
    const read = after.filter((one) => one.revision > from && one.revision <= to);
    const values = (kind: Reading['kind']) =>
      read.filter((one) => one.kind === kind).map((one) => one.valueMm ?? 0);
    const [walls, marks] = [values('wall'), values('mark')];
    return {
      depthMm: cut.depthMm,
      totalMm,
      note: cut.note,
      look: cut.look ?? null,
      beforeRing: i < before,
      thinnestMm: walls.length === 0 ? null : Math.min(...walls),
      darkMm: marks.length === 0 ? null : Math.max(...marks),
    };
  });
}
