import type { CatalogueStack, CatalogueStud, Family, ShopCriteria } from '../../shared/words/catalogue.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import type { Fault } from '../../shared/words/refusal.ts';
import type { Skipped, StackChoice, StudChoice } from '../../shared/words/stud/choices.ts';
import {
  type Joint,
  type NamedStud,
  PILOT_LEAD_MM,
  type StudCheck,
  type StudCheckInput,
  type StudCriteria,
  type StudMatch,
} from '../../shared/words/stud/stud.ts';
import { checkStud } from '../calc/stud/checkStud.ts';
import { bestStuds } from '../calc/stud/match/bestStuds.ts';
import { matchStacks } from '../calc/stud/match/matchStacks.ts';
import { type MatchStudsInput, matchStuds } from '../calc/stud/match/matchStuds.ts';
import { whatWouldMend } from '../calc/stud/match/whatWouldMend.ts';
import { stackFaults, studFaults } from '../calc/stud/refuseStud.ts';

export interface NamedEntry<Body> {
  readonly id: string;
  readonly body: Body;
}

/** What the shop's limits say of studs. */
function studCriteria(criteria: ShopCriteria): StudCriteria {
  return {
    protrusionThreads: criteria.protrusionThreads,
    startThreads: criteria.startThreads,
    pilotLeadMm: criteria.pilotLeadMm ?? PILOT_LEAD_MM,
    leastPullForwardMm: criteria.leastPullForwardMm ?? null,
    mostPullForwardMm: criteria.mostPullForwardMm ?? null,
  };
}

/** What a stack asks of a stud, under the shop's criteria and, where a cover is known, on its stud circle. */
function asked(
  stack: CatalogueStack,
  pullForwardMm: number | null,
  criteria: ShopCriteria,
  family: Family | null,
  joint: Joint | null,
) {
  return {
    stack: stack.stack,
    nut: stack.nut,
    pullForwardMm: pullForwardMm ?? stack.pullForwardMm,
    criteria: studCriteria(criteria),
    joint,
    coverStudCount: family?.studCount ?? null,
    coverStudCircleDiameterMm: family?.studCircleDiameterMm ?? null,
  };
}

/** Everything one stud in one stack is worked out from; the joint apart. */
export function studInput(
  stud: CatalogueStud,
  stack: CatalogueStack,
  pullForwardMm: number | null,
  criteria: ShopCriteria,
  family: Family | null,
): StudCheckInput {
  return { stud: stud.stud, ...asked(stack, pullForwardMm, criteria, family, null) };
}

/** One stud held against a stack: what was asked, and the answer. */
export function studCheckFor(
  stud: CatalogueStud,
  stack: CatalogueStack,
  pullForwardMm: number | null,
  criteria: ShopCriteria,
  family: Family | null,
  unit: LengthUnit,
  joint: Joint | null = null,
): { readonly input: StudCheckInput; readonly check: StudCheck } {
  const input = { stud: stud.stud, ...asked(stack, pullForwardMm, criteria, family, joint) };
  return { input, check: checkStud(input, unit) };
}

/** Studs of the catalog, best first, and those that could not be checked. */
export interface StudsRanked {
  readonly choices: readonly StudChoice[];
  readonly skipped: readonly Skipped[];
  /** Of a large catalog, how many that fit no better are not among them. */
  readonly leftOut: number;
}

/** One entry with an impossible figure does not keep the others from being checked: it is named instead. */
function sound<Body extends { readonly name: string }>(
  entries: readonly NamedEntry<Body>[],
  faultsOf: (body: Body) => readonly Fault[],
): { readonly usable: readonly NamedEntry<Body>[]; readonly skipped: readonly Skipped[] } {
  const why = new Map(entries.map(({ id, body }) => [id, faultsOf(body)[0]?.message]));
  return {
    usable: entries.filter(({ id }) => why.get(id) === undefined),
    skipped: entries.flatMap(({ id, body: { name } }) => {
      const message = why.get(id);
      return message === undefined ? [] : [{ id, name, why: message }];
    }),
  };
}

/** Those whose figures can be. */
export function soundStuds(
  studs: readonly NamedEntry<CatalogueStud>[],
): readonly NamedEntry<CatalogueStud>[] {
  return sound(studs, ({ stud }) => studFaults(stud, 'mm')).usable;
}

/** Every stack of the catalog held against a stud, best first, each with what would make something better of it. */
export function stackChoicesFor(
  stud: CatalogueStud,
  stacks: readonly NamedEntry<CatalogueStack>[],
  criteria: ShopCriteria,
  unit: LengthUnit,
  /** As measured; null: each stack’s own. */
  pullForwardMm: number | null = null,
): { readonly choices: readonly StackChoice[]; readonly skipped: readonly Skipped[] } {
  const { usable, skipped } = sound(stacks, ({ stack, nut }) => stackFaults(stack, nut, unit));
  const matches = matchStacks(
    {
      stud: stud.stud,
      stacks: usable.map(({ id, body }) => ({
        ...body,
        id,
        pullForwardMm: pullForwardMm ?? body.pullForwardMm,
      })),
      criteria: studCriteria(criteria),
      joint: null,
      coverStudCount: null,
      coverStudCircleDiameterMm: null,
    },
    unit,
  );
  const choices = matches.flatMap(({ id, check, decidedBy }) => {
    const entry = usable.find((one) => one.id === id)?.body;
    if (!entry) return [];
    const otherThread = check.fits === 'no' && decidedBy === 'thread';
    const mends =
      check.fits === 'yes' || otherThread
        ? []
        : whatWouldMend(studInput(stud, entry, pullForwardMm, criteria, null), unit).map(
            ({ sentence }) => sentence,
          );
    return [{ id, entry, check, otherThread, mends }];
  });
  return { choices, skipped };
}

/** Of a catalog with more studs than these, only the best are held against a stack in full. */
const MOST_IN_FULL = 40;
export const BEST_TOLD = 20;

/** The studs of the catalog held against a stack, best first: all of them, or of many the best, and the one asked for. */
export function studChoicesFor(
  studs: readonly NamedEntry<CatalogueStud>[],
  stack: CatalogueStack,
  pullForwardMm: number | null,
  criteria: ShopCriteria,
  family: Family | null,
  unit: LengthUnit,
  joint: Joint | null = null,
  alsoId: string | null = null,
): StudsRanked {
  const { usable, skipped } = sound(studs, ({ stud }) => studFaults(stud, unit));
  const named = usable.map(({ id, body }) => ({ id, stud: body.stud }));
  const surroundings = asked(stack, pullForwardMm, criteria, family, joint);
  const matches = [...bestOf(named, surroundings, unit)];
  const also = named.find(({ id }) => id === alsoId && !matches.some((one) => one.id === id));
  if (also !== undefined) matches.push(...matchStuds({ ...surroundings, studs: [also] }, unit));
  const entries = new Map(usable.map(({ id, body }) => [id, body]));
  const choices = matches.flatMap((match) => {
    const entry = entries.get(match.id);
    return entry ? [{ match, entry }] : [];
  });
  return { choices, skipped, leftOut: usable.length - choices.length };
}

function bestOf(
  studs: readonly NamedStud[],
  surroundings: Omit<MatchStudsInput, 'studs'>,
  unit: LengthUnit,
): readonly StudMatch[] {
  const input = { ...surroundings, studs };
  return studs.length > MOST_IN_FULL ? bestStuds(input, BEST_TOLD, unit) : matchStuds(input, unit);
}
