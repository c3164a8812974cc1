/**
 * Run by the tests as a process of its own: several people at tablets who write to the program, and a log, flushed to
 * the disk line by line, of what it acknowledged. `witness.ts <log>`; each line of its input is the address of the
 * program, and it answers each with a line when that program has gone. What was not acknowledged is sent again to the next.
 */
import { closeSync, fsyncSync, openSync, writeSync } from 'node:fs';
import { Agent } from 'node:http';
import { createInterface } from 'node:readline';
import { type Answered, ask, post } from '../kit/http.ts';
import { decisionForm, jobForm, readingIds, readingsForm } from '../kit/shop.ts';

/** One line of the log. */
export type Kept =
  | { readonly kind: 'job'; readonly number: string }
  | { readonly kind: 'readings'; readonly number: string; readonly ids: readonly string[] }
  | { readonly kind: 'decision'; readonly number: string; readonly reason: string }
  | { readonly kind: 'wrong'; readonly status: number; readonly text: string };

interface Wish {
  readonly kept: Kept;
  readonly path: string;
  readonly fields: Readonly<Record<string, string>>;
  again: boolean;
}

/** What a stay of the program came to. */
export interface Stay {
  readonly acknowledged: number;
  readonly sentAgain: number;
}

const [logFile = ''] = process.argv.slice(2);
const log = openSync(logFile, 'a');
const PEOPLE = ['AK', 'BL', 'MH', 'TS'];
const DAY_PLACES = 4;
let stay = { acknowledged: 0, sentAgain: 0 };

function keep(kept: Kept): void {
  writeSync(log, `${JSON.stringify(kept)}\n`);
  fsyncSync(log);
  stay = { ...stay, acknowledged: stay.acknowledged + 1 };
}

/** Somebody who receives a job, measures it, decides, measures again, and so on, each thing once the last is acknowledged. */
class Person {
  readonly #who: string;
  readonly #agent = new Agent({ keepAlive: true, maxSockets: 1 });
  #round = 0;
  #step = 0;
  #wish: Wish | null = null;

  constructor(who: string) {
    this.#who = who;
  }

  async workAt(base: string): Promise<void> {
    try {
      for (;;) {
        this.#wish ??= await this.#next(base);
        if (this.#wish.again) stay = { ...stay, sentAgain: stay.sentAgain + 1 };
        const wish = this.#wish;
        const answer = await post(base, wish.path, wish.fields, this.#agent);
        if (!acknowledges(answer, wish)) {
          keep({ kind: 'wrong', status: answer.status, text: `${wish.path} ${answer.text.slice(-3000)}` });
        } else {
          keep(wish.kept);
        }
        this.#wish = null;
      }
    } catch {
      if (this.#wish) this.#wish.again = true;
    }
  }

  async #next(base: string): Promise<Wish> {
    const number = `${this.#who}-${this.#round}`;
    const step = this.#step;
    const path = `/jobs/${number}`;
    let wish: Wish;
    if (step === 0) {
      wish = {
        kept: { kind: 'job', number },
        path: '/jobs',
        fields: jobForm(number, this.#who),
        again: false,
      };
    } else if (step % 2 === 1) {
      const token = `${number}-step-${step}`;
      const places = Array.from({ length: DAY_PLACES }, (_, i) => (step * DAY_PLACES + i) * 3);
      const fields = readingsForm(token, places, this.#who);
      wish = {
        kept: { kind: 'readings', number, ids: readingIds(token, places) },
        path: `${path}/readings`,
        fields,
        again: false,
      };
    } else {
      const reason = `reason ${number} ${step}`;
      const page = await ask(base + path, { agent: this.#agent });
      const from = Number(/name="from" value="(\d+)"/.exec(page.text)?.[1]);
      wish = {
        kept: { kind: 'decision', number, reason },
        path: `${path}/decision`,
        fields: decisionForm(from, reason, this.#who),
        again: false,
      };
    }
    this.#step = step === 10 ? 0 : step + 1;
    if (this.#step === 0) this.#round++;
    return wish;
  }
}

/** A job that was made before the answer was lost is told to be there when it is sent again. */
function acknowledges({ status, text }: Answered, wish: Wish): boolean {
  if (status === 303) return true;
  return wish.again && wish.kept.kind === 'job' && status === 422 && text.includes('is taken by');
}

const people = PEOPLE.map((who) => new Person(who));
for await (const base of createInterface({ input: process.stdin })) {
  stay = { acknowledged: 0, sentAgain: 0 };
  await Promise.all(people.map((person) => person.workAt(base)));
  console.log(JSON.stringify(stay));
}
closeSync(log);
