import type * as z from 'zod';
import type { NamedStud } from '../../../shared/words/stud/stud.ts';
import type { Db } from '../../records/database/database.ts';
import type { KitShelf } from '../../shop/studs/kit.ts';
import type { Asker } from '../../shop/work/workPool.ts';
import type { Fields } from '../request/typed.ts';

export type Method = 'GET' | 'POST' | 'PUT';

/** One call of the interface as it is told: what may be sent, and what may come back. */
export interface CallTold {
  readonly methods: readonly Method[];
  /** Below /api, with the one thing it names in braces. */
  readonly path: string;
  readonly name: string;
  readonly summary: string;
  readonly description: string;
  /** What may stand after the question mark, each with what it means. */
  readonly query: Readonly<Record<string, string>>;
  /** Of the body; null where there is none. */
  readonly schema: z.ZodType | null;
  /** What comes back, by status. Every error that is not here has the one shape of errors. */
  readonly answers: Readonly<Record<number, z.ZodType>>;
}

export interface ApiNeeds {
  readonly catalogueStuds: () => readonly NamedStud[] | Promise<readonly NamedStud[]>;
  readonly catalogueKit: () => KitShelf | Promise<KitShelf>;
}

/** A question of figures alone. */
export interface ApiCall extends CallTold {
  readonly answer: (body: unknown, needs: ApiNeeds, asker: Asker) => unknown;
}

export interface JobNeeds {
  readonly db: Db;
  readonly now: () => Date;
  /** Whose days the shop goes by. */
  readonly timeZone: string;
  /** Where tablets reach this program, for the codes on papers; null where nobody said. */
  readonly publicUrl: string | null;
}

export interface JobAsked {
  /** What the path names: a job's number. */
  readonly named: string;
  readonly query: Fields;
  readonly body: unknown;
  readonly asker: Asker;
}

export interface JobAnswered {
  readonly status: 200 | 201;
  readonly body: unknown;
}

/** A call about jobs or the catalogue. */
export interface JobCall extends CallTold {
  readonly answer: (needs: JobNeeds, asked: JobAsked) => Promise<JobAnswered>;
}

export function ok(body: unknown): JobAnswered {
  return { status: 200, body };
}
