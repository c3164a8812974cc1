import type { CatalogueStack, CatalogueStud, Family, ShopCriteria } from '../../shared/words/catalogue.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import type { Fault } from '../../shared/words/refusal.ts';
import type { Skipped, StackChoice, StudChoice } from '../../shared/words/stud/choices.ts';
import {
  type Joint,
  PILOT_LEAD_MM,
  type StudCheck,
  type StudCheckInput,
  type StudCriteria,
  type StudMatch,
} from '../../shared/words/stud/stud.ts';
import { checkStud } from '../calc/stud/checkStud.ts';
import { matchStacks } from '../calc/stud/match/matchStacks.ts';
import { matchStuds } from '../calc/stud/match/matchStuds.ts';
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

/** Every stud of the catalog held against a stack, best first. */
export function studChoicesFor(
  studs: readonly NamedEntry<CatalogueStud>[],
  stack: CatalogueStack,
  pullForwardMm: number | null,
  criteria: ShopCriteria,
  family: Family | null,
  unit: LengthUnit,
  joint: Joint | null = null,
): StudsRanked {
  const { usable, skipped } = sound(studs, ({ stud }) => studFaults(stud, unit));
  const matches: readonly StudMatch[] = matchStuds(
    {
      studs: usable.map(({ id, body }) => ({ id, stud: body.stud })),
      ...asked(stack, pullForwardMm, criteria, family, joint),
    },
    unit,
  );
  const choices = matches.flatMap((match) => {
    const entry = usable.find((one) => one.id === match.id)?.body;
    return entry ? [{ match, entry }] : [];
  });
  return { choices, skipped };
}
