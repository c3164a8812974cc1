import type { ComponentChildren } from 'preact';
import type { Answer } from '../../../shared/words/answer.ts';
import { formulaHref, PageAddress } from '../pageAddress.ts';

/** A plain figure that leads to its formula in one press, with each symbol’s value on this page. */
export function HowFigure({
  how,
  children,
}: {
  /** Its working, or the formula alone; a figure without one is no link. */
  readonly how: Pick<Answer, 'how'> | string | null | undefined;
  readonly children: ComponentChildren;
}) {
  const formula = typeof how === 'string' ? how : how?.how[0]?.formula;
  if (formula === undefined) return <>{children}</>;
  return (
    <PageAddress.Consumer>
      {(address) => {
        const href = formulaHref(formula, address);
        return href === null ? (
          <>{children}</>
        ) : (
          <a class="how-figure" href={href}>
            {children}
            <span class="unseen">, how it is worked out</span>
          </a>
        );
      }}
    </PageAddress.Consumer>
  );
}
