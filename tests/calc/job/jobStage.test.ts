import { describe, expect, test } from 'vitest';
import type { CoverCheck } from '../../../shared/words/cover.ts';
import {
  type Job,
  type JobSections,
  type Kept,
  LOOK_ITEMS,
  type Reading,
  type SectionName,
  STEP_NAMES,
  type Stage,
} from '../../../shared/words/job.ts';
import {
  currentReadings,
  decisionStands,
  missingOf,
  type StageParts,
  stageOf,
  stepsOf,
  stepsShown,
} from '../../../src/calc/job/jobStage.ts';
import { crack, cuts, decision, looked, received, setup, studs, wall } from '../../records/samples.ts';

const signature = { statement: '', signedRevision: 1 };
const plan = { plannedCutMm: null, typed: '' };
const replace = decision(1, { decision: 'replace' });

type Bodies = { [S in SectionName]?: [number, JobSections[S]] };

/** A job whose sections were made so at the revisions given; its own revision is the newest of them. */
function parts(
  bodies: Bodies,
  readings: readonly [string, number, Partial<Reading>?][] = [],
  more: Partial<StageParts> = {},
): StageParts {
  const kept = <S extends SectionName>(what: S): Kept<JobSections[S]> | null => {
    const given: [number, JobSections[S]] | undefined = bodies[what];
    return given ? { revision: given[0], at: '', who: 'AB', why: '', body: given[1] } : null;
  };
  const sections: Job['sections'] = {
    received: kept('received'),
    looked: kept('looked'),
    inspected: kept('inspected'),
    setup: kept('setup'),
    plan: kept('plan'),
    decision: kept('decision'),
    cuts: kept('cuts'),
    studs: kept('studs'),
    signature: kept('signature'),
    closed: kept('closed'),
  };
  const rows = readings.map(([id, revision, changes]) => ({
    ...wall(id),
    who: 'AB',
    at: '',
    revision,
    ...changes,
  }));
  const revisions = [...Object.values(bodies).map(([revision]) => revision), ...rows.map((r) => r.revision)];
  return {
    revision: Math.max(...revisions),
    sections,
    readings: rows,
    familyChangedAt: bodies.received?.[0] ?? 0,
    planChangedAt: bodies.plan?.[0] ?? 0,
    cutsChangedAt: bodies.cuts?.[0] ?? 0,
    weldedAt: 0,
    passesAt: [],
    ...more,
  };
}

const begun: Bodies = { received: [1, received()], looked: [2, looked()] };
const decided: Bodies = { ...begun, decision: [4, decision(3)] };
const cutOnce: Bodies = { ...decided, cuts: [5, cuts(0.2)] };
const after = { pass: 'after' } as const;
const unseen = looked({ crackTest: 'not-done', crackMethod: null });
const faulty = (final: boolean) => looked({ items: [{ item: 'pads', result: 'fault', final, note: '' }] });

const ROWS: readonly [Stage, string, StageParts][] = [
  ['to-look', 'only received', parts({ received: [1, received()] })],
  ['to-look', 'measured before it was looked at', parts({ received: [1, received()] }, [['a', 2]])],
  ['to-measure', 'looked at', parts(begun)],
  ['to-measure', 'only the face was measured', parts(begun, [['a', 3, { kind: 'face' }]])],
  [
    'to-measure',
    'the one wall was withdrawn',
    parts(begun, [
      ['a', 3],
      ['b', 4, { valueMm: null, replaces: 'a' }],
    ]),
  ],
  ['to-measure', 'a fault that can be mended', parts({ ...begun, looked: [2, faulty(false)] })],
  ['to-decide', 'a fault that cannot', parts({ ...begun, looked: [2, faulty(true)] })],
  ['to-decide', 'a crack', parts({ ...begun, looked: [2, crack] })],
  ['to-decide', 'measured', parts(begun, [['a', 3]])],
  [
    'to-decide',
    'the one wall was corrected',
    parts(begun, [
      ['a', 3],
      ['b', 4, { replaces: 'a' }],
    ]),
  ],
  ['to-cut', 'decided', parts(decided, [['a', 3]])],
  ['to-cut', 'no cut in the list of cuts', parts({ ...decided, cuts: [5, cuts()] }, [['a', 3]])],
  ['to-cut', 'studs chosen after the decision', parts({ ...decided, studs: [5, studs] }, [['a', 3]])],
  [
    'to-cut',
    'a note changed after the decision',
    parts({ ...decided, received: [5, received()] }, [['a', 3]], { familyChangedAt: 1 }),
  ],
  [
    'to-decide',
    'the family changed after the decision',
    parts({ ...decided, received: [5, received()] }, [['a', 3]]),
  ],
  [
    'to-decide',
    'looked at again after the decision',
    parts({ ...decided, looked: [5, looked()] }, [['a', 3]]),
  ],
  ['to-decide', 'set up otherwise after the decision', parts({ ...decided, setup: [5, setup] }, [['a', 3]])],
  ['to-decide', 'planned otherwise after the decision', parts({ ...decided, plan: [5, plan] }, [['a', 3]])],
  [
    'to-decide',
    'measured more after the decision',
    parts(decided, [
      ['a', 3],
      ['b', 5, { kind: 'mark' }],
    ]),
  ],
  [
    'to-decide',
    'a reading withdrawn after the decision',
    parts(decided, [
      ['a', 3],
      ['b', 3],
      ['c', 5, { valueMm: null, replaces: 'b' }],
    ]),
  ],
  [
    'to-decide',
    'a reading moved to after the cut',
    parts(decided, [
      ['a', 3],
      ['b', 3],
      ['c', 5, { ...after, replaces: 'b' }],
    ]),
  ],
  ['to-verify', 'cut', parts(cutOnce, [['a', 3]])],
  [
    'to-verify',
    'measured after the cut, then cut again',
    parts({ ...cutOnce, cuts: [7, cuts(0.2, 0.1)] }, [
      ['a', 3],
      ['b', 6, after],
    ]),
  ],
  [
    'to-verify',
    'only the face measured after the cut',
    parts(cutOnce, [
      ['a', 3],
      ['b', 6, { ...after, kind: 'face' }],
    ]),
  ],
  [
    'to-sign',
    'measured after the cut',
    parts(cutOnce, [
      ['a', 3],
      ['b', 6, after],
    ]),
  ],
  [
    'to-sign',
    'a note on the cut changed later',
    parts(
      { ...cutOnce, cuts: [7, cuts(0.2)] },
      [
        ['a', 3],
        ['b', 6, after],
      ],
      { cutsChangedAt: 5 },
    ),
  ],
  ['to-cut', 'decided, and nobody looked for cracks', parts({ ...decided, looked: [2, unseen] }, [['a', 3]])],
  [
    'to-look',
    'cut and measured again, and nobody looked for cracks',
    parts({ ...cutOnce, looked: [2, unseen] }, [
      ['a', 3],
      ['b', 6, after],
    ]),
  ],
  [
    'to-sign',
    'to be replaced, and nobody looked for cracks',
    parts({ ...begun, looked: [2, unseen], decision: [4, replace] }, [['a', 3]]),
  ],
  ['to-sign', 'to be replaced', parts({ ...begun, decision: [4, replace] }, [['a', 3]])],
  ['to-sign', 'cracked, to be replaced', parts({ ...begun, looked: [2, crack], decision: [4, replace] })],
  [
    'to-decide',
    'to be replaced, then measured again',
    parts({ ...begun, decision: [4, replace] }, [
      ['a', 3],
      ['b', 5],
    ]),
  ],
  [
    'signed',
    'signed',
    parts({ ...cutOnce, signature: [7, signature] }, [
      ['a', 3],
      ['b', 6, after],
    ]),
  ],
  [
    'to-sign',
    'amended after it was signed',
    parts({ ...cutOnce, signature: [7, signature], studs: [8, studs] }, [
      ['a', 3],
      ['b', 6, after],
    ]),
  ],
  [
    'to-cut',
    'cut once, then decided to be ringed, and the ring is not on',
    parts({ ...cutOnce, decision: [7, decision(6, { decision: 'face-and-ring' })] }, [
      ['a', 3],
      ['b', 6, after],
    ]),
  ],
];

test.each(ROWS)('%s: %s', (stage, _, job) => {
  expect(stageOf(job)).toBe(stage);
});

/** The job as pages and the guard of the signature see it. */
function seen(job: StageParts) {
  const outcome = decisionStands(job) ? job.sections.decision!.body.decision : null;
  return { steps: stepsOf(job), sections: job.sections, outcome, weldedAt: job.weldedAt };
}

test.each(ROWS)('nothing is missing exactly where it may be signed, or is: %s, %s', (stage, _, job) => {
  expect(missingOf(seen(job)).length === 0).toBe(stage === 'to-sign' || stage === 'signed');
});

test.each(ROWS)('a page shows no open step as done, and no done step as open: %s, %s', (_, __, job) => {
  const steps = stepsOf(job);
  for (const next of [null, ...STEP_NAMES]) {
    const shown = stepsShown(steps, next);
    for (const step of STEP_NAMES) {
      if (step === next) expect(shown[step]).toBe('next');
      else expect([step, shown[step] === 'done']).toEqual([step, steps[step] === 'done']);
      if (steps[step] === 'spared' && step !== next) expect(shown[step]).toBe('later');
    }
  }
});

test('a step that was passed over is shown as missing, one whose turn has not come as later', () => {
  const unlooked = parts({ ...begun, looked: [2, unseen] }, [['a', 3]]);
  expect(stepsShown(stepsOf(unlooked), 'decide')).toEqual({
    receive: 'done',
    look: 'missing',
    measure: 'partly',
    decide: 'next',
    cut: 'later',
    verify: 'later',
    studs: 'later',
    sign: 'later',
  });
  const lost = parts({ ...begun, looked: [2, crack] });
  expect(stepsShown(stepsOf(lost), 'decide')).toMatchObject({ look: 'done', measure: 'later' });
});

test('a decision stands while nothing it rested on is newer', () => {
  expect(decisionStands(parts(decided, [['a', 3]]))).toBe(true);
  expect(decisionStands(parts(begun, [['a', 3]]))).toBe(false);
  expect(decisionStands(parts({ ...cutOnce, looked: [6, looked()] }, [['a', 3]]))).toBe(false);
});

describe('the readings that stand', () => {
  test('are those not replaced and not withdrawn, down a chain of corrections', () => {
    const chain = [
      wall('a'),
      wall('b', { replaces: 'a' }),
      wall('c', { replaces: 'b' }),
      wall('d'),
      wall('e', { replaces: 'd', valueMm: null }),
      wall('f'),
    ];
    expect(currentReadings(chain).map((r) => r.id)).toEqual(['c', 'f']);
  });
});

describe('a step gets its tick only when what it is for is there', () => {
  const stepOf = (job: StageParts) => stepsOf(job);
  const round = (pass: 'before' | 'after', revision: number) =>
    [0, 45, 90, 135, 180, 225, 270, 315].map((angleDeg, i): [string, number, Partial<Reading>] => [
      `${pass}${i}`,
      revision,
      { pass, angleDeg, radiusMm: 110 },
    ]);
  const outer: [string, number, Partial<Reading>] = ['outer', 3, { angleDeg: 0, radiusMm: 128 }];

  test('the inspection, when every item has its result', () => {
    const items = LOOK_ITEMS.map((item) => ({ item, result: 'sound', final: false, note: '' }) as const);
    expect(stepOf(parts({ ...begun, looked: [2, looked({ items })] })).look).toBe('done');
    const [, ...but] = items;
    expect(stepOf(parts({ ...begun, looked: [2, looked({ items: but })] })).look).toBe('partly');
  });

  test('measuring, when a wall is known behind every stud and between them, and on a second row', () => {
    const all = [...round('before', 3), outer];
    expect(stepOf(parts(begun, all)).measure).toBe('done');
    expect(stepOf(parts(begun, all.slice(1))).measure).toBe('partly');
    expect(stepOf(parts(begun, round('before', 3))).measure).toBe('partly');
    expect(stepOf(parts(begun)).measure).toBe('open');
  });

  test('the cut, when the passes come to what was decided, or nothing dark is left', () => {
    const check = { ...decision(3).check, cut: { ...decision(3).check.cut!, dialledMm: 0.31 } };
    const cutBy = (depthMm: number, look: 'gone' | 'dark' | null = null) =>
      stepOf(
        parts({
          ...decided,
          decision: [4, { ...decision(3), check }],
          cuts: [5, { cuts: [{ depthMm, typed: '', note: '', look }] }],
        }),
      ).cut;
    expect([cutBy(0.2), cutBy(0.306), cutBy(0.308), cutBy(0.2, 'gone')]).toEqual([
      'partly',
      'partly',
      'done',
      'done',
    ]);
  });

  test('measuring again, when the stations behind the studs and the three thinnest have their wall', () => {
    const stations = round('after', 6).map(([, , { angleDeg, radiusMm }], i) => ({
      ...({} as CoverCheck['stations'][number]),
      angleDeg: angleDeg!,
      radiusMm: radiusMm!,
      wallAfterMm: 4.5 + i / 100,
    }));
    const kept = decision(3);
    const body = {
      ...kept,
      check: { ...kept.check, stations },
      criteria: { ...kept.criteria, faceRunoutLimitMm: null },
    };
    const job = (after: readonly [string, number, Partial<Reading>][], runoutMm: number | null = null) =>
      stepOf(
        parts(
          {
            ...cutOnce,
            decision: [4, { ...body, criteria: { ...body.criteria, faceRunoutLimitMm: runoutMm } }],
          },
          [['a', 3], ...after],
        ),
      ).verify;
    const all = round('after', 6);
    // Thinnest are the first three; behind the studs lie the first, third, fifth and seventh.
    const enough = all.filter((_, i) => [0, 1, 2, 4, 6].includes(i));
    expect(job(enough)).toBe('done');
    expect(job(enough.slice(1))).toBe('partly');
    expect(job(all, 0.05)).toBe('partly');
    const faces = all.map(([id, at, more]): (typeof all)[number] => [
      `f${id}`,
      at,
      { ...more, kind: 'face' },
    ]);
    expect(job([...all, ...faces], 0.05)).toBe('done');
  });
});
