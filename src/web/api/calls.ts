import { heatAnswer, stiffnessAnswer } from '../../../shared/schemas/answers/bendingAnswer.ts';
import { coverCheckedAnswer } from '../../../shared/schemas/answers/coverAnswer.ts';
import { studCheckAnswer, studMatchAnswer } from '../../../shared/schemas/answers/studAnswer.ts';
import { threadAnswer } from '../../../shared/schemas/answers/threadAnswer.ts';
import { coverRequestSchema } from '../../../shared/schemas/coverRequest.ts';
import { heatRequestSchema } from '../../../shared/schemas/heat.ts';
import { stiffnessRequestSchema } from '../../../shared/schemas/stiffness.ts';
import { studCheckRequestSchema } from '../../../shared/schemas/studCheck.ts';
import { studMatchRequestSchema } from '../../../shared/schemas/studMatch.ts';
import { threadSchema } from '../../../shared/schemas/thread.ts';
import type { StudMatchedWithKit } from '../../../shared/words/stud/kit.ts';
import { heatCover } from '../../calc/heat/heatCover.ts';
import { checkStud } from '../../calc/stud/checkStud.ts';
import { threadGeometry } from '../../calc/stud/thread/threadGeometry.ts';
import { bend } from '../../shop/bending/bendings.ts';
import { heatDoubted, stiffnessDoubted } from '../../shop/doubts/bendingFigures.ts';
import { coverFiguresDoubted } from '../../shop/doubts/coverFigures.ts';
import { studDoubts } from '../../shop/doubts/studDoubts.ts';
import { withFormulaFigure } from '../../shop/limitsFor.ts';
import { kitFor, kitTold } from '../../shop/studs/kit.ts';
import { askedCover, bestOfCatalog, matchedStuds } from '../../shop/work/apart.ts';
import type { Asker } from '../../shop/work/workPool.ts';
import { readBody } from '../request/apiErrors.ts';
import type { ApiCall, ApiNeeds } from './call.ts';

export const CAUTION =
  'A calculation, not a permission: rotating parts under pressure can injure. A cracked or welded-over cover is not returned to service on the strength of a number, and the figures of the vehicle’s and part’s makers come first.';

const DOUBTS =
  'A figure that looks like a slip, as 27 N·m for 27 lb·ft, is told under doubts; confirmed names those that are right.';

const ASKED = { methods: ['POST'], query: {} } as const;

/** The questions of figures alone: nothing of the shop but its catalog of studs is read. */
export const apiCalls: readonly ApiCall[] = [
  {
    ...ASKED,
    path: '/cover/check',
    name: 'checkCover',
    summary: 'Can this cover be faced, and what does the cut leave?',
    description: `Angles run clockwise looking at the clutch face, 0° behind stud 1. A reading that looks like a slip beside nominalWallMm counts as doubtful. The finding doubtful-readings asks about it under doubts; confirmed names those that are right. doubtfulReadings adds others. criteria.minimumWallFormula, as in max(4.2 mm, 85 % of new wall), stands instead of minimumWallMm: lengths have their unit, and it may name new wall, stud count, bolt circle, friction surface inside and outside. ${DOUBTS} ${CAUTION}`,
    schema: coverRequestSchema,
    answers: { 200: coverCheckedAnswer },
    answer: answerCover,
  },
  {
    ...ASKED,
    path: '/cover/stiffness',
    name: 'coverStiffness',
    summary: 'How does this cover bend, and how evenly does its lining press? Advice.',
    description: `A thin-plate model, to compare one cover with another. The warnings say how it compares with a solid model. The stiff part of a pad begins 0.44 walls within its edge; padInsetWalls sets another inset, and 0 takes pads as drawn. A rigid and a conforming piston are two bounds, and so are a bonded and an unbonded ring. Deflections are + toward the engine; angles run from a stud. With peakLimit, the answer has the wall on the friction surface at which the peak reaches it. ${DOUBTS} ${CAUTION}`,
    schema: stiffnessRequestSchema,
    answers: { 200: stiffnessAnswer },
    answer: answerStiffness,
  },
  {
    ...ASKED,
    path: '/cover/heat',
    name: 'coverHeat',
    summary: 'How hot does one engagement make the face? Advice.',
    description: `The cover as a slab, its back insulated, the flux falling evenly to nothing over the slip. With pressurePeak, also behind a stud, with the flux so much larger. ${DOUBTS} ${CAUTION}`,
    schema: heatRequestSchema,
    answers: { 200: heatAnswer },
    answer: answerHeat,
  },
  {
    ...ASKED,
    path: '/stud/check',
    name: 'checkStud',
    summary: 'Does this stud fit this flexplate stack, and does the joint hold?',
    description: `Lengths of the stud run from the pad’s seating face toward the engine. ${DOUBTS} ${CAUTION}`,
    schema: studCheckRequestSchema,
    answers: { 200: studCheckAnswer },
    answer: answerStud,
  },
  {
    ...ASKED,
    path: '/stud/match',
    name: 'matchStuds',
    summary: 'Which studs suit this stack? Best first.',
    description: `Without studs, those of the catalog are tried; of more than 60 the best 20 are told, and leftOut is how many fit no better. kit says what goes out with a stud that fits: how many, and the nut, washer and shims of the catalog. ${DOUBTS} ${CAUTION}`,
    schema: studMatchRequestSchema,
    answers: { 200: studMatchAnswer },
    answer: answerMatch,
  },
  {
    ...ASKED,
    path: '/thread',
    name: 'threadGeometry',
    summary: 'The limits of a thread, in mm.',
    description: 'Without a class, an external 2A or 6g. A limit that the class does not set is null.',
    schema: threadSchema,
    answers: { 200: threadAnswer },
    answer: answerThread,
  },
];

async function answerCover(body: unknown, _needs: ApiNeeds, asker: Asker) {
  const { confirmed, ...input } = withFormulaFigure(readBody(coverRequestSchema, body));
  return { ...(await askedCover(input, confirmed, asker)), doubts: coverFiguresDoubted(input, confirmed) };
}

async function answerStiffness(body: unknown, _needs: ApiNeeds, asker: Asker) {
  const { confirmed, ...input } = readBody(stiffnessRequestSchema, body);
  return { ...(await bend(input, asker)), doubts: stiffnessDoubted(input, confirmed) };
}

function answerHeat(body: unknown) {
  const { confirmed, ...input } = readBody(heatRequestSchema, body);
  return { ...heatCover(input), doubts: heatDoubted(input, confirmed) };
}

function answerStud(body: unknown) {
  const { confirmed, ...input } = readBody(studCheckRequestSchema, body);
  const studs = [{ path: 'stud', stud: input.stud }];
  return { ...checkStud(input), doubts: studDoubts(input, studs, confirmed) };
}

async function answerMatch(body: unknown, { catalogueStuds, catalogueKit }: ApiNeeds, asker: Asker) {
  const { studs: sent, confirmed, ...surroundings } = readBody(studMatchRequestSchema, body);
  const studs = sent ?? (await catalogueStuds());
  const shelf = await catalogueKit();
  const matched = await (sent ? matchedStuds : bestOfCatalog)({ ...surroundings, studs }, asker);
  const matches = matched.map((match): StudMatchedWithKit => {
    const stud = studs.find(({ id }) => id === match.id)?.stud;
    const kit =
      stud && match.fits !== 'no' ? kitFor({ ...surroundings, stud }, match.check, shelf, 'mm') : null;
    return { ...match, kit: kit && kitTold(kit) };
  });
  const asked = (sent ?? []).map(({ stud }, i) => ({ path: `studs.${i}`, stud }));
  const leftOut = studs.length - matches.length;
  return { studs: matches, leftOut, doubts: studDoubts(surroundings, asked, confirmed) };
}

function answerThread(body: unknown) {
  return threadGeometry(readBody(threadSchema, body).thread);
}
