import type { ComparedWall } from '../../shared/words/afterCut.ts';
import type { CoverCheck } from '../../shared/words/cover.ts';
import { printCut } from '../../shared/words/cut.ts';
import type { Finding } from '../../shared/words/finding.ts';
import { findingsShown } from '../../shared/words/findingsShown.ts';
import type { Job } from '../../shared/words/job.ts';
import {
  type AfterIs,
  FOUND_WHEN,
  type FoundWhen,
  type PaperFinding,
  type PaperFindings,
  type PaperWalls,
} from '../../shared/words/paper.ts';
import { samePlace } from '../../shared/words/places.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { rowsOf } from '../calc/judge/coverWords.ts';
import { isListFinding } from './inspection/listFindings.ts';
import type { JobAnswer } from './jobAnswer.ts';
import { placeOn } from './placesOfJob.ts';

/** The stations in their order, then those that were first measured after the cut. */
export function wallsOnPaper(job: Job, answer: Pick<JobAnswer, 'stands' | 'compared'>): PaperWalls {
  const { stands, compared } = answer;
  const after = afterIs(job, stands, compared);
  const cover = job.sections.received?.body.family;
  const decided = (stands?.stations ?? []).map((one) => ({
    angleDeg: one.angleDeg,
    radiusMm: one.radiusMm,
    beforeMm: one.wallMm,
    faceMm: one.faceMm,
    markMm: one.markDepthMm > 0 ? one.markDepthMm : null,
    afterMm: {
      measured: compared.find((now) => samePlace(now, one))?.measuredMm ?? null,
      predicted: one.wallAfterMm,
      none: null,
    }[after],
  }));
  const since = compared
    .filter((now) => !decided.some((one) => samePlace(now, one)))
    .map(({ angleDeg, radiusMm, measuredMm }) => ({
      angleDeg,
      radiusMm,
      beforeMm: null,
      faceMm: null,
      markMm: null,
      afterMm: measuredMm,
    }));
  const all = [...decided, ...since];
  const rows = rowsOf(all);
  return {
    stations: all.map((one, i) => ({ ...one, row: rows[i]!, place: placeOn(cover, one.angleDeg) })),
    after,
    thinnest: thinnestOf(all.map((one) => (after === 'none' ? one.beforeMm : one.afterMm))),
  };
}

function afterIs(job: Job, stands: CoverCheck | null, compared: readonly ComparedWall[]): AfterIs {
  if (compared.length > 0) return 'measured';
  const replaced = job.outcome === 'replace' || (job.outcome === null && stands?.verdict === 'replace');
  return replaced ? 'none' : 'predicted';
}

function thinnestOf(walls: readonly (number | null)[]): number | null {
  const known = walls.filter((mm) => mm !== null);
  return known.length === 0 ? null : walls.indexOf(Math.min(...known));
}

/** What was found, before the cut, after it and on the studs: what is not OK by itself, what is OK by name. */
export function findingsOnPaper(job: Job, answer: Pick<JobAnswer, 'stands' | 'verified'>): PaperFindings {
  const studs = job.sections.studs?.body ?? null;
  const all: Readonly<Record<FoundWhen, readonly Finding[]>> = {
    before: answer.stands ? findingsShown(answer.stands, job.outcome === 'face') : [],
    list: answer.verified.filter(isListFinding),
    after: answer.verified.filter((one) => !isListFinding(one)),
    studs: studs
      ? [
          ...studs.check.findings,
          ...(studs.replaced ?? []).flatMap(({ findings }) => findings),
          ...(studs.retightening?.findings ?? []),
        ]
      : [],
  };
  const words = overrulingWords(job);
  const pick = (when: FoundWhen, ok: boolean) => all[when].filter(({ status }) => (status === 'pass') === ok);
  return {
    notOk: FOUND_WHEN.flatMap((when) =>
      pick(when, false).map((finding) => ({ when, finding, overruled: words[when] })),
    ),
    ok: {
      before: pick('before', true).map(({ title }) => title),
      list: pick('list', true).map(({ title }) => title),
      after: pick('after', true).map(({ title }) => title),
      studs: pick('studs', true).map(({ title }) => title),
    },
  };
}

/** The reason of the decision, the statement of the signer, the note beside the studs; a cover that is replaced needs none. */
function overrulingWords({ sections, outcome, stage }: Job): Record<FoundWhen, PaperFinding['overruled']> {
  const { decision, studs } = sections;
  const signature = stage === 'signed' ? sections.signature : null;
  const said = (kept: { readonly who: string; readonly at: string } | null, why: string | undefined) =>
    kept !== null && why !== undefined && why.trim() !== '' && outcome !== 'replace'
      ? { who: kept.who, at: kept.at, why: why.trim() }
      : null;
  const stated = said(signature, signature?.body.statement);
  return {
    before: outcome === null ? null : said(decision, decision?.body.reason),
    list: stated,
    after: stated,
    studs: said(studs, studs?.body.note) ?? stated,
  };
}

/** The cut with the one rounding it has everywhere; null where nothing is to be cut. */
export function cutOnPaper(
  { stands }: Pick<JobAnswer, 'stands'>,
  after: AfterIs,
  unit: LengthUnit,
): string | null {
  return !stands?.cut || after === 'none' ? null : printCut(stands.cut.dialledMm, unit);
}
