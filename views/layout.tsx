import type { ComponentChildren } from 'preact';
import { ROLE_WORD } from '../shared/words/people.ts';
import { type LengthUnit, UNIT_WORD } from '../shared/words/print.ts';
import { may, type SignedInPerson } from './frame.ts';
import { PageAddress } from './parts/pageAddress.ts';
import { SignedIn } from './parts/signedIn.tsx';
import { TitleBlock, type TitleCell } from './parts/titleBlock.tsx';
import { ShopTimeZone } from './parts/when.tsx';

export type Place =
  | 'home'
  | 'covers'
  | 'studs'
  | 'jobs'
  | 'shelf'
  | 'trends'
  | 'catalogue'
  | 'criteria'
  | 'people'
  | 'records'
  | 'worked-out';

const PLACES: readonly { place: Place; href: string; label: string }[] = [
  { place: 'covers', href: '/cover', label: 'Check a cover' },
  { place: 'studs', href: '/stud', label: 'Find a stud' },
  { place: 'jobs', href: '/jobs', label: 'Jobs' },
  { place: 'shelf', href: '/shelf', label: 'Shelf' },
  { place: 'trends', href: '/trends', label: 'Trends' },
  { place: 'catalogue', href: '/catalogue', label: 'Catalog' },
  { place: 'criteria', href: '/criteria', label: 'Shop limits' },
];

const RECORDS = { place: 'records', href: '/records', label: 'Backups' } as const;
const PEOPLE = { place: 'people', href: '/people', label: 'People' } as const;

/** The first rule that fits a status wins; a refusal (422) and a stale edit (409) come as parts to be shown. */
const HTMX_CONFIG = JSON.stringify({
  includeIndicatorStyles: false,
  allowEval: false,
  selfRequestsOnly: true,
  historyCacheSize: 0,
  refreshOnHistoryMiss: true,
  // A part may come from a page of another name; this page keeps its own.
  ignoreTitle: true,
  responseHandling: [
    { code: '204', swap: false },
    { code: '[23]..', swap: true },
    { code: '409', swap: true },
    { code: '422', swap: true },
    { code: '[45]..', swap: false, error: true },
  ],
});

export interface LayoutProps {
  readonly title: string;
  readonly shopName: string;
  /** What stands on this page is the demo's, made up, and the page says so. */
  readonly demo: boolean;
  /** The demo was put away, and this of it stayed. */
  readonly demoKept?: boolean;
  readonly lengthUnit: LengthUnit;
  /** Whose days and times the page is told in. */
  readonly timeZone: string;
  readonly here?: Place;
  readonly titleBlock?: readonly TitleCell[];
  /** Of the person at work; empty, null or left out when nobody has said. */
  readonly initials?: string | null;
  /** Whoever is signed in, where people sign in. */
  readonly person?: SignedInPerson | null;
  /** People sign in here, and nobody has. */
  readonly signedOut?: boolean;
  /** Where the page lives, to come back to after the unit is changed; without it the unit is only told. */
  readonly address?: string;
  /** Nothing on this page is swapped by htmx, so it is not sent. */
  readonly nothingSwaps?: boolean;
  readonly children: ComponentChildren;
}

/** Which unit lengths are in, and the way to the other. */
function UnitLine({ lengthUnit, address }: Pick<LayoutProps, 'lengthUnit' | 'address'>) {
  const [now, other] = lengthUnit === 'mm' ? (['mm', 'in'] as const) : (['in', 'mm'] as const);
  if (address === undefined) return <span>Lengths in {UNIT_WORD[now]}</span>;
  return (
    <form class="unit-choice" id="unit-form" method="post" action="/preferences">
      <input type="hidden" name="back" value={address} />
      <span>Lengths in {UNIT_WORD[now]}</span>
      <button class="quiet" type="submit" id="unit-choice" name="unit" value={other}>
        Use {UNIT_WORD[other]}
      </button>
    </form>
  );
}

/** Who is at work: initials anybody may choose, or the person who signed in and the way out. */
function AtWork({ initials, person }: Pick<LayoutProps, 'initials' | 'person'>) {
  if (!person) return initials ? <span>Working: {initials}</span> : null;
  return (
    <form class="unit-choice" method="post" action="/sign-out">
      <a href="/account" id="to-account">
        {person.name}, {person.initials}, {ROLE_WORD[person.role]}
      </a>
      <button class="quiet" type="submit" id="sign-out">
        Sign out
      </button>
    </form>
  );
}

/** The ways in a person may go: whoever keeps the shop sees its records, and its people where they sign in. */
function placesFor({ person, signedOut }: Pick<LayoutProps, 'person' | 'signedOut'>) {
  if (signedOut || !may({ person: person ?? null }, 'keeper')) return PLACES;
  return person ? [...PLACES, RECORDS, PEOPLE] : [...PLACES, RECORDS];
}

/** So many fit on one line of a phone; the others are under "More" there, and beside them on a desk. */
const FIRST_PLACES = 3;

function Places({ places, here }: { places: ReturnType<typeof placesFor>; here: Place | undefined }) {
  const rest = places.slice(FIRST_PLACES);
  const inRest = rest.find(({ place }) => place === here);
  const links = (some: typeof rest) =>
    some.map(({ place, href, label }) => (
      <li>
        <a href={href} aria-current={here === place ? 'true' : undefined}>
          {label}
        </a>
      </li>
    ));
  return (
    <nav aria-label="Main" class="places">
      <ul>{links(places.slice(0, FIRST_PLACES))}</ul>
      <details class="more-places" id="more-places">
        <summary class={inRest ? 'more-here' : undefined}>
          {inRest ? (
            <>
              <span class="unseen">More, here: </span>
              {inRest.label}
            </>
          ) : (
            'More'
          )}
        </summary>
        <ul>{links(rest)}</ul>
      </details>
    </nav>
  );
}

/** A sheet: name and ways in at the head, the work, the title block at the foot. */
export function Layout(props: LayoutProps) {
  const { title, shopName, demo, initials, here, titleBlock, person = null, signedOut, children } = props;
  return (
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="color-scheme" content="light dark" />
        <meta name="htmx-config" content={HTMX_CONFIG} />
        <title>{title === 'Coverwright' ? title : `${title} · Coverwright`}</title>
        <link
          rel="preload"
          href="/assets/barlow-400.woff2"
          as="font"
          type="font/woff2"
          crossorigin="anonymous"
        />
        <link rel="stylesheet" href="/assets/look.css" />
        <link rel="stylesheet" href="/assets/drawings.css" />
        <link rel="stylesheet" href="/assets/pages.css" />
        {!props.nothingSwaps && <link rel="stylesheet" href="/assets/forms.css" />}
        <link rel="stylesheet" href="/assets/paper.css" />
        <link rel="icon" href="/assets/icon.svg" type="image/svg+xml" />
        {!props.nothingSwaps && <script src="/assets/htmx.js" defer />}
        <script type="module" src="/assets/modules/views/browser/coverwright.js" />
      </head>
      <body>
        <a class="skip" href="#main">
          Skip to the page
        </a>
        <div class="sheet">
          <header class="head">
            <a class="name" href="/">
              Coverwright
            </a>
            <span class="shop">{shopName}</span>
            {!signedOut && <Places places={placesFor(props)} here={here} />}
            {demo && (
              <p class="demo">
                Demo: made-up data.{' '}
                {!props.demoKept &&
                  may({ person, ...(signedOut !== undefined && { signedOut }) }, 'keeper') && (
                    <a href="/begin">Begin for real</a>
                  )}
              </p>
            )}
          </header>
          <main id="main" tabindex={-1}>
            <ShopTimeZone.Provider value={props.timeZone}>
              <SignedIn.Provider value={person}>
                <PageAddress.Provider value={props.address ?? null}>{children}</PageAddress.Provider>
              </SignedIn.Provider>
            </ShopTimeZone.Provider>
          </main>
          {/* Written by the script of every page: what changed, that an answer takes long, or that there is none. */}
          <p role="status" class="unseen" id="page-tells" />
          <div class="under-way-notes">
            <p role="status" id="page-works" />
            <div role="alert" id="page-says" />
          </div>
          <footer class="foot">
            <div class="foot-line">
              {!signedOut && <UnitLine lengthUnit={props.lengthUnit} address={props.address} />}
              <AtWork initials={initials} person={person} />
              {!signedOut && (
                <a href="/how" id="to-how" aria-current={here === 'worked-out' ? 'true' : undefined}>
                  How it is worked out
                </a>
              )}
            </div>
            {titleBlock && <TitleBlock cells={titleBlock} />}
          </footer>
        </div>
      </body>
    </html>
  );
}
