import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkCover } from '../../../src/calc/cover/checkCover.ts';
import { anyCover } from './covers.ts';
import { figure, open, Told } from './record.ts';

const COVERS = fc.sample(anyCover, { seed: 20_261_201, numRuns: 250 });

test('what is found of 250 covers of every kind is as written down', async () => {
  const told = new Told();
  const lines: string[] = [];
  for (const [i, { input, further }] of COVERS.entries()) {
    const unit = i % 4 === 3 ? 'in' : 'mm';
    const { verdict, headline, because, findings, answers, ...rest } = checkCover(input, unit, further);
    told.add('verdict', `${verdict}: ${headline} ${because}`);
    for (const finding of findings) told.finding(finding);
    for (const [name, answer] of Object.entries(answers)) told.answer(answer, name);
    const { cut, leastWall } = rest;
    lines.push(
      `${i + 1}. ${headline} ${figure(cut.cleanUpMm)} ${figure(leastWall.afterMm)} at ${leastWall.station + 1}, ${figure(rest.conformanceProbability)}; ${open(findings)}`,
    );
  }
  await expect(`${lines.join('\n')}\n\n${told}`).toMatchFileSnapshot('covers.txt');
});
