import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { CALIPER } from '../../../shared/words/fields/caliper.ts';
import { upperFirst } from '../../../shared/words/fields/field.ts';
import { CATALOGUE_STUD, STUD } from '../../../shared/words/fields/stud.ts';
import { type LengthUnit, lengthFigure, listInWords, printLength } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { StudInHand, StudNear, ThreadFound, ThreadTwin } from '../../../shared/words/stud/choices.ts';
import type { ThreadSpec } from '../../../shared/words/stud/thread.ts';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { shelfInWords } from './shelfParts.tsx';
import { StudFields } from './studFields.tsx';

type Fields = Readonly<Record<string, string>>;

const { threadTyped } = CATALOGUE_STUD;
const FIRST = ['majorMm', 'overMm'] as const;
const SELDOM = ['pitches', 'majorWithinMm', 'overWithinMm'] as const;
const { projectionMm, pilotDiameterMm } = STUD;

/** What a caliper says of a stud: three figures first, then the rest. */
export function HandFields(boxes: { fields: Fields; faults: readonly Fault[]; writing: Writing }) {
  const { fields, faults } = boxes;
  const rest = [...SELDOM.map((key) => CALIPER[key].box), ...REST];
  const open = rest.some((box) => (fields[box] ?? '') !== '' || faults.some(({ path }) => path === box));
  return (
    <>
      <div class="fields">
        <Boxes of={CALIPER} {...boxes} only={FIRST} />
        <Boxes of={{ projectionMm }} {...boxes} />
        <Boxes
          of={{ threadTyped: { ...threadTyped, least: 0 } }}
          {...boxes}
          hints={{ threadTyped: 'If you know it: 3/8-24, 3/8 fine, M10x1.25' }}
        />
      </div>
      <details class="more-findings" id="hand-more" open={open}>
        <summary>More about the stud</summary>
        <div class="fields">
          <Boxes of={CALIPER} {...boxes} only={SELDOM} />
        </div>
        <StudFields {...boxes} inHand />
      </details>
    </>
  );
}

const { thread: _made, projectionMm: _first, ...OTHERS } = STUD;
const REST: readonly string[] = [...Object.values(OTHERS).map(({ box }) => box), 'grade'];

/** `3/8-24 UNF-2A` as it is asked for over the counter. */
export function bareCallout({ designation }: ThreadSpec): string {
  return designation.replace(/-(2A|3A|2B|3B|6g|6H)$/, '');
}

/** The threads it may be, how far each is off, and the twins that a hand takes for it. */
export function ThreadByCaliper({
  hand,
  fields,
  writing,
}: {
  hand: StudInHand;
  fields: Fields;
  writing: Writing;
}) {
  const { threads, thread } = hand;
  if (threads === null) return null;
  const { mayBe, nearest } = threads;
  const told = thread ? mayBe.filter((one) => one.thread.designation === thread.designation) : mayBe;
  const unit = writing.lengthUnit;
  return (
    <section id="thread-found" aria-labelledby="thread-head">
      <h2 id="thread-head">{threadHead(hand)}</h2>
      <ul class="rows" id="threads">
        {told.map((found) => (
          <li>
            {thread ? (
              <div class="row thread-row">
                <Thread found={found} unit={unit} />
              </div>
            ) : (
              <a
                class="row thread-row"
                id={`thread-${slug(found)}`}
                href={`/stud/stacks?${chosen(fields, found)}`}
              >
                <Thread found={found} unit={unit} />
              </a>
            )}
          </li>
        ))}
      </ul>
      {thread && told[0] && <Twins of={told[0]} />}
      {mayBe.length === 0 && <p class="note">{NOTHING_LIKE}</p>}
      <p class="hint">Limits of the classes: ASME B1.1 (2A) and ISO 965-1 (6g).</p>
      <details class="more-findings" open={mayBe.length === 0}>
        <summary>Nearest threads it is not</summary>
        <ul class="plain" id="threads-not">
          {nearest.map((found) => (
            <li>
              {bareCallout(found.thread)}: {offInWords(found, unit)}.
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}

const NOTHING_LIKE =
  'No standard thread measures like this. Count the gaps between crests, not the crests, and measure where the thread is least worn.';

function threadHead({ threads, thread }: StudInHand): string {
  if (thread) return `Thread: ${bareCallout(thread)}`;
  const count = threads?.mayBe.length ?? 0;
  return count === 0 ? 'No thread found' : `${count} threads it may be: measure over ten threads, or choose`;
}

function Thread({ found, unit }: { found: ThreadFound; unit: LengthUnit }) {
  return (
    <>
      <b>{bareCallout(found.thread)}</b>
      <span class="row-line">{upperFirst(offInWords(found, unit))}.</span>
    </>
  );
}

/** "diameter within its class; pitch 0.0003 in longer". */
function offInWords({ offMajorMm, offPitchMm }: ThreadFound, unit: LengthUnit): string {
  const off = (mm: number, more: string, less: string) =>
    `${printLength(Math.abs(mm), unit)} ${mm > 0 ? more : less}`;
  const diameter =
    offMajorMm === 0
      ? 'diameter within its class'
      : `diameter ${off(offMajorMm, 'above its class', 'below its class')}`;
  if (offPitchMm === null) return `${diameter}; pitch not measured`;
  const same = Number(lengthFigure(Math.abs(offPitchMm), unit)) === 0;
  return `${diameter}; pitch ${same ? 'as measured' : `off by ${printLength(Math.abs(offPitchMm), unit)}`}`;
}

const MOST_TWINS = 3;

function Twins({ of: { thread, twins } }: { of: ThreadFound }) {
  if (twins.length === 0) return null;
  return (
    <div class="note" id="twins">
      <p>
        <b>Easy to mistake for:</b>{' '}
        {listInWords(twins.slice(0, MOST_TWINS).map((twin) => bareCallout(twin.thread)))}. Check with a
        go/no-go gauge, or a nut you know, by hand.
      </p>
      <ul class="plain">
        {twins.slice(0, MOST_TWINS).map((twin) => (
          <li>{twinInWords(thread, twin)}</li>
        ))}
      </ul>
    </div>
  );
}

/** Beyond these a nut is through before it binds. */
const ALL_THE_WAY = 12;

function twinInWords(thread: ThreadSpec, { thread: twin, threads, nutIsTwins }: ThreadTwin): string {
  const [nut, stud] = nutIsTwins ? [twin, thread] : [thread, twin];
  const goes =
    threads > ALL_THE_WAY
      ? 'all the way, loosely'
      : `about ${threads < 2 ? '2' : Math.round(threads)} threads, then binds`;
  return `The ${bareCallout(nut)} nut goes onto the ${bareCallout(stud)} stud ${goes}.`;
}

/** The studs of the shelf beside the one in the hand, nearest first. */
export function OnTheShelf({ hand, along, unit }: { hand: StudInHand; along: Fields; unit: LengthUnit }) {
  const { shelf, thread, threads } = hand;
  if (thread === null && (threads === null || threads.mayBe.length === 0)) return null;
  return (
    <section id="on-the-shelf" aria-labelledby="on-shelf-head">
      <h2 id="on-shelf-head">{shelfHead(hand)}</h2>
      <ol class="rows">
        {shelf.map(({ id, entry, off, alike }) => (
          <li>
            <a
              class="row stack-row"
              id={`shelf-${id}`}
              href={`/stud/stacks?${new URLSearchParams({ ...onlyGap(along), stud: id })}`}
            >
              <b>{entry.name}</b>
              <span>{alike ? 'like yours' : ''}</span>
              <span class="row-line">
                {[
                  off.length === 0
                    ? `length from pad ${printLength(entry.stud.projectionMm, unit, 'coarse')}`
                    : differences(off, unit),
                  shelfInWords(entry),
                ]
                  .filter((part) => part !== '')
                  .join(' · ')}
              </span>
            </a>
          </li>
        ))}
      </ol>
    </section>
  );
}

function shelfHead({ shelf }: StudInHand): string {
  if (shelf.length === 0) return 'No stud in the catalog has this thread';
  if (shelf[0]?.off.length === 0) return 'Studs with this thread: measure the length from the pad';
  return shelf.some(({ alike }) => alike)
    ? 'On the shelf, nearest first'
    : 'None on the shelf is like it; nearest first';
}

const OFF_WORD: Readonly<
  Record<StudNear['off'][number]['what'], readonly [label: string, more: string, less: string]>
> = {
  projectionMm: ['', 'longer', 'shorter'],
  threadEndMm: ['thread ends', 'farther out', 'nearer the pad'],
  threadStartMm: ['thread starts', 'farther out', 'nearer the pad'],
  pilotDiameterMm: ['stud pilot', 'thicker', 'thinner'],
};

/** "yours is 0.004 in shorter; stud pilot 0.002 in thinner". */
function differences(off: StudNear['off'], unit: LengthUnit): string {
  const words = off.map(({ what, mm }) => {
    const [label, more, less] = OFF_WORD[what];
    const figure = printLength(Math.abs(mm), unit, 'coarse');
    const none = Number(lengthFigure(Math.abs(mm), unit, 'coarse')) === 0;
    return `${label === '' ? '' : `${label} `}${none ? 'the same' : `${figure} ${mm > 0 ? more : less}`}`;
  });
  return `Yours: ${words.join('; ')}`;
}

/** One of the threads it may be, chosen: everything else as it was typed. */
function chosen(fields: Fields, found: ThreadFound): string {
  return new URLSearchParams({ ...fields, thread: bareCallout(found.thread) }).toString();
}

/** Another stud than the one in the hand: only gap and torque stay. */
function onlyGap(along: Fields): Fields {
  return Object.fromEntries(Object.entries(along).filter(([name]) => !HAND.has(name.replace(/^ok\./, ''))));
}

const HAND: ReadonlySet<string> = new Set([threadTyped.box, projectionMm.box, pilotDiameterMm.box, ...REST]);

function slug({ thread }: ThreadFound): string {
  return bareCallout(thread)
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-');
}
