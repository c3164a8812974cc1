import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LengthUnit } from '../../shared/words/print.ts';
import { type Served, serve } from '../web/program.ts';
import { hyphensForMinus, inOtherUnit } from '../words/otherUnit.ts';
import { type Came, crawl, fillWrong, sender } from '../words/visit.ts';

const FROM = ['/', '/cover', '/stud', '/criteria', '/how', '/jobs.csv', '/catalogue/family.csv'];

/** Questions with answers, as a person of either shop types them; what a form asks beside them is left out. */
const ASKED: Readonly<Record<LengthUnit, readonly string[]>> = {
  in: [
    '/stud?unit=in&stack=two-piece-four-3-8-24&pull=0.16&torque=27&torqueFrom=maker&engine=300&kFrom=zinc&prevTorque=2',
    '/stud?unit=in&layer.0=plate&thickness.0=0.125&nutThread=3/8-24&nutHeight=0.328&pull=0.16',
    '/stud/slip?stack=two-piece-four-3-8-24&pull=0.16&stud=long-3-8-24&torque=27&torqueFrom=maker&engine=300&unit=in',
    '/stud/slip?stack=one-piece-four-3-8-24&pull=0.16&stud=long-3-8-24&unit=in',
    '/stud/gap?unit=in&depth=0.75&standsOut=0.5&hub=0.9&hubLeast=0.6&gapLeast=0.125&gapMost=0.1875&stack=two-piece-four-3-8-24',
    '/stud/gap?unit=in&depth=0.75&standsOut=-0.2&separator=0.03&shim=0.06',
    '/stud/flexplate?unit=in&total=0.125&within=0.01&nutThread=3/8-24',
    '/stud/flexplate?unit=in&style=two-piece&total=0.4&nutThread=3/8-24&nutHeight=0.328',
    '/stud/stacks?unit=in&stud=long-3-8-24',
  ],
  mm: [
    '/stud?unit=mm&stack=two-piece-four-3-8-24&pull=4&torque=37&torqueFrom=maker&engine=400&kFrom=zinc&prevTorque=2',
    '/stud?unit=mm&layer.0=plate&thickness.0=3.2&nutThread=M10x1.5&nutHeight=8&pull=4',
    '/stud/slip?stack=two-piece-four-3-8-24&pull=4&stud=long-3-8-24&torque=37&torqueFrom=maker&engine=400&unit=mm',
    '/stud/slip?stack=one-piece-four-3-8-24&pull=4&stud=long-3-8-24&unit=mm',
    '/stud/gap?unit=mm&depth=19&standsOut=12.7&hub=23&hubLeast=15&gapLeast=3&gapMost=4.8&stack=two-piece-four-3-8-24',
    '/stud/gap?unit=mm&depth=19&standsOut=-5&separator=1&shim=1.5',
    '/stud/flexplate?unit=mm&total=3.2&within=0.2&nutThread=3/8-24',
    '/stud/flexplate?unit=mm&style=two-piece&total=10&nutThread=3/8-24&nutHeight=8',
    '/stud/stacks?unit=mm&stud=long-3-8-24',
  ],
};

describe.each(['in', 'mm'] as const)('with lengths in %s', (unit) => {
  let program: Served;
  const came: Pick<Came, 'path' | 'status'>[] = [];
  const found: Record<'unit' | 'minus', Set<string>> = { unit: new Set(), minus: new Set() };
  beforeAll(async () => {
    program = await serve({ demo: true, unit: 'in', publicUrl: 'http://shop.example' });
    const ask = (path: string, init: RequestInit) => fetch(program.url + path, init);
    const send = sender(ask, program.url, unit);
    const take = (one: Came) => {
      came.push({ path: one.path, status: one.status });
      const at = one.path.split('?')[0];
      for (const words of inOtherUnit(one, unit)) found.unit.add(`${at}: ${words}`);
      for (const words of hyphensForMinus(one)) found.minus.add(`${at}: ${words}`);
    };
    const pages = await crawl((path) => send(path), [...FROM, ...ASKED[unit]], take);
    await fillWrong(send, pages, take);
  });
  afterAll(() => program.close());

  test('the walk came past every kind of page, and past answers and refusals', () => {
    for (const path of [
      '/cover?',
      '/stud?',
      '/stud/slip',
      '/jobs/1005/sheet',
      '/jobs/1001/tag',
      '/how/words',
    ])
      expect(came.filter((one) => one.path.startsWith(path)).length, path).toBeGreaterThan(0);
    expect(came.filter(({ status }) => status === 200).length).toBeGreaterThan(150);
    expect(came.filter(({ status }) => status === 422).length).toBeGreaterThan(40);
  });

  test('no page, answer or refusal shows a figure or a label in another unit', () => {
    expect([...found.unit]).toEqual([]);
  });

  test('every figure below zero has the minus sign', () => {
    expect([...found.minus]).toEqual([]);
  });
});
