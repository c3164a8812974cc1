import { describe, expect, it } from 'vitest';
import { WHAT_STOPS } from '../../../shared/words/fields/whatStops.ts';
import { type Finding, type Status, stops } from '../../../shared/words/finding.ts';
import { USUAL_WEIGHT, type WhatStops } from '../../../shared/words/whatStops.ts';
import { checkCover } from '../../../src/calc/cover/checkCover.ts';
import { verdict } from '../../../src/calc/judge/verdict.ts';
import { weigh } from '../../../src/calc/judge/weigh.ts';
import { coverInput } from '../cover/sets.ts';

const found = (id: string, status: Status): Finding => ({
  id,
  title: id,
  status,
  value: null,
  limit: null,
  unit: '',
  sentence: 'Not so.',
  source: '',
  answer: null,
});
const UNMET: Readonly<Record<string, Status>> = {
  coverage: 'fail',
  'doubtful-readings': 'fail',
  'cleans-up': 'fail',
  stiffness: 'fail',
  'after-runout': 'fail',
};
const IDS = Object.keys(USUAL_WEIGHT) as (keyof WhatStops)[];
const unmet = (id: string) => found(id, UNMET[id] ?? 'caution');
const SOUND = [found('crack', 'pass'), found('minimum-wall', 'pass'), found('wall-left', 'pass')];

describe('what stops and what warns', () => {
  it.each(IDS)(
    '%s: a stop is not OK and has no way past it, a caution is one, and what is met stays',
    (id) => {
      const [stopped] = weigh([unmet(id)], { [id]: 'stop' });
      if (USUAL_WEIGHT[id] === 'stop') expect(stopped).toEqual(unmet(id));
      else {
        expect(stopped).toMatchObject({ status: 'fail', weight: 'stop' });
        expect(stops(stopped!)).toBe(true);
        expect(stopped!.sentence).toBe('Not so. The shop stops here until this is fixed.');
      }
      const [warned] = weigh([unmet(id)], { [id]: 'caution' });
      expect(warned!.status).toBe('caution');
      expect(stops(warned!)).toBe(false);
      for (const chosen of ['stop', 'caution'] as const)
        for (const status of ['pass', 'not-checked'] as const)
          expect(weigh([found(id, status)], { [id]: chosen })).toEqual([found(id, status)]);
      expect(weigh([unmet(id)], { [id]: USUAL_WEIGHT[id] })).toEqual([unmet(id)]);
      expect(weigh([unmet(id)])).toEqual([unmet(id)]);
    },
  );

  it('is offered for each, first what it usually does, and never for a crack or the wall', () => {
    expect(Object.keys(WHAT_STOPS).sort()).toEqual([...IDS].sort());
    for (const id of IDS) expect(Object.keys(WHAT_STOPS[id].options)).toContain(WHAT_STOPS[id].ifLeftOut);
    const fixed = [
      'crack',
      'minimum-wall',
      'wall-left',
      'clean-up-cut',
      'after-wall',
      'bounds',
      'dialled-in',
    ];
    const asked = Object.fromEntries(fixed.map((id) => [id, 'caution']));
    for (const id of fixed) {
      expect(IDS).not.toContain(id);
      expect(weigh([found(id, 'fail')], asked)).toEqual([found(id, 'fail')]);
    }
  });

  it.each(IDS.filter((id) => !id.startsWith('after-') && id !== 'list-item'))(
    'a cover with %s is not faced while it stops, and is while it warns',
    (id) => {
      const of = (weight: 'stop' | 'caution') =>
        verdict(weigh([...SOUND, unmet(id)], { [id]: weight } as Partial<WhatStops>)).verdict;
      expect(of('caution')).toBe('face');
      const own = { stiffness: 'replace', 'cleans-up': 'face' } as Partial<Record<string, string>>;
      expect(of('stop')).toBe(own[id] ?? 'measure-again');
    },
  );

  it('a stop decides after the wall and the crack, and says itself', () => {
    const stop = weigh([...SOUND, unmet('end-play'), unmet('coverage')], {
      'end-play': 'stop',
      coverage: 'caution',
    });
    expect(verdict(stop).decidedBy?.id).toBe('end-play');
    const cracked = weigh([found('crack', 'fail'), unmet('end-play')], { 'end-play': 'stop' });
    expect(verdict(cracked)).toMatchObject({ verdict: 'replace', decidedBy: { id: 'crack' } });
    const thin = weigh([found('crack', 'pass'), found('wall-left', 'fail'), unmet('end-play')], {
      'end-play': 'stop',
    });
    expect(verdict(thin)).toMatchObject({ verdict: 'replace', decidedBy: { id: 'wall-left' } });
  });

  it('a planned cut that leaves marks weighs as the clean-up; one that leaves too little always stops', () => {
    const cut = [...SOUND, found('cleans-up', 'fail'), found('planned-cut', 'fail')];
    expect(verdict(cut).verdict).toBe('plan-again');
    expect(verdict(weigh(cut, { 'cleans-up': 'caution' })).verdict).toBe('face');
    const stopped = weigh(cut, { 'cleans-up': 'stop' });
    expect(verdict(stopped).verdict).toBe('plan-again');
    expect(stopped.filter(stops).map(({ id }) => id)).toEqual(['cleans-up', 'planned-cut']);
    const thin = [
      found('crack', 'pass'),
      found('wall-left', 'fail'),
      found('clean-up-cut', 'pass'),
      ...cut.slice(3),
    ];
    expect(verdict(weigh(thin, { 'cleans-up': 'caution' })).verdict).toBe('plan-again');
  });

  it('a whole cover: overdue calibration stops it where the shop says so', () => {
    const gauged = coverInput({
      crackTest: 'none-found',
      gaugesUsed: [{ name: 'bench micrometer', dueOn: '2026-03-01' }],
      measuredOn: '2026-03-02',
    });
    const usual = checkCover(gauged);
    const under = (whatStops: Partial<WhatStops>) =>
      checkCover({ ...gauged, criteria: { ...gauged.criteria!, whatStops } });
    expect(usual.verdict).toBe('face');
    const stopped = under({ 'gauge-due': 'stop' });
    expect(stopped.verdict).toBe('measure-again');
    expect(stopped.because).toContain('Calibration was overdue');
    expect(stopped.because).toContain('The shop stops here until this is fixed.');
    expect(under({ 'gauge-due': 'caution' })).toEqual(usual);
  });
});
