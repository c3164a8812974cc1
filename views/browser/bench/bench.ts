// Measuring at the bench. Every reading is kept on this tablet first, under a key of its own, and taken off only when
// the server says that it has it. The server knows a reading by its id, so sending one twice does nothing.

import { withUnit } from '../../../shared/measuring/askedInWords.ts';
import type { BenchState } from '../../../shared/measuring/benchState.ts';
import { readReading } from '../../../shared/measuring/readReading.ts';
import { readingsToCheck } from '../../../shared/measuring/toCheck.ts';
import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
import { type Place, turned } from '../../../shared/words/places.ts';
import { drawAsked, drawQuestion, drawStations, drawWrong } from './askedView.ts';
import { Asking, type Target } from './asking.ts';
import { drawLists, type ListsParts, tellOtherJobs } from './benchLists.ts';
import { byId, show, tell } from './byId.ts';
import { KeepPage } from './keepPage.ts';
import { type Known, KnownReadings } from './knownReadings.ts';
import { drawLeft, type InDoubt, type LeftParts } from './leftLists.ts';
import { drawTarget, touched } from './planTouch.ts';
import { Sender } from './sender.ts';
import { newReadingId, TabletShelf } from './tabletShelf.ts';
import { type Question, whatEnterDoes } from './typedKeys.ts';

/** The measuring page under a person's hands. */
class Bench {
  readonly #state: BenchState;
  readonly #shelf: TabletShelf;
  readonly #known: KnownReadings;
  readonly #asking: Asking;
  readonly #sender: Sender;
  readonly #lists: ListsParts;
  readonly #left: LeftParts;
  readonly #keeper: KeepPage;
  readonly #box = byId('reading', HTMLInputElement);
  #question: Question | null = null;
  /** A heat mark was begun, and the next touch of the drawing says where it is. */
  #placingMark = false;
  /** The drawing was touched at a station that is measured already: its reading is replaced only when that is said. */
  #touchedMeasured = false;

  constructor(state: BenchState) {
    this.#state = state;
    this.#shelf = new TabletShelf(state.job, state.created);
    this.#known = new KnownReadings(state, this.#shelf);
    this.#asking = new Asking(state, this.#known);
    this.#sender = new Sender({
      job: state.job,
      pass: state.pass,
      shelf: this.#shelf,
      known: this.#known,
      who: () => typedIn('f-who'),
      why: () => typedIn('f-why') ?? '',
      changed: () => {
        this.#draw();
        this.#keeper.stands(this.#known.onServer);
      },
      say: (text) => tell('said', text),
    });
    this.#lists = {
      state,
      shelf: this.#shelf,
      known: this.#known,
      takeOff: (key) => {
        this.#shelf.takeOff(key);
        this.#draw();
      },
      correct: (target, one) => this.#turn(() => this.#asking.correct(target, one)),
      repeat: (target) => this.#turn(() => this.#asking.turnTo(target, true)),
    };
    this.#keeper = new KeepPage(state, this.#shelf);
    this.#left = {
      state,
      turnToStep: (step) => this.#turn(() => this.#asking.turnToStep(step)),
      measureAgain: (one) => this.#turn(() => this.#asking.correct(targetOf(one), one)),
      settle: (one, typed, confirmed) => this.#settle(one, typed, confirmed),
    };
  }

  open(): void {
    this.#listenToForms();
    this.#listenToButtons();
    this.#listenToWorld();
    show('begin-mark', true);
    show('reading-keys', true);
    byId('measuring', HTMLElement).classList.add('with-keys');
    show('touch-hint', true);
    tellOtherJobs(this.#shelf);
    this.#draw();
    this.#box.focus();
    void this.#sender.send();
  }

  // ---- What is typed. ----

  #enter(): void {
    drawWrong('');
    const typed = whatEnterDoes(this.#box.value, this.#question);
    if (typed.does === 'use-meant') this.#useMeant();
    else if (typed.does === 'confirm') this.#confirm();
    else if (typed.does === 'measure-again') this.#turn(() => {});
    else if (typed.does === 'no-mark') this.#noMark();
    else if (typed.does === 'begin-mark') this.#beginMark();
    else if (typed.does === 'skip') this.#skip();
    else if (typed.does === 'back') this.#turn(() => this.#asking.goBack());
    else if (typed.does === 'repeat') this.#repeatLast();
    else if (typed.does === 'read') this.#read(typed.typed);
    else tell('said', 'Nothing was entered. Measure, or type s and Enter to skip.');
  }

  #useMeant(): void {
    if (this.#question?.meant) this.#read(this.#question.meant);
  }

  #confirm(): void {
    const typed = this.#question?.typed ?? null;
    if (typed !== null) this.#keep(typed, true);
  }

  #skip(): void {
    if (this.#asking.asked !== null) this.#turn(() => this.#asking.skip());
  }

  /** Looked at, and nothing dark is there: a depth of 0. */
  #noMark(): void {
    if (this.#asking.asked?.kind === 'mark') this.#keep('0', false);
    else
      drawWrong(
        'No mark here answers a heat mark. The box now asks for something else: measure it, or skip.',
      );
  }

  #repeatLast(): void {
    if (this.#asking.repeatLast()) this.#turn(() => {});
    else tell('said', 'Nothing is measured yet on this page.');
  }

  #read(typed: string): void {
    const { unit, sign, nominalMm, expected, what } = this.#state;
    const { asked } = this.#asking;
    if (this.#placingMark) {
      drawWrong('The heat mark has no place yet. Touch the drawing, or press Heat mark again to stop.');
      return;
    }
    if (asked === null) {
      drawWrong('Nothing is asked for now. Choose a station in the drawing or in the lists below.');
      return;
    }
    const { kind, place } = asked;
    const field = `${what[kind]} ${place}`;
    const others = this.#known.now().filter(({ id }) => id !== asked.replaces?.id);
    const reading = { kind, field, typed, unit, decimalSign: sign, nominalWallMm: nominalMm };
    const read = readReading({ ...reading, place: asked, others, expected });
    if (!read.ok && read.meant !== undefined) {
      this.#ask({ question: read.message, meant: read.meant, typed: null });
    } else if (!read.ok) {
      this.#box.select();
      drawWrong(read.message);
    } else if (read.doubt !== null) {
      this.#ask({ question: read.doubt.question, meant: read.doubt.meantTyped, typed });
    } else if (this.#touchedMeasured && asked.replaces !== null) {
      const was = withUnit(asked.replaces.shown, unit);
      this.#ask({ question: `${withUnit(typed, unit)} in place of ${was} here?`, meant: null, typed });
    } else {
      this.#keep(typed, false);
    }
  }

  #ask(question: Question): void {
    this.#question = question;
    this.#box.value = '';
    drawQuestion(question);
    this.#box.focus();
  }

  #keep(typed: string, confirmed: boolean): void {
    const { asked } = this.#asking;
    if (asked === null) return;
    this.#shelve(asked, typed, confirmed, asked.replaces?.id ?? null);
    this.#asking.kept();
    this.#turn(() => this.#asking.goOn());
    void this.#sender.send();
  }

  /** A reading that was doubted is put right, or confirmed; what is asked stays. */
  #settle(one: Known, typed: string, confirmed: boolean): void {
    this.#shelve(targetOf(one), typed, confirmed, one.id);
    this.#draw();
    this.#box.focus();
    void this.#sender.send();
  }

  #shelve(target: Target, typed: string, confirmed: boolean, replaces: string | null): void {
    const { pass, unit, sign, gauge, weldedAt, what, person } = this.#state;
    const { kind, angleDeg, radiusMm, place, at } = target;
    this.#shelf.add({
      reading: {
        id: newReadingId(),
        pass,
        kind,
        angleDeg,
        radiusMm,
        typed,
        unit,
        decimalSign: sign,
        gauge,
        confirmed,
        replaces,
        who: person || (typedIn('f-who') ?? ''),
        weldedAt,
      },
      place,
      at,
    });
    const shown = kind === 'mark' && typed === '0' ? 'No mark' : typed;
    tell('said', `${shown} saved: ${what[kind].toLowerCase()} ${place}.`);
  }

  // ---- What is asked. ----

  /** To something else, with an empty box under the hands. */
  #turn(to: () => void): void {
    to();
    this.#question = null;
    this.#placingMark = false;
    this.#touchedMeasured = false;
    this.#box.value = '';
    this.#draw();
    this.#box.focus();
  }

  #markAt(place: Place): void {
    this.#turn(() =>
      this.#asking.turnTo({ ...place, kind: 'mark', at: null, place: `at ${place.angleDeg}°` }),
    );
    tell(
      'said',
      'Heat mark between stations: enter its depth, from sound metal to the bottom of the dark layer.',
    );
  }

  /** Begins a heat mark, or gives it up; a question that is open is answered first. */
  #beginMark(): void {
    if (this.#mustAnswerFirst()) return;
    this.#box.value = '';
    this.#placingMark = !this.#placingMark;
    drawWrong('');
    tell('said', '');
    this.#draw();
    if (this.#placingMark) byId('plan-figure', HTMLElement).scrollIntoView({ block: 'nearest' });
    else this.#box.focus();
  }

  #mustAnswerFirst(): boolean {
    if (this.#question !== null) tell('said', 'Answer the question about the last reading first.');
    return this.#question !== null;
  }

  /** A station is turned to; a place on the track takes the heat mark that was begun. */
  #touch(event: MouseEvent): void {
    const placing = this.#placingMark;
    const touch = touched(this.#state, event, placing);
    if (touch === null || this.#mustAnswerFirst()) return;
    if (touch.on === 'track') this.#markAt(touch.place);
    else if (touch.on === 'station') {
      const kind = placing ? 'mark' : (this.#asking.asked?.kind ?? 'wall');
      this.#turn(() => this.#asking.turnToStation(kind, touch.at));
      this.#touchedMeasured = true;
    } else {
      tell(
        'said',
        placing
          ? 'That is off the friction surface. Touch the heat mark on the friction surface.'
          : 'No station there. Touch a station, or press Heat mark first.',
      );
    }
  }

  #draw(): void {
    const { asked } = this.#asking;
    const [skipped, toCheck] = [this.#asking.skipped(), this.#toCheck()];
    drawAsked(this.#state, this.#asking, this.#known, {
      placingMark: this.#placingMark,
      skipped: skipped.length,
      inDoubt: toCheck.length,
    });
    drawLeft(this.#left, skipped, toCheck);
    drawTarget(this.#placingMark ? null : asked);
    drawStations(this.#state, asked, this.#known);
    drawQuestion(this.#question);
    drawLists(this.#lists, this.#sender.trouble);
  }

  /** What the whole round shows to be off, once it is gone. */
  #toCheck(): readonly InDoubt[] {
    const { unit, sign, expected, nominalMm } = this.#state;
    const measured = this.#known.measured();
    if (!this.#asking.steps.every((step) => step.kind !== 'face' || measured(step))) return [];
    return readingsToCheck(this.#known.now(), { ...expected, nominalWallMm: nominalMm }, { unit, sign });
  }

  // ---- Wiring. ----

  #listenToForms(): void {
    byId('reading-form', HTMLFormElement).addEventListener('submit', (event) => {
      if (event.submitter?.id === 'set-order') return;
      event.preventDefault();
      event.stopPropagation();
      if (event.submitter?.id === 'use-meant') this.#useMeant();
      else if (event.submitter?.id === 'is-right') this.#confirm();
      else if (event.submitter?.id === 'no-mark') this.#noMark();
      else this.#enter();
    });
    byId('mark-form', HTMLFormElement).addEventListener('submit', (event) => {
      const place = this.#markTyped();
      // What cannot be read goes to the server, which says beside each box what is wrong with it.
      if (place === null) return;
      event.preventDefault();
      this.#markAt(place);
    });
  }

  #markTyped(): Place | null {
    const { unit, sign: decimalSign } = this.#state;
    const [ma, mr] = [typedIn('f-ma') ?? '', typedIn('f-mr') ?? ''];
    const angle = readQuantity({ field: '', typed: ma, kind: 'angle', unit: 'deg', decimalSign });
    const radius = readQuantity({ field: '', typed: mr, kind: 'length', unit, decimalSign });
    if (!angle.ok || !radius.ok || radius.value <= 0) return null;
    return { angleDeg: turned(angle.value), radiusMm: radius.value };
  }

  #listenToButtons(): void {
    const buttons: readonly [string, () => void][] = [
      ['skip', () => this.#skip()],
      ['back', () => this.#turn(() => this.#asking.goBack())],
      ['repeat', () => this.#repeatLast()],
      ['begin-mark', () => this.#beginMark()],
      ['measure-again', () => this.#turn(() => {})],
    ];
    for (const [id, does] of buttons) {
      byId(id, HTMLElement).addEventListener('click', (event) => {
        event.preventDefault();
        does();
      });
    }
    byId('plan-figure', HTMLElement).addEventListener('click', (event) => this.#touch(event));
  }

  #listenToWorld(): void {
    const send = () => void this.#sender.send();
    const look = () => void this.#sender.look();
    for (const id of ['f-who', 'f-why']) document.getElementById(id)?.addEventListener('change', send);
    window.addEventListener('online', send);
    window.addEventListener('storage', () => this.#draw());
    window.addEventListener('pageshow', (event) => {
      if (event.persisted) look();
    });
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible') look();
    });
  }
}

function targetOf({ kind, at, angleDeg, radiusMm, place }: Known): Target {
  return { kind, at: at < 0 ? null : at, angleDeg, radiusMm, place };
}

/** What stands in a box; null where the page has no such box. */
function typedIn(id: string): string | null {
  const box = document.getElementById(id);
  return box instanceof HTMLInputElement ? box.value.trim() : null;
}

const root = document.getElementById('measuring');
if (root?.dataset.state) new Bench(JSON.parse(root.dataset.state) as BenchState).open();
