import { formulaLines, formulaTree, type Term } from './formulaTree.ts';

/** A formula as MathML, in pieces between which a line may end. */
export function MathLine({ text }: { text: string }) {
  return (
    <>
      {formulaLines(formulaTree(text)).map((piece, i) => {
        const [only] = piece;
        const spoken = i === 0 ? '' : ' ';
        if (piece.length === 1 && only!.is === 'words') return `${spoken}${only!.text}`;
        return (
          <>
            {spoken}
            <math>
              <Row of={piece} />
            </math>
          </>
        );
      })}
    </>
  );
}

const isSign = (set: Term | undefined) => set === undefined || set.is === 'mo';

/** Also where a piece begins with it, where it would be set as a sign of the number after it. */
const AS_INFIX = { form: 'infix' } as object;
const INFIX = /^[=≤≥≈→<>+−·×±∓÷]$/u;

/** Side by side; what is multiplied without a sign stands a little apart. */
function Row({ of }: { of: readonly Term[] }) {
  return (
    <mrow>
      {of.map((one, i) => (
        <>
          {!isSign(of[i - 1]) && !isSign(one) && !isCall(of[i - 1], one) && <mspace width="0.2em" />}
          <Part set={one} />
        </>
      ))}
    </mrow>
  );
}

/** A function and the brackets round what it is of: max(…), Φ(z). */
function isCall(name: Term | undefined, of: Term): boolean {
  return (
    of.is === 'fence' &&
    of.open !== '|' &&
    name !== undefined &&
    (name.is === 'mi' || name.is === 'script' || name.is === 'words')
  );
}

function Part({ set }: { set: Term }) {
  switch (set.is) {
    case 'row':
      return <Row of={set.of} />;
    case 'mi':
      return <mi>{set.text}</mi>;
    case 'mn':
      return <mn>{set.text}</mn>;
    case 'mo':
      return <mo {...(INFIX.test(set.text) && AS_INFIX)}>{set.text}</mo>;
    case 'words':
      return <mtext>{set.text}</mtext>;
    case 'over':
      return (
        <mfrac>
          <Part set={set.top} />
          <Part set={set.bottom} />
        </mfrac>
      );
    case 'root':
      return set.third ? (
        <mroot>
          <Part set={set.of} />
          <mn>3</mn>
        </mroot>
      ) : (
        <msqrt>
          <Part set={set.of} />
        </msqrt>
      );
    case 'fence':
      return (
        <mrow>
          <mo>{set.open}</mo>
          <Part set={set.of} />
          <mo>{set.close}</mo>
        </mrow>
      );
    case 'script':
      return <Script {...set} />;
  }
}

function Script({ base, below, above }: Extract<Term, { is: 'script' }>) {
  if (below !== null && above !== null)
    return (
      <msubsup>
        <Part set={base} />
        <Part set={below} />
        <Part set={above} />
      </msubsup>
    );
  return below === null ? (
    <msup>
      <Part set={base} />
      <Part set={above!} />
    </msup>
  ) : (
    <msub>
      <Part set={base} />
      <Part set={below} />
    </msub>
  );
}
