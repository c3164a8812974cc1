import { createContext } from 'preact';
import { useContext } from 'preact/hooks';

/** A value that looks like a slip. */
export interface DoubtedLength {
  /** Of its field; `ok.` before it is the field that confirms it. */
  readonly name: string;
  readonly typed: string;
  /** "The pull-forward gap is 0.465 mm, as typed"; null where it cannot be taken so. */
  readonly says: string | null;
  /** Said over the buttons, where nothing else there says it. */
  readonly over?: string;
  /** What may be meant instead, each with a button. */
  readonly meant?: readonly string[];
}

/** What a form asks about, and which of it has been put so far: at its box, or, where no box of it is drawn, at the foot. */
interface Asking {
  readonly doubts: readonly DoubtedLength[];
  readonly put: Set<string>;
}
export const Asked = createContext<Asking>({ doubts: [], put: new Set() });

/** Tells the form that a box which confirms something is drawn. */
export function usePutBy(name: string): void {
  const { put } = useContext(Asked);
  if (name.startsWith('ok.')) put.add(name.slice('ok.'.length));
}
