import { parentPort } from 'node:worker_threads';
import type { StiffnessInput } from '../../../shared/words/bending/stiffness.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import { bendCover } from '../../calc/plate/bendCover.ts';
import type { WorkerAnswer } from './bendingPool.ts';

// A thread of its own, so that a page is never kept waiting for somebody else's cover.
// Anything that is no refusal ends it; the pool begins a new one.
parentPort?.on('message', (input: StiffnessInput) => {
  parentPort?.postMessage({ began: true } satisfies WorkerAnswer);
  parentPort?.postMessage(answered(input));
});

function answered(input: StiffnessInput): WorkerAnswer {
  try {
    return { answer: bendCover(input) };
  } catch (error) {
    if (error instanceof Refusal) return { code: error.code, faults: error.faults };
    throw error;
  }
}
