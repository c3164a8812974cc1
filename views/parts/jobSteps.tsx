import type { StepState } from '../../shared/words/job.ts';

export const STEP_WORD: Readonly<Record<StepState, string>> = {
  done: 'done',
  partly: 'in part',
  next: 'next',
  missing: 'missing',
  later: 'later',
};

/** Filled with a tick, filled arrow, broken outline with a stroke, hollow: told apart without their color. */
function Shape({ state }: { state: StepState }) {
  switch (state) {
    case 'done':
      return (
        <>
          <rect x="2" y="2" width="16" height="16" class="step-fill" />
          <path d="M5.5 10.5l3 3L14.5 7" class="step-stroke" />
        </>
      );
    case 'partly':
      return (
        <>
          <rect x="2" y="2" width="16" height="16" class="step-line" />
          <path d="M2 18V10H18V18Z" class="step-fill" />
        </>
      );
    case 'next':
      return <path d="M2 3H11L18.5 10L11 17H2Z" class="step-fill" />;
    case 'missing':
      return (
        <>
          <rect x="2" y="2" width="16" height="16" class="step-line step-broken" />
          <path d="M10 5.5v5.5M10 13.4v1.6" class="step-line" />
        </>
      );
    case 'later':
      return <rect x="2" y="2" width="16" height="16" class="step-line" />;
  }
}

/** Where a step stands, as a shape; its word stands beside it. */
export function StepSign({ state }: { state: StepState }) {
  return (
    <svg class="step-sign" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true" focusable="false">
      <Shape state={state} />
    </svg>
  );
}
