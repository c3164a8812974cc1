import type { TypedLength } from '../../../shared/quantity/slip.ts';
import type { CoverCheckInput } from '../../../shared/words/cover.ts';
import type { UnitAndZone } from '../../../shared/words/day.ts';
import { COVER_SHAPE } from '../../../shared/words/fields/cover.ts';
import { BALANCE } from '../../../shared/words/fields/criteria.ts';
import { PLAN } from '../../../shared/words/fields/job.ts';
import { FIT_LIMITS } from '../../../shared/words/fields/knockOn.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import type { DoubtedFigure } from '../../../shared/words/finding.ts';
import type { Job, MeasuringSetup } from '../../../shared/words/job.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { workOutCover } from '../../calc/cover/checkCover.ts';
import type { Db } from '../../records/database/database.ts';
import { jobAnswer } from '../jobAnswer.ts';
import { jobUnder } from '../jobUnder.ts';
import { isLarge } from '../work/apart.ts';
import { FITS_EXPECTED, planExpected, SHAPE_EXPECTED, setupExpected } from './coverExpected.ts';
import { figuresDoubted } from './figuresDoubted.ts';
import { limitDoubts } from './limitDoubt.ts';
import { CRITERIA_EXPECTED } from './limitsExpected.ts';
import { padHeightDoubt } from './padHeightDoubt.ts';

/**
 * What was sent with a cover in plain numbers and looks like a slip, readings apart, but for what `confirmed` names: of
 * whom nobody can be asked, it is told beside the answer.
 */
export function coverFiguresDoubted(
  input: CoverCheckInput,
  confirmed: readonly string[],
): readonly DoubtedFigure[] {
  const { cover, gauge, knockOn, familyLimits, releaseClearanceMm, balance, plannedCutMm } = input;
  const fits = familyLimits ? { padThicknessMm: null, limits: familyLimits } : null;
  const measured = { gaugeFigures: null, residualRunoutMm: null, releaseClearanceMm, knockOn: null };
  const plan = planExpected(plannedCutMm === null ? null : cleanUpMm(input));
  const all = [
    ...figuresDoubted(COVER_SHAPE, cover, SHAPE_EXPECTED, 'cover'),
    ...figuresDoubted(SETUP.gaugeFigures.fields, gauge ?? {}, setupExpected(fits).gaugeFigures, 'gauge'),
    ...figuresDoubted(SETUP, measured, setupExpected(fits), ''),
    ...knockOnDoubted(knockOn ?? null, fits, 'knockOn'),
    ...figuresDoubted(FIT_LIMITS, familyLimits ?? {}, FITS_EXPECTED, 'familyLimits'),
    ...figuresDoubted(BALANCE, balance ?? {}, CRITERIA_EXPECTED.balance, 'balance'),
    ...figuresDoubted(PLAN, { plannedCutMm }, plan, ''),
    ...limitsDoubted(input),
  ];
  return all.filter(({ path }) => !confirmed.includes(path));
}

/** How a job’s cover is measured, as JSON sends it: what looks like a slip. */
export function setupDoubted(
  setup: MeasuringSetup,
  family: Parameters<typeof setupExpected>[0],
  at: string,
): readonly DoubtedFigure[] {
  return [
    ...figuresDoubted(SETUP, { ...setup, knockOn: null }, setupExpected(family), at),
    ...knockOnDoubted(setup.knockOn ?? null, family, `${at}.knockOn`),
  ];
}

function knockOnDoubted(
  knockOn: MeasuringSetup['knockOn'],
  family: Parameters<typeof setupExpected>[0],
  at: string,
): readonly DoubtedFigure[] {
  if (!knockOn) return [];
  const heights = (knockOn.padHeightsMm ?? []).map(inMm);
  const pad = padHeightDoubt(heights);
  return [
    ...figuresDoubted(SETUP.knockOn.fields, knockOn, setupExpected(family).knockOn, at),
    ...(pad === null || pad.doubt.meantMm === null
      ? []
      : [
          {
            path: `${at}.padHeightsMm.${pad.index}`,
            value: heights[pad.index]!.valueMm,
            probably: pad.doubt.meantMm,
            unit: 'mm',
            question: pad.doubt.question,
          },
        ]),
  ];
}

/** Limits that can hardly be meant, where another value probably was. */
function limitsDoubted({ cover, criteria, makerMinimumWallMm }: CoverCheckInput): readonly DoubtedFigure[] {
  const covers = [{ name: '', nominalWallMm: cover.nominalWallMm }];
  const asked = (typed: Parameters<typeof limitDoubts>[0], at: (limit: string) => string) =>
    limitDoubts(typed, null, covers).flatMap(({ limit, doubt }): DoubtedFigure[] => {
      const value = typed[limit]?.valueMm;
      if (value === undefined || doubt.meantMm === null) return [];
      return [{ path: at(limit), value, probably: doubt.meantMm, unit: 'mm', question: doubt.question }];
    });
  const { minimumWallMm, faceRunoutLimitMm, cleanUpAllowanceMm, typicalCutMm } = criteria ?? {};
  const of = (mm: number | null | undefined) => (mm == null ? null : inMm(mm));
  return [
    ...asked(
      {
        minimumWallMm: of(minimumWallMm),
        faceRunoutLimitMm: of(faceRunoutLimitMm),
        cleanUpAllowanceMm: of(cleanUpAllowanceMm),
        typicalCutMm: of(typicalCutMm),
      },
      (limit) =>
        limit === 'minimumWallMm' && criteria?.minimumWallFormula
          ? 'criteria.minimumWallFormula'
          : `criteria.${limit}`,
    ),
    ...asked({ minimumWallMm: of(makerMinimumWallMm) }, () => 'makerMinimumWallMm'),
  ];
}

function inMm(valueMm: number): TypedLength {
  return { valueMm, typed: String(valueMm), unit: 'mm', decimalSign: 'point' };
}

/** The least cut that cleans a cover up, whatever is planned; null where it cannot be worked out at once. */
export function cleanUpMm(input: CoverCheckInput): number | null {
  if (input.stations.length === 0 || isLarge(input)) return null;
  try {
    return workOutCover({ ...input, plannedCutMm: null }).cleanUp.dialledMm;
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/** The same of a job’s cover as it is measured now. */
export async function jobCleanUpMm(db: Db, job: Job, writing: UnitAndZone): Promise<number | null> {
  const { check } = await jobAnswer(job, await jobUnder(db, job, writing), { anew: true });
  return check?.cut?.cleanUpMm ?? null;
}
