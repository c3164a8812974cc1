import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Refusal } from '../../../shared/words/refusal.ts';
import { checkStud } from '../../../src/calc/stud/checkStud.ts';
import { figure, open, Told } from './record.ts';

import { anyStud } from './studs.ts';

test('what is found of 250 studs in their stacks is as written down', async () => {
  const told = new Told();
  const lines = fc.sample(anyStud, { seed: 20_261_204, numRuns: 250 }).map((input, i) => {
    try {
      const check = checkStud(input, i % 4 === 3 ? 'in' : 'mm');
      told.add('fits', `${check.headline} ${check.because}`);
      for (const finding of check.findings) told.finding(finding);
      for (const [name, answer] of Object.entries(check.answers)) told.answer(answer, name);
      const { fits, holds, decidedBy, byMm, engagement, reach, strength } = check;
      const figures = [engagement?.leastMm, engagement?.neededMm, reach.pushedBackMm, strength.breakingLoadN];
      return `${i + 1}. fits ${fits}, holds ${holds}, by ${decidedBy} ${figure(byMm)}; ${figures.map(figure).join(' ')} ${reach.grade} ${strength.weakest}; ${open(check.findings)}`;
    } catch (thrown) {
      if (!(thrown instanceof Refusal)) throw thrown;
      for (const { path, message } of thrown.faults) told.add('refused', `${path}: ${message}`);
      return `${i + 1}. refused: ${thrown.faults.map(({ path }) => path).join(' ')}`;
    }
  });
  await expect(`${lines.join('\n')}\n\n${told}`).toMatchFileSnapshot('studs.txt');
});
