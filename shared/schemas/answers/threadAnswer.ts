import * as z from 'zod';
import type { Limits, ThreadGeometry, ThreadSpec } from '../../words/stud/thread.ts';
import { exactly, named } from './exactly.ts';
import { number, numberOrNull, step, text } from './finding.ts';

type Spec<System extends ThreadSpec['system']> = Extract<ThreadSpec, { system: System }>;

/** A thread as it was read from a callout. */
export const threadSpec = named(
  'ThreadSpec',
  z.union([
    exactly<Spec<'unified'>>({
      system: z.literal('unified'),
      designation: text,
      majorInch: number,
      threadsPerInch: number,
      series: z.enum(['UNC', 'UNF', 'UNEF', 'UN', 'UNS']),
      class: z.enum(['2A', '3A', '2B', '3B']),
    }),
    exactly<Spec<'metric'>>({
      system: z.literal('metric'),
      designation: text,
      majorMm: number,
      pitchMm: number,
      class: z.enum(['6g', '6H']),
    }),
  ]),
);

const limits = exactly<Limits>({ basic: number, max: numberOrNull, min: numberOrNull });

/** What `POST /api/thread` answers. */
export const threadAnswer = named(
  'ThreadGeometry',
  exactly<ThreadGeometry>({
    designation: text,
    pitchMm: number,
    majorMm: limits,
    pitchDiameterMm: limits,
    minorMm: limits,
    tensileStressAreaMm2: number,
    how: z.array(step).describe('How each limit was got, in the units of the thread’s own standard.'),
  }),
);
