import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { StudsChosen } from '../../shared/words/job.ts';
import type { CatalogueKind } from '../../shared/words/terms.ts';
import { getEntry, listEntries } from '../../src/records/catalogue.ts';
import { getJob } from '../../src/records/jobs/readJob.ts';
import { currentCriteria, saveCriteria } from '../../src/records/shopCriteria.ts';
import { type Box, formsIn, type SeenForm, sentAsShown } from './boxes.ts';
import { type Served, serve } from './program.ts';

let program: Served;
beforeAll(async () => {
  program = await serve({ demo: true });
});
afterAll(() => program.close());

type Typed = Readonly<Record<string, string>>;

/** A form, what has to be typed in it where any value of its kind will not do, and what it keeps. */
interface Tried {
  /** Where the form is filled in the first time, and where it is opened again. */
  readonly first: string;
  readonly again: (unit: string) => Promise<string>;
  /** Its id, or where it is sent. */
  readonly form: string;
  readonly formAgain?: string;
  readonly typed: Typed;
  readonly body: () => Promise<unknown>;
}

/** Boxes that every revision says anew, and boxes that read something else than what is kept. */
const APART = ['who', 'why', 'from', 'grade', 'nutClass', 'torqueFrom', 'ok.receivedOn'];

/** What is typed in a box of which nothing more is known than what the page shows. */
function anyValue({ kind, unit, options, value }: Box): string {
  if (kind === 'choice' || kind === 'radio') return options.at(-1) ?? value;
  if (kind === 'tick') return value;
  return unit === null ? 'typed' : '1.25';
}

function filled(form: SeenForm, typed: Typed): Record<string, string> {
  const all: Record<string, string> = {};
  for (const box of form.boxes) {
    const own = typed[box.name];
    if (own !== undefined) all[box.name] = own;
    else if (box.kind === 'hidden') all[box.name] = box.value;
    else if (!APART.includes(box.name)) all[box.name] = anyValue(box);
  }
  // What looks like a slip and is tried all the same.
  const sure = Object.entries(typed).filter(([name]) => name.startsWith('ok.'));
  return { ...all, ...Object.fromEntries(sure), who: 'AK', why: 'round and round' };
}

async function open(path: string, unit: string) {
  return (await fetch(program.url + path, { headers: { cookie: `unit=${unit}` } })).text();
}

async function send(action: string, fields: Typed, unit: string): Promise<{ status: number; text: string }> {
  const response = await fetch(program.url + action, {
    method: 'POST',
    redirect: 'manual',
    headers: {
      origin: program.url,
      cookie: `unit=${unit}`,
      'content-type': 'application/x-www-form-urlencoded',
    },
    body: new URLSearchParams(fields),
  });
  const html = await response.text();
  // Limits that change open jobs are saved once that was seen.
  const seen = /name="seen" value="(\w+)"/.exec(html)?.[1];
  if (seen !== undefined && fields.seen === undefined) return send(action, { ...fields, seen }, unit);
  return { status: response.status, text: html.replaceAll(/<[^>]*>/g, ' ') };
}

function theForm(html: string, name: string): SeenForm {
  const found = formsIn(html).find(({ id, action }) => id === name || action === name);
  if (!found) {
    const said = /to fix[\s\S]{0,200}/.exec(html.replaceAll(/<[^>]*>/g, ' '))?.[0] ?? '';
    throw new Error(`The page has no form ${name}. ${said}`);
  }
  return found;
}

/** The sentence of a refusal, so that a test that fails says why. */
const taken = ({ status, text }: { status: number; text: string }) =>
  status === 303 ? 'taken' : `${status}: ${/to fix[\s\S]{0,300}/.exec(text)?.[0] ?? text.slice(0, 300)}`;

async function decimalSign(sign: 'point' | 'comma') {
  const now = await currentCriteria(program.shop.db);
  if (now.body.decimalSign === sign) return;
  const ctx = { who: 'BL', why: 'the other sign', now: () => new Date('2026-11-24T12:00:00Z') };
  await saveCriteria(program.shop.db, ctx, {
    fromRevision: now.revision,
    body: { ...now.body, decimalSign: sign },
  });
}

const JOB = '1005';
const jobSection = async (section: 'received' | 'looked' | 'setup' | 'plan' | 'studs') => {
  const { body } = (await getJob(program.shop.db, JOB))!.sections[section]!;
  return body;
};
/** What was typed of the studs' work, without the sentences of what was found, which are in the reader's unit. */
const studWork = async () => {
  const { replaced = [], retightening = null } = (await getJob(program.shop.db, JOB))!.sections.studs!.body;
  const bare = <T extends { findings: unknown }>({ findings: _, ...asked }: T) => asked;
  return { replaced: replaced.map(bare), retightening: retightening && bare(retightening) };
};
/** The link of a job's page that types the studs' joint again. */
const studsAgain = async (unit: string) => {
  const html = await open(`/jobs/${JOB}`, unit);
  const href = /<a[^>]*href="([^"#]*)[^"]*"[^>]*id="studs-again"/.exec(html)?.[1] ?? '';
  return href.replaceAll('&amp;', '&');
};
const newest = async (kind: CatalogueKind) =>
  (await listEntries(program.shop.db, kind)).find(({ name }) => name === 'Round')!;
const limits = (typed: Typed): Tried => ({
  first: '/criteria',
  again: async () => '/criteria',
  form: '/criteria',
  typed,
  body: async () => {
    const { decimalSign: _, ...body } = (await currentCriteria(program.shop.db)).body;
    return body;
  },
});

const entry = (kind: CatalogueKind, typed: Typed): Tried => ({
  first: `/catalogue/${kind}/new`,
  again: async () => `/catalogue/${kind}/${(await newest(kind)).id}`,
  form: `/catalogue/${kind}`,
  typed: { name: 'Round', ...typed },
  body: async () => (await getEntry(program.shop.db, kind, (await newest(kind)).id))!.body,
});
const ofJob = (
  form: string,
  section: Parameters<typeof jobSection>[0],
  typed: Typed,
  formAgain?: string,
): Tried => ({
  first: `/jobs/${JOB}`,
  again: async () => `/jobs/${JOB}`,
  form,
  ...(formAgain !== undefined && { formAgain }),
  typed,
  body: () => jobSection(section),
});

const FAMILY: Typed = {
  studCount: '4',
  circle: '285.75',
  trackInner: '214',
  trackOuter: '264',
  nominal: '3/16 in',
  boss: '90',
  rim: '300',
  pad: '28',
  padThickness: '9',
  sideWallThickness: '4.7',
  seal: '64',
  hub: '48',
  lockUpPressure: '100 psi',
  yield: '36 ksi',
  ringInner: '236',
  ringOuter: '296',
  ringThickness: '1/4 in',
  'lim.leastPadThicknessMm': '8',
  'lim.leastPullForwardMm': '2.5',
  'lim.mostPullForwardMm': '4',
  'lim.leastHubEngagementMm': '0.3 in',
  'lim.mostPilotClearanceMm': '0.15',
  'lim.leastPilotEngagedMm': '5',
  'lim.leastSideWallHeightMm': '40',
  'lim.mostSideWallHeightMm': '41',
  'lim.leastOverallHeightMm': '5.84 in',
  'lim.mostOverallHeightMm': '149',
  'lim.leastEndPlayMm': '0.0004',
  makerMinimum: '0.165 in',
  shopMinimum: '4.3',
  shopOn: '2026-11-20',
};
const SHOP: Typed = {
  shopName: 'Round',
  minimum: '0.169 in',
  runout: '0.13',
  confidence: '97.5',
  leastGap: '2.5',
  mostGap: '4',
  backupAwayDays: '30',
  leastRpm: '30',
  mostRpm: '400',
  cuttingSpeedMPerMin: '450 ft/min',
  roughingLimitMm: '0.25',
  finishingCutMm: '0.1',
  roughingFeedMm: '0.006 in',
  finishingFeedMm: '0.08',
  allowance: '0.0004',
  'ok.allowance': '0.0004',
  shims: '0.4; 0.0095 in',
  studProof: '30 lb-ft',
  young: '206000',
  poisson: '0.29',
  liningModulus: '60',
  lockUpPressure: '7 bar',
  yield: '250',
  peakOverNew: '1.5',
  timeZone: 'America/Chicago',
  rippleOverNew: '1.25',
  gradeMmPerS: '6.3',
  massKg: '13.6 lb',
  speedRpm: '3000',
  bendingSpeed: '2500',
  heatShare: '50',
  slipTorque: '200',
  slipSpeed: '900',
  conductivity: '51.9',
  density: '7870',
  specificHeat: '486',
  decimalSign: 'point',
  lengthUnit: 'mm',
};
const STUD: Typed = {
  thread: '3/8-24 UNF-2A',
  threadStart: '0.0004',
  threadEnd: '0.8 in',
  projection: '23',
  tensile: '120 ksi',
  proof: '586',
  pitchDiameter: '0.347 in',
  stock: '12',
};
const STACK: Typed = {
  'ln.0': 'plate',
  'lt.0': '1/8 in',
  'lo.0': '0.1',
  'lh.0': '10.3',
  'lc.0': '0.0004',
  'ln.1': 'casting',
  'lt.1': '9.5',
  'lo.1': '0.005 in',
  'lh.1': '10.4',
  'lc.1': '0.5',
  holeCount: '6',
  nutThread: '3/8-24',
  nutHeight: '8.3',
  nutTolerance: '0.2',
  nutCountersink: '0.1',
  nutProof: '90 ksi',
  nutTensile: '900',
  makerTorque: '25 lb-ft',
  nutBearing: '13.4',
  tipRoom: '1.1 in',
};
const NUT: Typed = {
  nutThread: '3/8-24',
  nutHeight: '0.328 in',
  nutTolerance: '0.2',
  nutCountersink: '0.1',
  nutProof: '120 ksi',
  nutTensile: '900',
  nutBearing: '13.4',
  stock: '12',
};
const WASHER: Typed = { inner: '0.41 in', outer: '22', thickness: '1/16 in', tolerance: '0.05', stock: '12' };
const GAUGE: Typed = {
  gaugeKind: 'micrometer',
  coverage: '2',
  due: '2027-11-24',
  resolution: '0.0001 in',
  calibration: '0.0015',
  repeatability: '0.0004',
  checkEvery: '30',
};

const STEEL: Typed = {
  young: '29700 ksi',
  poisson: '0.28',
  source: 'mill certificate',
  sourceOn: '2026-05-04',
  yield: '46 ksi',
  conductivity: '45',
  density: '0.283 lb/in³',
  specificHeat: '470',
};

const LINING: Typed = {
  liningModulus: '221000 psi/in',
  source: 'its data sheet',
  sourceOn: '2026-05-04',
};

const LATHE: Typed = {
  leastRpm: '45',
  mostRpm: '1150',
  cuttingSpeedMPerMin: '480 ft/min',
  noseRadiusMm: '0.031 in',
  roughingLimitMm: '0.009 in',
  finishingCutMm: '0.004 in',
  roughingFeedMm: '0.0075 in',
  finishingFeedMm: '0.0035 in',
  source: 'its manual',
  sourceOn: '2026-05-04',
};

const FORMS: readonly (readonly [string, Tried])[] = [
  ['a cover type', entry('family', FAMILY)],
  ['a stud', entry('stud', STUD)],
  ['a flexplate stack', entry('stack', STACK)],
  ['a nut', entry('nut', NUT)],
  ['a washer or shim', entry('washer', WASHER)],
  ['a gauge', entry('gauge', GAUGE)],
  ['a steel', entry('steel', STEEL)],
  ['a lining', entry('lining', LINING)],
  ['a lathe', entry('lathe', LATHE)],
  ['the shop limits', limits({ ...SHOP, minimumFormula: '' })],
  [
    'the shop limits with a formula',
    limits({ ...SHOP, minimum: '', minimumFormula: 'max(4.1 mm, 85 % of new wall)', why: 'one rule' }),
  ],
  [
    'what came in',
    ofJob('received-form', 'received', {
      family: '1125-4-billet',
      receivedOn: '2026-10-07',
      comebackOf: '1001',
    }),
  ],
  [
    'the inspection',
    ofJob('looked-form', 'looked', {
      crackTest: 'none-found',
      crackMethod: 'dye',
      ...Object.fromEntries(
        ['welds', 'pads', 'stud-threads', 'crank-pilot', 'earlier-repairs'].map((item) => [
          `result.${item}`,
          'fault',
        ]),
      ),
    }),
  ],
  [
    'how it is measured',
    ofJob('setup-form', 'setup', {
      residual: '0,02'.replace(',', '.'),
      gaugeU: '0.0004',
      gaugeStep: '0.002',
      gaugeSpread: '0.0008',
      faceU: '0.002',
      cutU: '0.005',
      'k.padThicknessMm': '9',
      'k.leastPadThicknessMm': '8',
      'k.pullForwardMm': '3.5',
      'k.leastPullForwardMm': '2.5',
      'k.hubEngagementMm': '12',
      'k.leastHubEngagementMm': '0.3 in',
      'k.crankPilotMm': '45',
      'k.crankBoreMm': '45.1',
      'k.pilotEngagedMm': '8',
      'k.leastPilotEngagedMm': '5',
      'k.pilotRoomMm': '12',
      'k.sideWallHeightMm': '100',
      'k.sideWallHeightMm.least': '99',
      'k.sideWallHeightMm.most': '101',
      'k.overallHeightMm': '149',
      'k.overallHeightMm.least': '148',
      'k.overallHeightMm.most': '5.88 in',
      'k.padHeightsMm': '0; -0.02; 0.001 in',
      'k.mostPullForwardMm': '4',
    }),
  ],
  ['the cut to try', ofJob('plan-form', 'plan', { cut: '0.011 in', lathe: 'Lathe 2, demo, revision 1' })],
  [
    'a replaced stud',
    {
      ...ofJob(
        'replaced-form',
        'studs',
        { studNumber: '2', leanAt: '20', proved: '33 lb-ft' },
        'replaced-form-2',
      ),
      body: studWork,
    },
  ],
  [
    'the re-torque',
    {
      ...ofJob('retightened-form', 'studs', {
        againOn: '2026-11-20',
        againTorque: '27 lb-ft',
        makerAllows: 'yes',
        locker: '',
      }),
      body: studWork,
    },
  ],
  [
    'the studs and their joint',
    {
      ...ofJob('studs-form', 'studs', {
        torque: '27 lb-ft',
        engine: '350 N·m',
        service: '1.8',
        k: '0.21',
        scatter: '22.5',
        mu: '0.14',
        jointStuds: '4',
        jointCircle: '11.25 in',
        note: 'as asked',
      }),
      first: `/jobs/${JOB}?stack=two-piece-four-3-8-24&pull=4.2&kFrom=own&scatterFrom=own&muFrom=own`,
      again: studsAgain,
      body: async () => {
        const { input, pullForwardMm, jointFrom } = (await jobSection('studs')) as StudsChosen;
        return { joint: input!.joint, pullForwardMm, whose: jointFrom?.torque };
      },
    },
  ],
];

describe('a form filled in every box and opened again says the same, and sent as it is shown changes nothing', () => {
  it.each(FORMS)('%s', async (_what, tried) => {
    await decimalSign('point');
    const form = theForm(await open(tried.first, 'mm'), tried.form);
    const sent = filled(form, tried.typed);
    expect(taken(await send(form.action, sent, 'mm'))).toBe('taken');
    const kept = await tried.body();
    const path = await tried.again('mm');
    const name = tried.formAgain ?? (tried.form.startsWith('/catalogue') ? path : tried.form);

    // Every box that was filled is filled when the form is opened again.
    const shown = theForm(await open(path, 'mm'), name);
    const empty = shown.boxes.filter(
      (box) =>
        !APART.includes(box.name) &&
        (sent[box.name] ?? '') !== '' &&
        (box.kind === 'tick' ? !box.ticked : box.kind === 'radio' ? false : box.value === ''),
    );
    expect(empty.map((box) => box.name)).toEqual([]);

    for (const sign of ['point', 'comma'] as const) {
      for (const unit of ['mm', 'in']) {
        await decimalSign(sign);
        const opened = theForm(await open(await tried.again(unit), unit), name);
        const same = { ...sentAsShown(opened), who: 'AK', why: 'as it was shown' };
        // Somebody chose the other unit meanwhile: the form says what its boxes were shown in.
        const other = unit === 'mm' ? 'in' : 'mm';
        expect(taken(await send(opened.action, same, other))).toBe('taken');
        expect(await tried.body()).toEqual(kept);
      }
    }
    await decimalSign('point');
  });

  it.each([
    [
      'the pull-forward gap',
      '/stud/gap',
      'gap-form',
      { depth: '1.1 in', standsOut: '-0.0004', hub: '20', hubLeast: '12', gapLeast: '3', gapMost: '60' },
    ],
    ['which flexplate it is', '/stud/flexplate', 'flexplate-form', { nutThread: '3/8-24', holeCount: '4' }],
  ] as const)('%s, whose figures lie in its address', async (_what, path, name, typed) => {
    const empty = theForm(await open(`${path}?unit=mm`, 'mm'), name);
    const sent = filled(empty, typed);
    const full = theForm(await open(`${path}?${new URLSearchParams(sent)}`, 'mm'), name);
    const shown = sentAsShown(full);
    for (const [box, text] of Object.entries(sent)) {
      if (box !== 'who' && box !== 'why') expect([box, shown[box]]).toEqual([box, text]);
    }
    const again = theForm(await open(`${path}?${new URLSearchParams(shown)}`, 'in'), name);
    expect(sentAsShown(again)).toEqual(shown);
  });

  it('and every form of a job that keeps what is typed is among them, or says why not', async () => {
    const tried = FORMS.map(([, { form }]) => form);
    const apart: Readonly<Record<string, string>> = {
      'before-form': 'readings are added, never written over: see the next test',
      'after-form': 'readings are added, never written over: see the next test',
      'cuts-form': 'each time it is sent it adds a pass',
      'pass-form': 'asks for one depth anew',
      'decision-form': 'a decision is made anew each time',
      'put-form': 'the shelf keeps each place a cover was put',
      'closed-form': 'it is closed and opened anew each time',
      'signature-form': 'a signature is made anew each time',
      'what-if-form': 'looks, and keeps nothing',
      '': 'looks, and keeps nothing',
      'job-stack-form': 'looks, and keeps nothing',
      'unit-form': 'chooses the unit',
    };
    const forms = formsIn(await open(`/jobs/${JOB}`, 'mm')).map(({ id }) => id.replace(/-\d+$/, ''));
    const unknown = forms.filter((id) => !tried.includes(id) && apart[id] === undefined && !/photo/.test(id));
    expect([...new Set(unknown)]).toEqual([]);
  });
});
