import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import {
  FLEXPLATE_LOOKS,
  type FlexplateAnswer,
  type FlexplateFound,
  type FlexplateLook,
  type FlexplateNext,
  type FlexplateSeen,
  type FlexplatesFound,
} from '../../../shared/words/stud/choices.ts';
import { stacksByThickness } from '../../calc/stud/numbers/stacksByThickness.ts';
import type { NamedEntry } from '../studChoices.ts';
import { sameThread } from './threads.ts';

/** A nut is told apart by its height from so much on: a caliper at a rusty nut; this program’s own figure. */
const NUT_HEIGHT_MM = 0.5;

type Stacks = readonly NamedEntry<CatalogueStack>[];

/** The stacks of the catalog it may be by what was seen; one that lacks the figure asked for is not ruled out by it. */
export function flexplatesLike(seen: FlexplateSeen, stacks: Stacks): FlexplatesFound {
  const { totalMm, style } = seen;
  const others = stacks.filter(({ body }) => fitsAll(seen, body, ['style', 'total']));
  const found = others.flatMap(({ id, body }): FlexplateFound[] => {
    const [by] = stacksByThickness({
      measuredMm: totalMm ?? 0,
      toleranceMm: seen.withinMm,
      stacks: [{ id, stack: body.stack }],
    });
    if (!by) return [];
    const measured = totalMm !== null;
    return [
      {
        id,
        stack: body,
        totalMm: by.totalMm,
        offMm: measured ? by.offMm : 0,
        within: !measured || by.within,
      },
    ];
  });
  found.sort((a, b) => Math.abs(a.offMm) - Math.abs(b.offMm));
  const ofStyle = found.filter(({ stack }) => style === null || stack.stack.style === style);
  const matches = ofStyle.filter(({ within }) => within);
  return {
    of: stacks.length,
    matches,
    nearest: ofStyle.find(({ within }) => !within) ?? null,
    ofOtherStyle:
      style === null || totalMm === null ? [] : found.filter((one) => one.within && !ofStyle.includes(one)),
    next: nextLook(seen, matches),
    against: matches.length > 0 ? [] : answersAgainst(seen, stacks),
  };
}

/** Whether nothing that was seen speaks against a stack, but for what is left out. */
function fitsAll(seen: FlexplateSeen, body: CatalogueStack, without: readonly FlexplateLook[]): boolean {
  return FLEXPLATE_LOOKS.every((look) => without.includes(look) || suits(look, seen, body));
}

function suits(look: FlexplateLook, seen: FlexplateSeen, { stack, nut }: CatalogueStack): boolean {
  switch (look) {
    case 'style':
      return seen.style === null || stack.style === seen.style;
    case 'count':
      return seen.holeCount === null || stack.holeCount === null || stack.holeCount === seen.holeCount;
    case 'thread':
      return seen.thread === null || nut?.thread == null || sameThread(nut.thread, seen.thread);
    case 'nut':
      return seen.nutHeightMm === null || nut === null || near(nut.heightMm, seen.nutHeightMm, NUT_HEIGHT_MM);
    case 'total':
      return (
        seen.totalMm === null ||
        stacksByThickness({
          measuredMm: seen.totalMm,
          toleranceMm: seen.withinMm,
          stacks: [{ id: '', stack }],
        }).every(({ within }) => within)
      );
  }
}

function near(a: number, b: number, withinMm: number): boolean {
  return Math.abs(a - b) <= withinMm + 1e-9;
}

/** With the converter bolted up: seen with nothing loosened, then with a caliper at one nut, then with the nuts off. */
const IN_THE_CAR: Readonly<Record<FlexplateLook, number>> = {
  style: 0,
  count: 0,
  nut: 1,
  thread: 1,
  total: 2,
};

/**
 * What to look at next: of what was not answered and not given up, what leaves the fewest stacks on average. In the car
 * what can be seen there comes first, the easier before the harder. null where nothing tells those left apart.
 */
function nextLook(seen: FlexplateSeen, left: readonly FlexplateFound[]): FlexplateNext | null {
  if (left.length < 2) return null;
  const open = FLEXPLATE_LOOKS.filter((look) => !isAnswered(look, seen) && !seen.cannot.includes(look))
    .map((look) => ({ look, leaves: leavesOnAverage(look, left, seen.withinMm) }))
    .filter(({ leaves }) => leaves < left.length - 1e-9);
  const ease = (look: FlexplateLook) => (seen.onBench ? 0 : IN_THE_CAR[look]);
  const [best] = open.sort((a, b) => ease(a.look) - ease(b.look) || a.leaves - b.leaves);
  if (!best) return null;
  return {
    look: best.look,
    answers: answersOf(best.look, left),
  };
}

function isAnswered(look: FlexplateLook, seen: FlexplateSeen): boolean {
  const typed = {
    style: seen.style,
    count: seen.holeCount,
    thread: seen.thread,
    nut: seen.nutHeightMm,
    total: seen.totalMm,
  };
  return typed[look] !== null;
}

/** How many of those left would still be left, on average over which of them it is. */
function leavesOnAverage(look: FlexplateLook, left: readonly FlexplateFound[], withinMm: number): number {
  const alike = left.map(({ stack: truth }) => {
    const seen = seenOn(look, truth, withinMm);
    return left.filter(({ stack }) => suits(look, seen, stack)).length;
  });
  return alike.reduce((sum, count) => sum + count, 0) / left.length;
}

/** What an answer to one question would be on a stack; nothing else is seen. */
function seenOn(look: FlexplateLook, { stack, nut }: CatalogueStack, withinMm: number): FlexplateSeen {
  const total = stack.layers.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0);
  return {
    style: look === 'style' ? stack.style : null,
    holeCount: look === 'count' ? stack.holeCount : null,
    thread: look === 'thread' ? (nut?.thread ?? null) : null,
    nutHeightMm: look === 'nut' ? (nut?.heightMm ?? null) : null,
    totalMm: look === 'total' ? total : null,
    withinMm,
    onBench: true,
    cannot: [],
  };
}

/** The answers there are among those left, each with how many stacks it leaves; none for what is measured. */
function answersOf(look: FlexplateLook, left: readonly FlexplateFound[]): readonly FlexplateAnswer[] {
  if (look === 'nut' || look === 'total') return [];
  const values = left.flatMap(({ stack: { stack, nut } }) => {
    const value =
      look === 'style'
        ? stack.style
        : look === 'count'
          ? stack.holeCount
          : (nut?.thread?.designation ?? null);
    return value === null ? [] : [String(value)];
  });
  const lacking = left.length - values.length;
  return [...new Set(values)].map((value) => ({
    value,
    leaves: values.filter((other) => other === value).length + lacking,
  }));
}

/** Where nothing is left: the answers without which something would be. */
function answersAgainst(seen: FlexplateSeen, stacks: Stacks): FlexplatesFound['against'] {
  return FLEXPLATE_LOOKS.filter((look) => isAnswered(look, seen)).flatMap((look) => {
    const left = stacks.filter(({ body }) => fitsAll(seen, body, [look])).length;
    return left > 0 ? [{ look, left }] : [];
  });
}
