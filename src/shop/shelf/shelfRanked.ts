import type { Entry, Family, ShopCriteria } from '../../../shared/words/catalogue.ts';
import { printRequired, printSure } from '../../../shared/words/cut.ts';
import { briefLength, type LengthUnit, printAgainst, printLength } from '../../../shared/words/print.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import {
  AGAINST_WORD,
  type ShelfAsked,
  type ShelfCover,
  type ShelfFacts,
} from '../../../shared/words/shelf.ts';
import { cutsLeft } from '../../calc/cover/cutting/cutsLeft.ts';
import { governingMinimum } from '../../calc/cover/governingMinimum.ts';
import { conformanceProbability } from '../../calc/measure/conformanceProbability.ts';
import { SAME_CIRCLE_MM } from '../../calc/stud/holes/holeCircle.ts';
import { onResurfacedPads } from '../../calc/stud/reach/onResurfacedPads.ts';
import type { OnShelf } from '../../records/shelf/shelfChanges.ts';
import { limitsFor } from '../limitsFor.ts';
import { Remembered } from '../remembered.ts';
import { studCheckFor } from '../studChoices.ts';
import { breathEvery } from '../work/breath.ts';

/** Crank pilots this close are the same: a bore takes one or does not; this program's own figure. */
const SAME_PILOT_MM = 0.1;
const TOLERANCE_MM = 1e-9;

/** What an order is held against, beside the covers. */
export interface ShelfUnder {
  readonly criteria: ShopCriteria;
  /** The flexplate stack that was asked for; null where none was. */
  readonly stack: Entry<'stack'> | null;
  readonly unit: LengthUnit;
}

/**
 * Every cover of the shelf of the type that is asked for, the one to take first: those that will do, of these the ones
 * reserved for nobody, of these the signed ones, and the thickest first.
 */
export async function shelfRanked(
  covers: readonly OnShelf[],
  asked: ShelfAsked,
  under: ShelfUnder,
): Promise<readonly ShelfCover[]> {
  const ranked: ShelfCover[] = [];
  for (const [step, cover] of covers.entries()) {
    if (asked.familyId !== null && cover.familyId !== asked.familyId) continue;
    ranked.push(heldAgainst(cover, asked, under));
    await breathEvery(step);
  }
  return ranked.sort(byRank);
}

const WILL = ['yes', 'with-care', 'no'] as const;

function byRank(a: ShelfCover, b: ShelfCover): number {
  const spare = ({ wallLeftMm, wantedMm }: ShelfCover) => (wallLeftMm ?? 0) - (wantedMm ?? 0);
  return (
    WILL.indexOf(a.will) - WILL.indexOf(b.will) ||
    Number(a.forJob !== null) - Number(b.forJob !== null) ||
    Number(b.signed) - Number(a.signed) ||
    spare(b) - spare(a) ||
    (a.jobNumber < b.jobNumber ? -1 : 1)
  );
}

interface Held {
  readonly will: ShelfCover['will'];
  readonly reason: string;
}

function heldAgainst(cover: OnShelf, asked: ShelfAsked, under: ShelfUnder): ShelfCover {
  const { facts } = cover;
  const { criteria } = under;
  const minimumMm = minimumOf(facts.family, criteria);
  const wantedMm =
    minimumMm === null ? asked.leastWallMm : Math.max(minimumMm, asked.leastWallMm ?? minimumMm);
  const wallLeftMm = facts.wallsMm.length === 0 ? null : Math.min(...facts.wallsMm);
  const sure = wantedMm === null ? null : sureOf(facts, wantedMm);
  const figures = { wallLeftMm, minimumMm, wantedMm, sure };
  const held: readonly Held[] = [
    ...(facts.against === null ? [] : [no(AGAINST_WORD[facts.against])]),
    ...wallHeld(facts, figures, asked, under),
    ...pilotHeld(facts, asked, under),
    ...stackHeld(facts, under),
    ...reservedHeld(cover),
  ];
  const will = WILL.findLast((one) => held.some((each) => each.will === one)) ?? 'yes';
  return {
    jobNumber: cover.jobNumber,
    familyId: cover.familyId,
    familyName: facts.family.name,
    lies: cover.lies,
    forJob: cover.forJob,
    since: cover.at,
    wallsAre: facts.wallsAre,
    wallLeftMm,
    wantedMm,
    sure,
    cutsLeft:
      wallLeftMm === null || minimumMm === null || criteria.typicalCutMm === null
        ? null
        : cutsLeft({ leastWallMm: wallLeftMm, minimumWallMm: minimumMm, typicalCutMm: criteria.typicalCutMm })
            .value,
    studName: facts.studs?.stud.name ?? null,
    signed: facts.signed,
    will,
    reasons: [...held]
      .sort((a, b) => WILL.indexOf(b.will) - WILL.indexOf(a.will))
      .map(({ reason }) => reason),
  };
}

const no = (reason: string): Held => ({ will: 'no', reason });
const care = (reason: string): Held => ({ will: 'with-care', reason });
const yes = (reason: string): Held => ({ will: 'yes', reason });

/** The minimum wall of a cover under the shop limits of today: the larger of the maker's and the shop's. */
function minimumOf(family: Family, limits: ShopCriteria): number | null {
  const { criteria, makerMinimumWallMm, makerMinimumWallSource } = limitsFor(family, limits, []);
  const governing = governingMinimum({
    makerMm: makerMinimumWallMm,
    makerSource: makerMinimumWallSource,
    shopMm: criteria?.minimumWallMm ?? null,
    shopSource: criteria?.minimumWallSource ?? null,
  });
  return governing?.mm ?? null;
}

/** Larger than any shelf: the same covers are asked about again and again. */
const sureness = new Remembered<number>(5000);

function sureOf({ wallsMm, errors }: ShelfFacts, wantedMm: number): number | null {
  if (errors === null || wallsMm.length === 0) return null;
  return sureness.once([wallsMm, errors, wantedMm], () =>
    conformanceProbability({ marginsMm: wallsMm.map((mm) => mm - wantedMm), ...errors }),
  );
}

function wallHeld(
  { wallsAre }: ShelfFacts,
  figures: {
    readonly wallLeftMm: number | null;
    readonly minimumMm: number | null;
    readonly wantedMm: number | null;
    readonly sure: number | null;
  },
  asked: ShelfAsked,
  { criteria, unit }: ShelfUnder,
): readonly Held[] {
  const { wallLeftMm, minimumMm, wantedMm, sure } = figures;
  if (wallLeftMm === null) return [];
  if (wantedMm === null)
    return [care(`${printLength(wallLeftMm, unit)} of wall left; no minimum is set: advice only.`)];
  const limit = wantedMm === minimumMm ? 'the minimum' : 'asked for';
  const against = `${printAgainst(wallLeftMm, wantedMm, unit)} of wall left; ${printLength(wantedMm, unit)} is ${limit}.`;
  if (wallLeftMm < wantedMm - TOLERANCE_MM) return [no(against)];
  const required = asked.sure ?? criteria.confidence;
  if (sure === null) return [care(`${against} How sure is not known: no gauge figures are entered.`)];
  const said = `${printSure(sure)} sure of it; ${printRequired(required)} is required.`;
  if (sure < required - TOLERANCE_MM) return [no(`Only ${said}`), yes(against)];
  return [wallsAre === 'measured' ? yes(against) : care(`${against} Not measured after the cut yet.`)];
}

function pilotHeld({ crankPilotMm }: ShelfFacts, asked: ShelfAsked, { unit }: ShelfUnder): readonly Held[] {
  if (asked.crankPilotMm === null) return [];
  const wanted = briefLength(asked.crankPilotMm, unit);
  if (crankPilotMm === null) return [care(`Its crank pilot is not measured; ${wanted} is asked for.`)];
  const same = Math.abs(crankPilotMm - asked.crankPilotMm) <= SAME_PILOT_MM + TOLERANCE_MM;
  const has = `Its crank pilot is ${printAgainst(crankPilotMm, asked.crankPilotMm, unit)}`;
  return [same ? yes(`${has}.`) : no(`${has}; ${wanted} is asked for.`)];
}

/** A stud in a stack is the same on many covers: each pair is checked once. */
const fits = new Remembered<Held>(2000);

function stackHeld(facts: ShelfFacts, { stack, criteria, unit }: ShelfUnder): readonly Held[] {
  return stack === null ? [] : [inStack(facts, stack, criteria, unit)];
}

/** Names of the flexplate stacks that the studs of a cover suit; none while its studs are not chosen. */
export function stacksSuited(
  facts: ShelfFacts,
  stacks: readonly Entry<'stack'>[],
  { criteria, unit }: ShelfUnder,
): readonly string[] {
  if (facts.studs === null) return [];
  return stacks.flatMap((stack) => {
    const { will } = inStack(facts, stack, criteria, unit);
    return will === 'no' ? [] : [will === 'yes' ? stack.name : `${stack.name} (check first)`];
  });
}

function inStack(facts: ShelfFacts, stack: Entry<'stack'>, criteria: ShopCriteria, unit: LengthUnit): Held {
  const { studs, family, resurfacedMm } = facts;
  const { studCount, studCircleDiameterMm } = family;
  const key = [
    studs,
    studCount,
    studCircleDiameterMm,
    resurfacedMm,
    stack.id,
    stack.revision,
    criteria,
    unit,
  ];
  return fits.once(key, () =>
    studs ? studHeld(facts, stack, criteria, unit) : ringHeld(facts, stack, unit),
  );
}

function studHeld(
  { studs, family, resurfacedMm }: ShelfFacts,
  { body: stack }: Entry<'stack'>,
  criteria: ShopCriteria,
  unit: LengthUnit,
): Held {
  const { stud } = studs!;
  const seated = { ...stud, stud: onResurfacedPads(stud.stud, resurfacedMm) };
  try {
    const { check } = studCheckFor(seated, stack, null, criteria, family, unit);
    return { will: check.fits, reason: `${stud.name} in ${stack.name}: ${check.headline} ${check.because}` };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return care(`${stud.name} in ${stack.name} can’t be checked: ${error.message}`);
  }
}

/** Its studs are not chosen: only their number and bolt circle can speak against the stack. */
function ringHeld({ family }: ShelfFacts, { body }: Entry<'stack'>, unit: LengthUnit): Held {
  const { holeCount, holeCircleDiameterMm: circleMm } = body.stack;
  if (holeCount !== null && holeCount !== family.studCount)
    return no(`${body.name} has ${holeCount} holes; the cover has ${family.studCount} studs.`);
  if (circleMm !== null && Math.abs(circleMm - family.studCircleDiameterMm) > SAME_CIRCLE_MM + TOLERANCE_MM)
    return no(
      `${body.name} has a bolt circle of ${briefLength(circleMm, unit)}; the cover’s is ${briefLength(family.studCircleDiameterMm, unit)}.`,
    );
  return care(`Its studs are not chosen yet; nothing else speaks against ${body.name}.`);
}

function reservedHeld({ forJob }: OnShelf): readonly Held[] {
  return forJob === null ? [] : [care(`Reserved for job ${forJob}.`)];
}
