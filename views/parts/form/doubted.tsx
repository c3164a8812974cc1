import { Tick } from './fieldBox.tsx';

/** A length that looks like a slip. */
export interface DoubtedLength {
  /** Of its field; `ok.` before it is the field that confirms it. */
  readonly name: string;
  readonly typed: string;
  /** "The pull-forward gap is 0.465 mm, as typed". */
  readonly says: string;
}

export interface DoubtedProps {
  readonly doubts: readonly DoubtedLength[];
  readonly fields: Readonly<Record<string, string>>;
}

/** What looks like a slip is confirmed here; what was confirmed stays so while it is not typed anew. */
export function Doubted({ doubts, fields }: DoubtedProps) {
  const confirmed = Object.entries(fields).filter(
    ([name, typed]) => /^ok\.[a-z]/.test(name) && typed !== '' && fields[name.slice(3)]?.trim() === typed,
  );
  return (
    <>
      {doubts.map(({ name, says, typed }) => (
        <Tick label={says} name={`ok.${name}`} value={typed} />
      ))}
      {confirmed.map(([name, typed]) => (
        <input type="hidden" name={name} value={typed} />
      ))}
    </>
  );
}
