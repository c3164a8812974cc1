import { judgeCover, workOutCover } from '../../calc/cover/checkCover.ts';
import { bendCover } from '../../calc/plate/bendCover.ts';
import { bestStuds } from '../../calc/stud/match/bestStuds.ts';
import { matchStuds } from '../../calc/stud/match/matchStuds.ts';
import { checkAsked } from '../doubts/coverDoubts.ts';
import { restOfJob } from '../jobRest.ts';
import { judgedUnderBoth } from '../trends/judgedUnderBoth.ts';

/** What the thread beside the requests can be asked, each a function of plain values alone. */
export const ANSWERS = {
  bending: bendCover,
  numbers: workOutCover,
  judged: judgeCover,
  asked: checkAsked,
  rest: restOfJob,
  studs: matchStuds,
  best: bestStuds,
  judgedTwice: judgedUnderBoth,
};

export type Answers = typeof ANSWERS;
export type QuestionName = keyof Answers;

export interface Question {
  readonly name: QuestionName;
  readonly asked: readonly unknown[];
}
