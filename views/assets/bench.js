// Measuring at the bench. Every reading is kept on this tablet first, under a key of its own, and taken off only when
// the server says that it has it. The server knows a reading by its id, so sending one twice does nothing.

(() => {
  const root = document.getElementById('measuring');
  if (!root) return;
  const state = JSON.parse(root.dataset.state);
  const { readLength, meantLength, doubtLength } = globalThis.coverwrightLength;
  const $ = (id) => document.getElementById(id);
  const form = $('reading-form');
  const box = $('reading');
  const KIND = { w: 'wall', f: 'face', m: 'mark' };
  const SHELF = 'coverwright.reading.';
  const MINE = `${SHELF}${encodeURIComponent(state.job)}.${encodeURIComponent(state.created)}.`;
  const here = `/jobs/${encodeURIComponent(state.job)}/measure`;
  const MOST_AT_ONCE = 200;

  // ---- What is kept on this tablet. One key for each reading: two pages open at once cannot lose one another's. ----

  /** Readings this tablet could not put on its shelf (full, or switched off): they live as long as the page. */
  const homeless = new Map();

  function keys() {
    const found = [];
    try {
      for (let i = 0; i < localStorage.length; i++) found.push(localStorage.key(i));
    } catch {
      return [];
    }
    return found;
  }

  function waiting() {
    const kept = keys()
      .filter((key) => key.startsWith(MINE))
      .map((key) => ({ key, entry: readEntry(localStorage.getItem(key)) }))
      .filter((one) => one.entry !== null);
    const all = [...kept, ...[...homeless].map(([key, entry]) => ({ key, entry }))];
    return all.sort((a, b) => (a.key < b.key ? -1 : 1));
  }

  function readEntry(text) {
    try {
      const entry = JSON.parse(text);
      return typeof entry === 'object' && entry !== null && typeof entry.reading?.id === 'string'
        ? entry
        : null;
    } catch {
      return null;
    }
  }

  function put(key, entry) {
    try {
      localStorage.setItem(key, JSON.stringify(entry));
      homeless.delete(key);
    } catch {
      homeless.set(key, entry);
    }
  }

  function takeOff(key) {
    homeless.delete(key);
    try {
      localStorage.removeItem(key);
    } catch {
      // Nothing was kept there.
    }
  }

  let last = 0;
  function newKey(id) {
    const before = waiting().at(-1)?.key.slice(MINE.length).split('-')[0];
    last = Math.max(Date.now(), last + 1, Number(before ?? 0) + 1);
    return `${MINE}${String(last).padStart(16, '0')}-${id}`;
  }

  function newId() {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    return `m-${[...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('')}`;
  }

  // ---- What stands: on the server, and here. ----

  let standing = state.standing;

  function samePlace(a, b) {
    return Math.abs(a.angleDeg - b.angleDeg) < 1e-6 && Math.abs(a.radiusMm - b.radiusMm) < 1e-6;
  }

  /** Readings of this pass, as they will stand once everything has been sent. */
  function standingNow() {
    const known = new Set(standing.map((one) => one.id));
    const here = waiting()
      .filter(
        ({ entry }) => entry.reading.pass === state.pass && !entry.refused && !known.has(entry.reading.id),
      )
      .map(({ entry }) => ({ ...entry.reading, shown: entry.reading.typed, who: '', here: true }));
    const all = [...standing, ...here];
    const replaced = new Set(here.map((one) => one.replaces));
    return all.filter((one) => !replaced.has(one.id));
  }

  function at(kind, place) {
    return standingNow().filter((one) => one.kind === kind && samePlace(one, place));
  }

  // ---- What is asked. ----

  const steps = (() => {
    const round = state.rounds[state.order.round];
    const kinds = [...state.order.asks].map((letter) => KIND[letter]);
    return state.order.by === 'kind'
      ? kinds.flatMap((kind) => round.map((index) => ({ kind, at: index })))
      : round.flatMap((index) => kinds.map((kind) => ({ kind, at: index })));
  })();

  let asked = state.asked;
  let lastKept = null;
  let question = null;

  function indexOf(step) {
    return step === null ? -1 : steps.findIndex((one) => one.kind === step.kind && one.at === step.at);
  }

  function nextAfter(step) {
    const from = indexOf(step);
    const now = standingNow();
    const rest = [...steps.slice(from + 1), ...steps.slice(0, from + 1)];
    return (
      rest.find(
        ({ kind, at: index }) =>
          !now.some((one) => one.kind === kind && samePlace(one, state.stations[index])),
      ) ?? null
    );
  }

  /** Turns to a step: a new reading, a correction of what stands there, or a repeat beside it. */
  function turnTo(step, how = 'plain') {
    question = null;
    if (step === null) {
      asked = null;
    } else {
      const place = step.at === null ? step : state.stations[step.at];
      const was = how === 'again' ? null : (at(step.kind, place).at(-1) ?? null);
      asked = {
        kind: step.kind,
        at: step.at,
        angleDeg: place.angleDeg,
        radiusMm: place.radiusMm,
        place: place.name ?? step.place,
        replaces: was && { id: was.id, shown: was.shown },
        again: how === 'again',
      };
    }
    box.value = '';
    draw();
    box.focus();
  }

  function goOn() {
    turnTo(nextAfter(asked === null ? lastKept : asked.at === null ? lastKept : asked));
  }

  function goBack() {
    const from = asked === null || asked.at === null ? steps.length : indexOf(asked);
    const step = steps[(from - 1 + steps.length) % steps.length];
    if (step) turnTo(step);
  }

  function repeatLast() {
    const step = lastKept ?? (asked?.at === null ? null : (steps[indexOf(asked) - 1] ?? null));
    if (step === null) say('Nothing has been measured yet on this page, so there is nothing to repeat.');
    else turnTo(step, 'again');
  }

  // ---- One reading. ----

  function wrong(text) {
    const place = $('reading-wrong');
    place.textContent = text;
    place.className = text === '' ? '' : 'field-error';
  }

  function say(text) {
    $('said').textContent = text;
  }

  function enter() {
    const typed = box.value.trim();
    wrong('');
    if (question !== null) {
      if (/^u$/i.test(typed) && question.meant !== null) return answerMeant();
      if (/^y$/i.test(typed)) return keep(question.typed, true);
    }
    if (typed === '') return say('Nothing was typed. Measure, or type s and Enter to skip.');
    if (/^s$/i.test(typed)) return asked === null ? undefined : skip();
    if (/^b$/i.test(typed)) return goBack();
    if (/^r$/i.test(typed)) return repeatLast();
    if (asked === null) return wrong('Every station has its reading. Choose one below to repeat or correct.');
    take(typed);
  }

  function skip() {
    turnTo(asked.at === null ? nextAfter(lastKept) : nextAfter(asked));
  }

  function answerMeant() {
    take(question.meant);
  }

  function take(typed) {
    const mm = readLength(typed, state.unit, state.sign);
    if (mm === null) {
      box.select();
      const meant = meantLength(typed, state.unit, state.sign);
      const advice =
        meant === null
          ? `Type it as ${state.sign === 'comma' ? '4,92' : '4.92'}, or 3/16 in.`
          : `Did you mean ${meant}?`;
      return wrong(`"${typed.slice(0, 40)}" is not a length. ${advice}`);
    }
    if ((asked.kind === 'wall' && mm <= 0) || (asked.kind === 'mark' && mm < 0)) {
      box.select();
      return wrong(
        `${typed} cannot be ${asked.kind === 'wall' ? 'a wall' : 'the depth of a mark'}. Measure it again.`,
      );
    }
    const doubted = doubtLength(asked.kind, mm, typed, state.nominalMm, state.unit, state.sign);
    if (doubted !== null) {
      question = { ...doubted, typed };
      box.value = '';
      drawQuestion();
      box.focus();
      return;
    }
    keep(typed, false);
  }

  function keep(typed, confirmed) {
    const reading = {
      id: newId(),
      pass: state.pass,
      kind: asked.kind,
      angleDeg: asked.angleDeg,
      radiusMm: asked.radiusMm,
      typed,
      unit: state.unit,
      decimalSign: state.sign,
      gauge: state.gauge,
      confirmed,
      replaces: asked.replaces?.id ?? null,
      weldedAt: state.weldedAt,
    };
    put(newKey(reading.id), { reading, place: asked.place, at: asked.at });
    if (asked.at !== null) lastKept = { kind: asked.kind, at: asked.at };
    say(`${typed} kept: ${state.what[asked.kind].toLowerCase()} ${asked.place}.`);
    goOn();
    send();
  }

  // ---- Sending: in order, one batch at a time, again until the server has answered. ----

  let sending = false;
  let failures = 0;
  let timer = 0;
  let trouble = '';

  async function send() {
    clearTimeout(timer);
    if (sending) return;
    const known = new Set(standing.map((one) => one.id));
    for (const { key, entry } of waiting()) if (known.has(entry.reading.id)) takeOff(key);
    const batch = waiting()
      .filter(({ entry }) => !entry.refused)
      .slice(0, MOST_AT_ONCE);
    if (batch.length === 0) return draw();
    const who = $('f-who')?.value.trim() ?? '';
    if ($('f-who') && who === '') {
      trouble = 'Give your initials: the readings wait for them.';
      return draw();
    }
    sending = true;
    let again = false;
    try {
      const answer = await fetch(`${here}/kept?pass=${state.pass}`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json' },
        body: JSON.stringify({
          who,
          why: $('f-why')?.value.trim() ?? '',
          readings: batch.map((one) => one.entry.reading),
        }),
        redirect: 'manual',
        signal: AbortSignal.timeout(10_000),
      });
      const json = (answer.headers.get('Content-Type') ?? '').includes('json');
      if (answer.ok && json) {
        const taken = await answer.json();
        settle(batch, taken);
        failures = 0;
        trouble = '';
        again = true;
      } else if (answer.status === 422 && json) {
        trouble = (await answer.json()).error.message;
      } else if (answer.status >= 500) {
        failures++;
        trouble = 'The server could not keep them just now; it is asked again.';
      } else {
        trouble =
          'The server did not take them. Load this page again, and sign in where it asks; nothing here is lost.';
      }
    } catch {
      failures++;
      trouble = 'No connection. The readings are kept on this tablet and sent when it returns.';
    }
    sending = false;
    draw();
    if (again) return send();
    if (failures > 0) timer = setTimeout(send, Math.min(15_000, 500 * 2 ** Math.min(failures, 5)));
  }

  function settle(batch, taken) {
    const has = new Set([...taken.added, ...taken.already]);
    const refused = new Map(taken.refused.map((one) => [one.id, one.message]));
    for (const { key, entry } of batch) {
      if (has.has(entry.reading.id)) takeOff(key);
      else if (refused.has(entry.reading.id)) put(key, { ...entry, refused: refused.get(entry.reading.id) });
    }
    standing = taken.standing;
    if (taken.beside.length > 0) say(taken.beside[0].message);
  }

  /** What others did meanwhile. */
  async function look() {
    try {
      const answer = await fetch(`${here}/standing?pass=${state.pass}`, {
        signal: AbortSignal.timeout(10_000),
      });
      if (answer.ok) standing = (await answer.json()).standing;
    } catch {
      return;
    }
    send();
  }

  // ---- What is seen. ----

  function draw() {
    const now = standingNow();
    const measured = steps.filter(({ kind, at: index }) =>
      now.some((one) => one.kind === kind && samePlace(one, state.stations[index])),
    ).length;
    // What is asked never changes under a person's hands, whatever another tablet sends meanwhile.
    const others = asked === null || asked.replaces !== null || asked.again ? [] : at(asked.kind, asked);
    $('asked').textContent = asked === null ? 'All measured.' : `${state.what[asked.kind]} ${asked.place}`;
    $('asked-more').textContent =
      asked === null
        ? 'Every station has its reading. Look at the job, or measure one again.'
        : `${asked.at === null ? 'Between stations' : `Station ${asked.at + 1}`}, r ${length(asked.radiusMm)}. ${
            asked.replaces
              ? `${asked.replaces.shown} stands here; what you type corrects it.`
              : asked.again
                ? 'A repeat: kept beside what stands.'
                : others.length > 0
                  ? `${others.at(-1).who} has ${others.at(-1).shown} here from another tablet; yours is kept beside it, or skip.`
                  : `${measured} of ${steps.length} measured.`
          }`;
    $('to-answer').hidden = asked !== null;
    $('keep-reading').className = asked === null ? 'button' : 'button first';
    drawTarget();
    for (const dot of root.querySelectorAll('[data-station]')) {
      const place = state.stations[Number(dot.dataset.station)];
      const has = now.some((one) => one.kind === (asked?.kind ?? 'wall') && samePlace(one, place));
      dot.setAttribute('class', has ? 'st-measured' : 'st-missing');
    }
    drawQuestion();
    drawLists();
  }

  function length(mm) {
    return `${Number((state.unit === 'in' ? mm / 25.4 : mm).toFixed(state.unit === 'in' ? 4 : 3))} ${state.unit}`;
  }

  function drawTarget() {
    const target = $('measuring-plan-asked');
    target.setAttribute('visibility', asked === null ? 'hidden' : 'visible');
    if (asked === null) return;
    const r = Number(target.dataset.scale) * asked.radiusMm;
    const turn = (asked.angleDeg * Math.PI) / 180;
    target.setAttribute(
      'transform',
      `translate(${(r * Math.sin(turn)).toFixed(2)} ${(-r * Math.cos(turn)).toFixed(2)})`,
    );
  }

  function drawQuestion() {
    $('doubt').hidden = question === null;
    if (question === null) return;
    $('doubt-question').textContent = question.question;
    const use = $('use-meant');
    use.hidden = question.meant === null;
    use.textContent = `Use ${question.meant}`;
    $('is-right').textContent = `${question.typed} is right`;
    $('doubt-keys').textContent =
      question.meant === null
        ? 'Or, without leaving the keyboard: y and Enter says it is right; or measure here again.'
        : 'Or, without leaving the keyboard: u and Enter uses it, y and Enter says it is right; or measure here again.';
    $('doubt-keys').hidden = false;
  }

  function drawLists() {
    const waits = waiting().filter(({ entry }) => entry.reading.pass === state.pass || entry.refused);
    const others = waiting().length - waits.length;
    $('waiting-count').textContent = String(waiting().length);
    $('nothing-waits').hidden = waiting().length > 0;
    $('on-tablet').replaceChildren(
      ...waits.map(({ key, entry }) => {
        const line = document.createElement('li');
        line.dataset.id = entry.reading.id;
        line.append(words(entry.reading, entry.place, entry.at, entry.reading.typed, ''));
        if (entry.refused) {
          const why = document.createElement('span');
          why.className = 'field-error';
          why.textContent = `Not taken: ${entry.refused} `;
          const away = button('take it off this tablet', () => {
            takeOff(key);
            draw();
          });
          line.append(why, away);
        }
        return line;
      }),
    );
    $('server-count').textContent = String(standing.length);
    $('on-server').replaceChildren(
      ...[...standing].reverse().map((one) => {
        const line = document.createElement('li');
        line.dataset.id = one.id;
        const acts = document.createElement('span');
        acts.className = 'reading-acts';
        const step = {
          kind: one.kind,
          at: one.at < 0 ? null : one.at,
          angleDeg: one.angleDeg,
          radiusMm: one.radiusMm,
          place: one.place,
        };
        acts.append(button('correct', () => correct(step, one), ` ${one.shown}`));
        if (one.kind === 'wall') acts.append(button('repeat', () => turnTo(step, 'again'), ` ${one.place}`));
        line.append(
          words(one, one.place, one.at < 0 ? null : one.at, one.shown, one.who, one.doubtful),
          acts,
        );
        return line;
      }),
    );
    const left =
      homeless.size > 0
        ? 'This tablet cannot keep readings by itself (its storage is full or switched off): leave this page open until none waits. '
        : '';
    const also = others > 0 ? `${others} of the other pass wait too. ` : '';
    $('trouble').textContent = `${left}${also}${waiting().length > 0 ? trouble : ''}`;
  }

  function correct(step, one) {
    turnTo(step);
    asked = { ...asked, replaces: { id: one.id, shown: one.shown } };
    draw();
    box.focus();
  }

  function words(reading, place, index, shown, who, doubtful = false) {
    const line = document.createElement('span');
    const bold = (text) => {
      const b = document.createElement('b');
      b.textContent = text;
      return b;
    };
    if (index !== null && index !== undefined) line.append(bold(String(index + 1)), ' ');
    line.append(
      `${state.what[reading.kind].toLowerCase()} ${place}: `,
      bold(/[a-z"]/i.test(shown) ? shown : `${shown} ${state.unit}`),
    );
    if (who !== '') line.append(`, ${who}`);
    if (doubtful) line.append(bold(', doubted and not confirmed'));
    return line;
  }

  function button(text, does, unseen = '') {
    const made = document.createElement('button');
    made.type = 'button';
    made.className = 'button quiet';
    made.textContent = text;
    if (unseen !== '') {
      const more = document.createElement('span');
      more.className = 'unseen';
      more.textContent = unseen;
      made.append(more);
    }
    made.addEventListener('click', does);
    return made;
  }

  // ---- Touching the drawing: a station is turned to, any other place on the track takes a mark. ----

  $('plan-figure').addEventListener('click', (event) => {
    const svg = event.target instanceof Element ? event.target.closest('svg.plan') : null;
    const matrix = svg?.getScreenCTM();
    if (!matrix) return;
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    const scale = Number($('measuring-plan-asked').dataset.scale);
    const near = state.stations
      .map((place, index) => {
        const turn = (place.angleDeg * Math.PI) / 180;
        const [x, y] = [scale * place.radiusMm * Math.sin(turn), -scale * place.radiusMm * Math.cos(turn)];
        return { index, away: Math.hypot(x - point.x, y - point.y) * matrix.a };
      })
      .sort((a, b) => a.away - b.away)[0];
    if (near && near.away < 14) return turnTo({ kind: asked?.kind ?? 'wall', at: near.index });
    const radiusMm = Math.round(Math.hypot(point.x, point.y) / scale);
    const angleDeg = (Math.round((Math.atan2(point.x, -point.y) * 180) / Math.PI) + 360) % 360;
    if (radiusMm < state.trackInnerMm - 1 || radiusMm > state.trackOuterMm + 1) {
      return say('That is off the track, so no mark is placed there. Touch the track itself.');
    }
    markAt({ angleDeg, radiusMm });
  });

  function markAt(place) {
    turnTo({ kind: 'mark', at: null, ...place, place: `at ${place.angleDeg}°` });
    say('A mark between stations: type its depth, from sound metal to the bottom of the darkened layer.');
  }

  // ---- Wiring. ----

  form.addEventListener('submit', (event) => {
    event.preventDefault();
    event.stopPropagation();
    if (event.submitter?.id === 'use-meant' && question?.meant) answerMeant();
    else if (event.submitter?.id === 'is-right' && question) keep(question.typed, true);
    else enter();
  });
  $('mark-form').addEventListener('submit', (event) => {
    const [ma, mr] = [event.target.elements.ma.value.trim(), event.target.elements.mr.value];
    const angle = Number(ma.replace(',', '.').replace(/ ?(°|deg)$/, ''));
    const radiusMm = readLength(mr, state.unit, state.sign);
    // What this tablet cannot read goes to the server, which says what is wrong with it.
    if (ma === '' || !Number.isFinite(angle) || radiusMm === null || radiusMm <= 0) return;
    event.preventDefault();
    markAt({ angleDeg: ((angle % 360) + 360) % 360, radiusMm });
  });
  for (const [id, does] of [
    ['skip', () => (asked === null ? undefined : skip())],
    ['back', goBack],
    ['repeat', repeatLast],
  ]) {
    $(id).addEventListener('click', (event) => {
      event.preventDefault();
      does();
    });
  }
  $('f-who')?.addEventListener('change', () => {
    trouble = '';
    send();
  });
  $('f-why')?.addEventListener('change', send);
  window.addEventListener('online', send);
  window.addEventListener('pageshow', (event) => event.persisted && look());
  window.addEventListener('storage', draw);
  document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && look());

  /** Readings of other jobs that this tablet still keeps: said, with the way to them. */
  function tellElsewhere() {
    const jobs = new Set(
      keys()
        .filter((key) => key.startsWith(SHELF) && !key.startsWith(MINE))
        .map((key) => decodeURIComponent(key.slice(SHELF.length).split('.')[0])),
    );
    const place = $('elsewhere');
    place.hidden = jobs.size === 0;
    place.replaceChildren(...(jobs.size === 0 ? [] : ['This tablet still keeps readings of ']));
    for (const job of jobs) {
      const link = document.createElement('a');
      link.href = `/jobs/${encodeURIComponent(job)}/measure`;
      link.textContent = `job ${job}`;
      place.append(link, ' ');
    }
    if (jobs.size > 0) place.append('– open it to send them.');
  }

  $('reading-keys').hidden = false;
  $('touch-hint').hidden = false;
  if (
    asked !== null &&
    asked.replaces === null &&
    !asked.again &&
    asked.at !== null &&
    at(asked.kind, asked).length > 0
  ) {
    turnTo(nextAfter(asked));
  }
  tellElsewhere();
  draw();
  box.focus();
  send();
})();
