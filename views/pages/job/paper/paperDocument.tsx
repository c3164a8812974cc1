import type { ComponentChildren } from 'preact';
import type { Paper } from '../../../../shared/words/paper.ts';
import { type LengthUnit, UNIT_WORD } from '../../../../shared/words/print.ts';
import type { Frame } from '../../../frame.ts';
import { ShopTimeZone } from '../../../parts/when.tsx';

/** What a paper is printed for, and with. */
export interface Printing {
  readonly frame: Frame;
  /** The style it is printed with, kept by its content: /printed/HASH.css. */
  readonly styleHash: string;
  /** Printed at signing, to be kept as it is: nothing on it leads anywhere but to the job. */
  readonly asSigned: boolean;
}

/**
 * A paper as a document of its own, without the pages' frame: what is kept at signing is this, whole. It asks for its
 * style by content, and for one script that its button needs; without script the browser's own print does.
 */
export function PaperDocument(props: {
  printing: Pick<Printing, 'frame' | 'styleHash' | 'asSigned'>;
  number: string;
  paper: Paper | 'slip';
  title: string;
  /** What else can be done with it on the screen. */
  more?: ComponentChildren;
  children: ComponentChildren;
}) {
  const { printing, number, paper, title, more, children } = props;
  const { frame, styleHash, asSigned } = printing;
  const slip = paper === 'slip';
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>{title}</title>
        <link rel="stylesheet" href={`/printed/${styleHash}.css`} />
        <link rel="icon" href="/assets/icon.svg" type="image/svg+xml" />
        <script type="module" src="/assets/modules/views/browser/coverwright.js" />
      </head>
      <body class={`paper-${paper}`}>
        <header class="bar">
          <button class="bar-first" type="button" id="print" data-print>
            Print
          </button>
          <a
            href={`/${slip ? 'slips' : 'jobs'}/${encodeURIComponent(number)}`}
            id={slip ? 'to-slip' : 'to-job'}
          >
            {slip ? 'Slip' : 'Job'} {number}
          </a>
          {more}
          {asSigned ? (
            <span>As printed at {slip ? 'the counter' : 'signing'}; it never changes.</span>
          ) : (
            <OtherUnit unit={frame.lengthUnit} address={frame.address} />
          )}
        </header>
        <ShopTimeZone.Provider value={frame.timeZone}>
          <main>{children}</main>
        </ShopTimeZone.Provider>
      </body>
    </html>
  );
}

function OtherUnit({ unit, address }: { unit: LengthUnit; address: string }) {
  const other = unit === 'mm' ? 'in' : 'mm';
  return (
    <form method="post" action="/preferences">
      <input type="hidden" name="back" value={address} />
      <button type="submit" id="unit-choice" name="unit" value={other}>
        Use {UNIT_WORD[other]}
      </button>
    </form>
  );
}
