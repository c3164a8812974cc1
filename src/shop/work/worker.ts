import { parentPort } from 'node:worker_threads';
import { Refusal } from '../../../shared/words/refusal.ts';
import { ANSWERS, type Question } from './questions.ts';
import type { WorkerAnswer } from './workPool.ts';

// A thread of its own, so that a page is never kept waiting for somebody else's cover.
// Anything that is no refusal ends it; the pool begins a new one.
parentPort?.on('message', (question: Question) => {
  parentPort?.postMessage({ began: true } satisfies WorkerAnswer);
  parentPort?.postMessage(answered(question));
});

function answered({ name, asked }: Question): WorkerAnswer {
  const answer = ANSWERS[name] as (...asked: readonly unknown[]) => unknown;
  try {
    return { answer: answer(...asked) };
  } catch (error) {
    if (error instanceof Refusal) return { code: error.code, faults: error.faults };
    throw error;
  }
}
