import { STATUS_WORD, type Status } from '../../../shared/words/finding.ts';

/** Safe condition, warning, prohibition and plain notice: shapes after ISO 3864, so that none leans on its color. */
function Shape({ status }: { status: Status }) {
  switch (status) {
    case 'pass':
      return (
        <>
          <rect x="1" y="1" width="18" height="18" class="sign-fill" />
          <path d="M5 10.5l3.5 3.5L15 6.5" class="sign-stroke" />
        </>
      );
    case 'caution':
      return (
        <>
          <path d="M10 1.5L19 18.2H1Z" class="sign-fill" />
          <path d="M10 7.2v5.2M10 14.6v1.4" class="sign-stroke" />
        </>
      );
    case 'fail':
      return (
        <>
          <circle cx="10" cy="10" r="8.4" class="sign-fill" />
          <path d="M4.1 4.1L15.9 15.9" class="sign-stroke" />
        </>
      );
    case 'not-checked':
      return (
        <>
          <rect x="1.4" y="1.4" width="17.2" height="17.2" class="sign-fill" />
          <path
            d="M7.2 7.6C7.2 4.4 12.8 4.4 12.8 7.6C12.8 9.6 10 9.6 10 12M10 14.2v1.5"
            class="sign-stroke"
          />
        </>
      );
  }
}

/** Shape, color and a word. The word is read aloud always, and seen unless it is hidden. */
export function Sign({ status, word = 'hidden' }: { status: Status; word?: 'shown' | 'hidden' }) {
  return (
    <span class={`sign sign-${status}`}>
      <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true" focusable="false">
        <Shape status={status} />
      </svg>
      <span class={word === 'shown' ? 'sign-word' : 'unseen'}>{STATUS_WORD[status]}</span>
    </span>
  );
}

/** Beside what is advice: it is measured against no limit. */
export function AdviceSign() {
  return (
    <span class="sign sign-advice">
      <svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true" focusable="false">
        <circle cx="10" cy="10" r="8.4" class="sign-fill" />
        <path d="M10 9v5.5M10 5.5v1.4" class="sign-stroke" />
      </svg>
      <span class="sign-word">Advice</span>
    </span>
  );
}
