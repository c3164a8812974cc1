import type {
  Bending,
  BendingBase,
  BendingCaseId,
  CatalogueNamed,
  HeatSettings,
  PistonRange,
} from '../../../shared/words/bending/bending.ts';
import type { StiffnessAnswer, StiffnessInput } from '../../../shared/words/bending/stiffness.ts';
import type { Entry, Family, ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { CoverCheck, MeasuredCheck } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import type { Job, RingWelded } from '../../../shared/words/job.ts';
import { type LengthUnit, listInWords } from '../../../shared/words/print.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { heatOfSteel } from '../../calc/heat/heatOfSteel.ts';
import { stiffnessFindings } from '../../calc/judge/stiffnessFindings.ts';
import { PLATE_CALC_VERSION } from '../../calc/plate/bendCover.ts';
import { bendingBase } from '../../calc/plate/bendingBase.ts';
import { bendingCase, bendingCases, type CaseAsked, caseInput } from '../../calc/plate/bendingCases.ts';
import { marksHeld } from '../../calc/plate/marksHeld.ts';
import { refuseCover } from '../../calc/plate/model/refuseCover.ts';
import { padsOverTrack } from '../../calc/plate/padsOverTrack.ts';
import { ringTold } from '../../calc/plate/ringTold.ts';
import { apart } from '../work/apart.ts';
import { type Asker, WorkBusy, WorkFailed } from '../work/workPool.ts';

/** One answer of the model, worked out beside the requests and kept. */
export function bend(input: StiffnessInput, asker?: Asker): Promise<StiffnessAnswer> {
  return apart('bending', [input], asker);
}

export interface BendingAsked {
  readonly family: Family | null;
  /** Typed on the page, not of the catalogue. */
  readonly own?: boolean;
  readonly criteria: ShopCriteria;
  readonly check: MeasuredCheck;
  /** Of the findings' sentences. */
  readonly unit: LengthUnit;
  /** The ring that is on, and how it is joined. */
  readonly welded?: Pick<RingWelded, 'joinedToPads'> | null;
  /** The new cover of another family, side by side. */
  readonly other?: { readonly id: string; readonly family: Family } | null;
  /** Left out: every case there is. */
  readonly only?: readonly BendingCaseId[];
  readonly asker?: Asker | undefined;
}

/** The advice, or the sentence that says why there is none; and what it is as findings where the shop has set a limit. */
export interface BendingTold {
  readonly bending: Bending | null;
  readonly why: string | null;
  /** Why the other family is not set beside it; null where it is, or none was chosen. */
  readonly besideWhy: string | null;
  readonly findings: readonly Finding[];
}

export async function bendingFor(asked: BendingAsked): Promise<BendingTold> {
  const { family, criteria, unit, other = null } = asked;
  const limits = limitsOf(criteria);
  const told = (bending: Bending | null, why: string | null): BendingTold => ({
    bending,
    why,
    besideWhy: bending && other && besideWhy(other, criteria),
    findings: stiffnessFindings({ limits, bending, why, ringAllowed: family?.ringAllowed ?? false, unit }),
  });
  if (family === null) return told(null, NO_FAMILY);
  const { base, missing, shopSilent } = bendingBase(family, criteria.bending ?? null);
  if (base === null) {
    return told(
      null,
      `Bending and heat are not worked out. ${missingInWords(missing, shopSilent, asked.own === true)}`,
    );
  }
  if (asked.welded && !family.ring) return told(null, NO_RING);
  try {
    return told(await work(asked, family, base), null);
  } catch (error) {
    if (error instanceof Refusal)
      return told(null, `Bending is not worked out. ${saidIn(error, base, unit)}`);
    if (error instanceof WorkBusy) return told(null, BUSY);
    if (!(error instanceof WorkFailed)) throw error;
    console.error(error);
    return told(null, NOT_JUST_NOW);
  }
}

const BUSY = 'Too many covers are being worked out just now. Load the page again in a few seconds.';
const NOT_JUST_NOW = 'Bending could not be worked out just now. Load the page again.';
const NO_FAMILY =
  'Bending and heat are not worked out. They need a cover type with its center, rim, pads, side wall, piston seal and impeller hub. Choose one under Received.';
const NO_RING =
  'Bending and heat are not worked out. A stiffening ring is welded on, and the cover type has none. Add the ring to the cover type in the catalog.';

/** Why another cover type cannot be set beside a cover; null where it can. */
function besideWhy({ family }: NonNullable<BendingAsked['other']>, criteria: ShopCriteria): string | null {
  const { base, missing, shopSilent } = bendingBase(family, criteria.bending ?? null);
  if (base !== null) return null;
  return `${family.name} can’t be compared. ${missingInWords(missing, shopSilent, false)}`;
}

function missingInWords(missing: readonly string[], shopSilent: boolean, own: boolean): string {
  const parts: string[] = [];
  if (missing.length > 0) {
    const where = own ? 'under the cover’s dimensions' : 'to the cover type in the catalog';
    parts.push(`Missing: ${listInWords(missing)}. Add ${missing.length === 1 ? 'it' : 'them'} ${where}.`);
  }
  if (shopSilent) parts.push('The shop limits have no lining and steel. Add them there.');
  return parts.join(' ');
}

/** Why the model does not take a cover, in the reader’s unit where it is the cover’s sizes. */
function saidIn(refused: Refusal, base: BendingBase, unit: LengthUnit): string {
  const said = ({ faults }: Refusal) => faults.map(({ message }) => message).join(' ');
  try {
    refuseCover(caseInput(asNew(base), 'rigid'), unit);
  } catch (again) {
    if (again instanceof Refusal) return said(again);
    throw again;
  }
  return said(refused);
}

function limitsOf(criteria: ShopCriteria): Bending['limits'] {
  const { peakOverNew = null, rippleOverNew = null } = criteria.bending ?? {};
  return { peakOverNew, rippleOverNew };
}

type Answers = Readonly<Record<keyof PistonRange, StiffnessAnswer>>;

async function work(asked: BendingAsked, family: Family, base: BendingBase): Promise<Bending> {
  const { criteria, check, only, asker, welded: weld = null, other = null } = asked;
  const welded = weld !== null;
  const heat = heatIn(criteria, family);
  const limits = limitsOf(criteria);
  const planned = welded || family.ringAllowed ? (family.ring ?? null) : null;
  // What is on the cover counts, not what its family has planned.
  const ring = planned && weld ? { ...planned, joinedToPads: weld.joinedToPads ?? null } : planned;
  const cases = bendingCases({
    base,
    leastBeforeMm: check.leastWall.beforeMm,
    leastAfterMm: check.leastWall.afterMm,
    ring,
    welded,
  }).filter(({ id }) => only === undefined || only.includes(id));
  const otherBase = other && bendingBase(other.family, criteria.bending ?? null).base;
  const otherHeat = other && heatIn(criteria, other.family);
  const columns: CaseAsked[] = otherBase ? [...cases, asNew(otherBase)] : cases;
  const answered = await Promise.all(columns.map((one) => bothPistons(one, asker)));
  const { overlapMm, peakTooLow } = padsOverTrack(base);
  const answersOf = (id: BendingCaseId) => answered[columns.findIndex((one) => one.id === id)] ?? null;
  const now = answersOf('now');
  return {
    calcVersion: PLATE_CALC_VERSION,
    base,
    heat,
    cases: columns.map((one, i) => bendingCase(one, answered[i]!, one.id === 'other' ? otherHeat : heat)),
    other: other &&
      otherBase && { familyId: other.id, name: other.family.name, base: otherBase, heat: otherHeat },
    steel: named(family.steel, family.steel?.steel),
    lining: named(family.lining, family.lining?.lining),
    limits,
    wallForPeakMm: await wallForPeak(base, limits, answersOf('new'), only, asker),
    padsTooFarMm: peakTooLow ? overlapMm : null,
    marks: now && marksHeld({ marks: marksOf(check), studCount: base.studCount, answers: now }),
    ring:
      ring &&
      ringTold({
        size: ring,
        padThicknessMm: base.padThicknessMm,
        runoutMm: criteria.bending?.ringRunoutMm ?? null,
        balance: criteria.balance ?? null,
      }),
    welded,
  };
}

/** The shop’s engagement in the steel of a cover type. */
function heatIn({ heat }: ShopCriteria, { steel }: Family): HeatSettings | null {
  return heat ? heatOfSteel(heat, steel?.steel ?? null) : null;
}

/** The engagement that was told, in the steel of another cover type: the shop’s where it names none. */
function heatBeside(told: HeatSettings, { heat: shop }: ShopCriteria, { steel }: Family): HeatSettings {
  const { conductivityWPerMK, densityKgPerM3, specificHeatJPerKgK } = shop ?? told;
  return heatOfSteel(
    { ...told, conductivityWPerMK, densityKgPerM3, specificHeatJPerKgK },
    steel?.steel ?? null,
  );
}

function named(
  at: Omit<CatalogueNamed, 'name'> | null | undefined,
  body: { readonly name: string } | undefined,
) {
  return at && body ? { id: at.id, revision: at.revision, name: body.name } : null;
}

function asNew(base: BendingBase): CaseAsked {
  return { id: 'other', base, trackWallMm: base.wallMm, ring: null };
}

/** What was kept with a decision, held against the shop's limits of today. */
export function toldAsKept(
  bending: Bending,
  family: Family | null,
  criteria: ShopCriteria,
  unit: LengthUnit,
): BendingTold {
  const ringAllowed = family?.ringAllowed ?? false;
  const findings = stiffnessFindings({ limits: limitsOf(criteria), bending, why: null, ringAllowed, unit });
  return { bending, why: null, besideWhy: null, findings };
}

/** Whether it would be told the same if it were asked again: not where the thread failed. */
export function lasts({ why }: BendingTold): boolean {
  return why !== NOT_JUST_NOW && why !== BUSY;
}

/** The ring that is on the cover of a job; null while none is. */
export function weldOf(job: Job): RingWelded | null {
  return job.sections.setup?.body.ringWelded ?? null;
}

/** The family to set beside a cover, where one was chosen and is there. */
export function besideOf(families: readonly Entry<'family'>[], id: string | undefined) {
  const other = families.find((one) => one.id === id);
  return other ? { id: other.id, family: other.body } : null;
}

/** What was told, with another family’s new cover beside it, as that is today; the same where none was chosen. */
export async function setBeside(
  told: BendingTold | null,
  other: BendingAsked['other'],
  criteria: ShopCriteria,
  asker?: Asker,
): Promise<BendingTold | null> {
  if (!told?.bending || !other) return told;
  const { base } = bendingBase(other.family, criteria.bending ?? null);
  if (base === null) return { ...told, besideWhy: besideWhy(other, criteria) };
  const column = asNew(base);
  const heat = told.bending.heat && heatBeside(told.bending.heat, criteria, other.family);
  const shown = bendingCase(column, await bothPistons(column, asker), heat);
  const bending = {
    ...told.bending,
    cases: [...told.bending.cases, shown],
    other: { familyId: other.id, name: other.family.name, base, heat },
  };
  return { ...told, bending };
}

export async function bothPistons(one: CaseAsked, asker?: Asker): Promise<Answers> {
  const [rigid, conforming] = await Promise.all([
    bend(caseInput(one, 'rigid'), asker),
    bend(caseInput(one, 'conforming'), asker),
  ]);
  return { rigid, conforming };
}

/** Depends on the family alone: looked for once, and kept. */
async function wallForPeak(
  base: BendingBase,
  { peakOverNew }: Bending['limits'],
  fresh: Answers | null,
  only: readonly BendingCaseId[] | undefined,
  asker: Asker | undefined,
): Promise<number | null> {
  if (peakOverNew === null || fresh === null || only !== undefined) return null;
  const found = async (piston: keyof PistonRange) => {
    const peakLimit = peakOverNew * fresh[piston].peakOverMean;
    const asNew = { ...base, trackWallMm: base.wallMm, ring: null, piston, padInsetWalls: null, peakLimit };
    return (await bend(asNew, asker)).wallForPeakMm;
  };
  const [rigid, conforming] = [await found('rigid'), await found('conforming')];
  if (rigid === null || conforming === null) return rigid ?? conforming;
  return Math.max(rigid, conforming);
}

function marksOf(check: CoverCheck) {
  return [
    ...check.stations.map(({ angleDeg, radiusMm, markDepthMm }) => ({
      angleDeg,
      radiusMm,
      depthMm: markDepthMm,
    })),
    ...check.marks.map(({ angleDeg, radiusMm, depthMm }) => ({ angleDeg, radiusMm, depthMm })),
  ];
}
