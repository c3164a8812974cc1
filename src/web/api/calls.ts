import type { z } from 'zod';
import { coverCheckSchema } from '../../../shared/schemas/coverCheck.ts';
import { heatSchema } from '../../../shared/schemas/heat.ts';
import { stiffnessSchema } from '../../../shared/schemas/stiffness.ts';
import { studCheckSchema } from '../../../shared/schemas/studCheck.ts';
import { studMatchSchema } from '../../../shared/schemas/studMatch.ts';
import { threadSchema } from '../../../shared/schemas/thread.ts';
import type { NamedStud } from '../../../shared/words/stud.ts';
import { checkCover } from '../../calc/cover/checkCover.ts';
import { heatCover } from '../../calc/heat/heatCover.ts';
import { checkStud } from '../../calc/stud/checkStud.ts';
import { matchStuds } from '../../calc/stud/match/matchStuds.ts';
import { threadGeometry } from '../../calc/stud/thread/threadGeometry.ts';
import { bend } from '../../shop/bending/bendings.ts';
import { readBody } from '../request/apiErrors.ts';
import { withDoubts } from './doubts.ts';

export interface ApiNeeds {
  readonly catalogueStuds: () => readonly NamedStud[] | Promise<readonly NamedStud[]>;
}

/** One question the interface answers: how it is put, and what works it out. */
export interface ApiCall {
  /** Below /api. */
  readonly path: string;
  readonly name: string;
  readonly summary: string;
  readonly description: string;
  readonly schema: z.ZodType;
  readonly answer: (body: unknown, needs: ApiNeeds) => unknown;
}

export const CAUTION =
  'A calculation, not a permission: rotating parts under pressure can injure. A cracked or welded-over cover is not returned to service on the strength of a number, and the figures of the vehicle’s and part’s makers come first.';

export const apiCalls: readonly ApiCall[] = [
  {
    path: '/cover/check',
    name: 'checkCover',
    summary: 'Can this cover be faced, and what does the cut leave?',
    description: `Angles run clockwise looking at the clutch face, 0° behind stud 1. A wall that looks like a slipped decimal against nominalWallMm is put down as doubtful, unless doubtfulReadings is sent, even as an empty list. ${CAUTION}`,
    schema: coverCheckSchema,
    answer: (body) => checkCover(withDoubts(readBody(coverCheckSchema, body), body)),
  },
  {
    path: '/cover/stiffness',
    name: 'coverStiffness',
    summary: 'How does this cover bend, and how evenly does its lining press? Advice.',
    description: `A thin-plate model, to compare one cover with another: it over-stiffens short thick pads, where a 3-D solid model of stepped pads deflected about 12 % more. A rigid and a conforming piston are two bounds, and so are a bonded and an unbonded ring. Deflections are + toward the engine; angles run from a stud. With peakLimit, the wall on the track at which the peak reaches it is looked for. ${CAUTION}`,
    schema: stiffnessSchema,
    answer: (body) => bend(readBody(stiffnessSchema, body)),
  },
  {
    path: '/cover/heat',
    name: 'coverHeat',
    summary: 'How hot does one engagement make the face? Advice.',
    description: `The cover as a slab, its back insulated, the flux falling evenly to nothing over the slip. With pressurePeak, also behind a stud, with the flux so much larger. ${CAUTION}`,
    schema: heatSchema,
    answer: (body) => heatCover(readBody(heatSchema, body)),
  },
  {
    path: '/stud/check',
    name: 'checkStud',
    summary: 'Does this stud fit this flexplate stack, and does the joint hold?',
    description: `Lengths of the stud run from the pad’s seating face toward the engine. ${CAUTION}`,
    schema: studCheckSchema,
    answer: (body) => checkStud(readBody(studCheckSchema, body)),
  },
  {
    path: '/stud/match',
    name: 'matchStuds',
    summary: 'Which studs suit this stack? Best first.',
    description: `Without studs, those of the catalogue are tried. ${CAUTION}`,
    schema: studMatchSchema,
    answer: async (body, { catalogueStuds }) => {
      const { studs, ...surroundings } = readBody(studMatchSchema, body);
      return { studs: matchStuds({ ...surroundings, studs: studs ?? (await catalogueStuds()) }) };
    },
  },
  {
    path: '/thread',
    name: 'threadGeometry',
    summary: 'The limits of a thread, in mm.',
    description: 'Without a class, an external 2A or 6g. A limit that the class does not set is null.',
    schema: threadSchema,
    answer: (body) => threadGeometry(readBody(threadSchema, body).thread),
  },
];
