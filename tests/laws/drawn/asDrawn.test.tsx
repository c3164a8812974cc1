import fc from 'fast-check';
import type { VNode } from 'preact';
import { expect, test } from 'vitest';
import type { StiffnessAnswer } from '../../../shared/words/bending/stiffness.ts';
import type { Stud } from '../../../shared/words/stud/stud.ts';
import { checkStud } from '../../../src/calc/stud/checkStud.ts';
import { BentSection } from '../../../views/drawings/bentSection.tsx';
import { ChecksOverTime } from '../../../views/drawings/checksOverTime.tsx';
import { CoverLettered } from '../../../views/drawings/coverLettered.tsx';
import { CoverSectionSmall, halfSectionOf } from '../../../views/drawings/coverSection.tsx';
import { FacePlan, PlanKey } from '../../../views/drawings/facePlan.tsx';
import { FlexplateSection } from '../../../views/drawings/flexplateSection.tsx';
import { GaugeBars } from '../../../views/drawings/gaugeBars.tsx';
import { NutAlone } from '../../../views/drawings/nutAlone.tsx';
import { PressureMap } from '../../../views/drawings/pressureMap.tsx';
import { PullForwardPicture } from '../../../views/drawings/pullForwardPicture.tsx';
import { ReadingsByPerson } from '../../../views/drawings/readingsByPerson.tsx';
import { SpreadShares } from '../../../views/drawings/spreadShares.tsx';
import { StackDrawn } from '../../../views/drawings/stackDrawn.tsx';
import { StudAlone } from '../../../views/drawings/studAlone.tsx';
import { StudInStack } from '../../../views/drawings/studInStack.tsx';
import {
  DRAWN_CALCULATIONS,
  SymbolsDrawn,
  symbolsOf,
} from '../../../views/drawings/symbols/symbolsDrawn.tsx';
import { TiltPlan } from '../../../views/drawings/tiltPlan.tsx';
import { TorqueWindow } from '../../../views/drawings/torqueWindowPicture.tsx';
import { TrackUnrolled } from '../../../views/drawings/trackUnrolled.tsx';
import { DaysDrawn } from '../../../views/drawings/trends/daysDrawn.tsx';
import { HistogramDrawn } from '../../../views/drawings/trends/histogramDrawn.tsx';
import { IntakeDrawn, IntakeKey } from '../../../views/drawings/trends/intakeDrawn.tsx';
import { IntervalsDrawn } from '../../../views/drawings/trends/intervalsDrawn.tsx';
import { RowBars } from '../../../views/drawings/trends/rowBars.tsx';
import { WallSection } from '../../../views/drawings/wallSection.tsx';
import { WallZones } from '../../../views/drawings/wallZones.tsx';
import { WasherAlone } from '../../../views/drawings/washerAlone.tsx';
import { renderPart } from '../../../views/render.ts';
import { EXAMPLE, layer, metric, NUT, STUD } from '../../calc/stud/example.ts';
import { anyBent } from './anyChartDrawn.ts';
import { anyCover, anyFace } from './anyCoverDrawn.ts';

/** Each drawing of a few things is, mark for mark, as written down: what changes there is to be looked at on a page. */
const few = <T,>(any: fc.Arbitrary<T>, howMany: number) =>
  fc.sample(any, { seed: 20_261_205, numRuns: howMany });
const FACES = few(anyFace, 6);
const COVERS = few(anyCover, 6);
const BENT = few(anyBent, 4);
const UNITS = ['mm', 'in'] as const;

const STUDS: readonly Stud[] = [
  STUD,
  { ...STUD, pilotDiameterMm: null, projectionMm: 20 },
  {
    ...STUD,
    thread: metric(12, 1.75, '6g'),
    threadStartMm: 6,
    threadEndMm: 34,
    projectionMm: 41,
    filletMm: 2,
  },
];
const STACKS = [
  EXAMPLE.stack,
  {
    ...EXAMPLE.stack,
    style: 'two-piece' as const,
    layers: [layer(2), layer(6, { name: 'casting', kind: 'casting', holeDiameterMm: null })],
  },
  {
    ...EXAMPLE.stack,
    layers: [layer(1, { name: 'shim', kind: 'shim' }), layer(3.2, { chamferMm: 1 }), layer(12)],
  },
];
const NUTS = [NUT, { ...NUT, washerMm: 2, countersinkMm: 0.6 }, { ...NUT, bearingOuterDiameterMm: null }];

const DRAWN: Readonly<Record<string, () => readonly VNode[]>> = {
  facePlan: () => [
    ...FACES.flatMap(({ cover, check, unit }, i) => {
      const states = ['measured', 'missing', 'next', 'measured', 'thinnest'] as const;
      const stations = check.stations.map(({ angleDeg, radiusMm, wallMm, wallAfterMm }, k) => ({
        angleDeg,
        radiusMm,
        wallMm,
        wallAfterMm,
        state: states[(k + i) % states.length]!,
      }));
      const marks = [{ angleDeg: 33, radiusMm: cover.trackInnerDiameterMm / 2 + 5, depthMm: 0.2 }];
      const asked = i % 2 === 0 ? null : { angleDeg: 45, radiusMm: cover.trackOuterDiameterMm / 2 };
      const props = {
        id: 'p',
        shape: cover,
        ...cover,
        stations,
        marks,
        thinnest: i % 3 === 0 ? null : 1,
        asked,
        unit,
      };
      return [<FacePlan {...props} forTouch={i % 2 === 1} asMeasured={i % 3 === 1} />];
    }),
    <PlanKey states={['next', 'measured', 'thinnest', 'missing']} />,
  ],
  trackUnrolled: () =>
    FACES.map(({ cover, check, unit }) => (
      <TrackUnrolled id="t" check={check} studCount={cover.studCount} unit={unit} />
    )),
  wallSection: () =>
    FACES.map(({ cover, check, unit }) => <WallSection id="w" shape={cover} check={check} unit={unit} />),
  wallZones: () =>
    FACES.slice(0, 4).map(({ check, unit }, i) => {
      const leastWall = { ...check.leastWall, sureFromMm: i === 1 ? null : 4.32 };
      const minimumWall = { mm: 4.3, source: 'the shop', from: 'shop' as const };
      const bounds =
        i === 2
          ? {
              padSideFlat: { dialledMm: 0.2, leastWallMm: 4.36 },
              faceFlat: { dialledMm: 0.3, leastWallMm: 4.2 },
            }
          : null;
      return <WallZones id="z" check={{ leastWall, minimumWall, bounds }} unit={unit} />;
    }),
  tiltPlan: () =>
    COVERS.map((cover, i) => {
      const shimsMm = [0.071, 0.1, 0.029, 0, 0.05, 0].slice(0, cover.studCount);
      const dialledIn = {
        wallGainedMm: 0.02,
        leastWallMm: 4.5,
        tiltMm: 0.1,
        tiltDirectionDeg: i === 1 ? null : 40 * i,
        shimsMm,
        dialledMm: 0.4,
      };
      return <TiltPlan id="t" shape={cover} dialledIn={dialledIn} unit={UNITS[i % 2]!} />;
    }),
  coverLettered: () =>
    COVERS.flatMap((cover, i) => {
      const { studCount: _studs, densityKgPerM3: _density, ...figures } = cover;
      const family = { ...cover, name: 'any' } as unknown as Parameters<
        typeof CoverSectionSmall
      >[0]['family'];
      return [
        <CoverLettered id="c" section={halfSectionOf(cover)} figures={figures} unit={UNITS[i % 2]!} />,
        <CoverSectionSmall id="s" family={family} />,
      ];
    }),
  studInStack: () =>
    STUDS.flatMap((stud, i) =>
      STACKS.map((stack, k) => {
        const nut = (i + k) % 4 === 3 ? null : NUTS[(i + k) % 3]!;
        const pullForwardMm = k === 1 ? null : 4;
        const threaded = nut && { ...nut, thread: i === 2 ? metric(12, 1.75, '6H') : nut.thread };
        const check = checkStud({ ...EXAMPLE, stud, stack, nut: threaded, pullForwardMm });
        const props = {
          id: 's',
          stud,
          stack,
          nut: threaded,
          pullForwardMm,
          padThicknessMm: 10,
          padDiameterMm: 34,
        };
        return <StudInStack {...props} check={check} unit={UNITS[(i + k) % 2]!} onPaper={k === 2} />;
      }),
    ),
  stackDrawn: () =>
    STACKS.flatMap(({ layers }, i) =>
      NUTS.map((nut, k) => (
        <StackDrawn
          id="d"
          usualHoleMm={10.3}
          layers={layers.map(({ name, kind, thicknessMm, holeDiameterMm }) => ({
            name,
            kind: kind ?? ('plate' as const),
            thicknessMm,
            holeDiameterMm,
          }))}
          whole={k !== 1}
          nut={k === 2 ? null : nut}
          gapMm={i === 1 ? null : 4}
          unit={UNITS[k % 2]!}
        />
      )),
    ),
  studAlone: () =>
    STUDS.map((stud, i) => {
      const { threadStartMm, threadEndMm, projectionMm, pilotDiameterMm, filletMm } = stud;
      const figures = { threadStartMm, threadEndMm, projectionMm, pilotDiameterMm, filletMm };
      const drawn = { ...figures, pilotDiameterMm: pilotDiameterMm ?? 7, majorMm: 9.5, minorMm: 8.3 };
      const thread = i === 1 ? null : stud.thread.designation;
      return <StudAlone id="a" drawn={drawn} figures={figures} thread={thread} unit={UNITS[i % 2]!} />;
    }),
  nutAlone: () =>
    NUTS.map((nut, i) => {
      const { heightMm, countersinkMm, bearingOuterDiameterMm } = nut;
      const figures = { heightMm: i === 1 ? null : heightMm, countersinkMm, bearingOuterDiameterMm };
      const drawn = { ...nut, bearingOuterDiameterMm: bearingOuterDiameterMm ?? 15, majorMm: 9.5 };
      const thread = i === 2 ? null : '3/8-24';
      return <NutAlone id="n" drawn={drawn} figures={figures} thread={thread} unit={UNITS[i % 2]!} />;
    }),
  washerAlone: () =>
    [
      [10.3, 20, 2],
      [13, 42, 0.5],
    ].map(([inner, outer, thick], i) => {
      const drawn = { innerDiameterMm: inner!, outerDiameterMm: outer!, thicknessMm: thick! };
      const figures = i === 1 ? { ...drawn, outerDiameterMm: null } : drawn;
      return <WasherAlone id="w" drawn={drawn} figures={figures} unit={UNITS[i % 2]!} />;
    }),
  pullForward: () =>
    [
      { bareGapMm: 4, shimMm: 0, stackMm: 3.2, hubEngagementMm: 14 },
      { bareGapMm: 6, shimMm: 2, stackMm: null, hubEngagementMm: null },
      { bareGapMm: 2, shimMm: 2.5, stackMm: 8, hubEngagementMm: 9 },
    ].map((props, i) => <PullForwardPicture id="g" {...props} unit={UNITS[i % 2]!} />),
  torqueWindow: () =>
    [
      { torqueNm: 37, enoughNm: 33, mostNm: 44, least: 12_000, lossN: 900, proofShare: 0.6 },
      { torqueNm: 20, enoughNm: 33, mostNm: null, least: null, lossN: null, proofShare: null },
      { torqueNm: 60, enoughNm: null, mostNm: 44, least: 15_000, lossN: 300, proofShare: 1.02 },
    ].map(({ least, ...rest }, i) => {
      const preloadN = { nominal: 19_400, least, most: 24_300 };
      return <TorqueWindow id="w" {...rest} preloadN={preloadN} neededN={11_000} unit={UNITS[i % 2]!} />;
    }),
  checksOverTime: () =>
    [0.005, null].map((limitMm, i) => (
      <ChecksOverTime
        checks={[
          { day: '2026-01-05', offMm: 0.001, off: false },
          { day: '2026-02-20', offMm: -0.003, off: false },
          { day: '2026-06-01', offMm: 0.007, off: i === 0 },
        ]}
        uncertaintyMm={i === 0 ? 0.002 : null}
        limitMm={limitMm}
        drift={
          i === 0
            ? [
                { day: '2026-01-05', offMm: 0.001 },
                { day: '2026-06-01', offMm: 0.006 },
              ]
            : []
        }
        unit={UNITS[i]!}
      />
    )),
  bentSection: () =>
    BENT.map(({ bend, ripple, curves: count, unit, ...cover }) => {
      const [center, rim] = [cover.bossDiameterMm / 2, cover.rimDiameterMm / 2];
      const radiiMm = Array.from({ length: 9 }, (_, i) => center + ((rim - center) * i) / 8);
      const curves = Array.from({ length: count }, (_, index) => {
        const behindStudMm = radiiMm.map((_, i) => bend * (1 + 0.1 * index) * (1 - i / 8) ** 1.5);
        const betweenStudsMm = behindStudMm.map(
          (w, i) => w - ripple * (1 + index) * (i / 8) * (1 - i / 8) * 4,
        );
        const section = { radiiMm, behindStudMm, betweenStudsMm } as StiffnessAnswer['section'];
        return { label: `curve ${index + 1}`, section };
      });
      return <BentSection id="b" curves={curves} {...cover} unit={unit} />;
    }),
  pressureMap: () =>
    BENT.map(
      ({ marks, studCount, peakAt, unit, bend: _bend, ripple: _ripple, curves: _curves, ...cover }) => {
        const [inner, outer] = [cover.trackInnerDiameterMm / 2, cover.trackOuterDiameterMm / 2];
        const radiiMm = Array.from({ length: 6 }, (_, i) => inner + ((outer - inner) * i) / 5);
        const anglesDeg = Array.from({ length: 9 }, (_, i) => (180 / studCount) * (i / 8));
        const pressureMPa = radiiMm.map((_, i) => anglesDeg.map((__, j) => 1 + 0.2 * i - 0.1 * j));
        const placed = marks.map(({ share, ...mark }) => ({
          ...mark,
          radiusMm: inner + share * (outer - inner),
        }));
        const map = { radiiMm, anglesDeg, pressureMPa };
        const props = { id: 'm', map, meanPressureMPa: 1.2, peakAt, studCount, marks: placed, unit };
        return <PressureMap {...props} {...cover} />;
      },
    ),
  flexplateSection: () =>
    (['one-piece', 'two-piece'] as const).map((style) => <FlexplateSection id="f" style={style} />),
  gaugeBars: () =>
    [
      {
        way: 'above' as const,
        sureMm: 0.012,
        room: { says: 'new wall to minimum', mm: 0.7 },
        calibration: 0.005,
      },
      { way: 'either' as const, sureMm: 0.03, room: null, calibration: null },
      { way: 'above' as const, sureMm: null, room: { says: 'runout allowed', mm: 0.05 }, calibration: null },
    ].map(({ calibration, ...one }, i) => {
      const parts = {
        calibration,
        resolution: i === 2 ? null : 0.0003,
        repeatability: i === 2 ? null : 0.004,
      };
      return <GaugeBars id="g" reading={{ ...one, confidence: 0.95, parts }} unit={UNITS[i % 2]!} />;
    }),
  readingsByPerson: () =>
    UNITS.map((unit) => (
      <ReadingsByPerson
        stations={[
          {
            label: 'station 1',
            byPerson: [
              [4.9, 4.91, 4.905],
              [4.92, 4.91],
              [4.89, 4.9],
            ],
          },
          { label: 'station 2', byPerson: [[4.7, 4.72], [4.71, 4.71], [4.73]] },
        ]}
        people={['AK', 'BL', 'TO']}
        unit={unit}
      />
    )),
  spreadShares: () => [
    <SpreadShares
      shares={[
        { name: 'repeatability', share: 0.034 },
        { name: 'people', share: 0.044 },
        { name: 'covers', share: 0.922 },
      ]}
    />,
    <SpreadShares
      shares={[
        { name: 'repeatability', share: 0 },
        { name: 'covers', share: 1 },
      ]}
    />,
  ],
  symbols: () =>
    [...new Set(DRAWN_CALCULATIONS.map((name) => symbolsOf(name)!))].map((drawing) => (
      <SymbolsDrawn drawing={drawing} />
    )),
  trends: () => [
    <DaysDrawn
      bins={[
        { from: 0, to: 1, n: 4 },
        { from: 1, to: 3, n: 11 },
        { from: 3, to: 7, n: 0 },
        { from: 7, to: 14, n: 2 },
      ]}
    />,
    <DaysDrawn bins={[]} />,
    ...UNITS.map((unit) => (
      <HistogramDrawn
        id="h"
        title="Walls"
        histogram={{
          widthMm: 0.1,
          bins: [4.2, 4.3, 4.4, 4.6].map((fromMm, i) => ({ fromMm, n: 3 * i + 1 })),
        }}
        unit={unit}
        {...(unit === 'mm' ? { minimumMm: 4.3, newMm: 5 } : {})}
      />
    )),
    <IntakeDrawn
      intake={['2026-09', '2026-10', '2026-11'].map((period, i) => ({
        period,
        outcomes: { face: 3 + i, 'face-and-ring': i, replace: 2, 'return-unworked': 0, open: i } as never,
      }))}
    />,
    <IntakeKey />,
    <IntervalsDrawn
      id="i"
      title="Comebacks"
      rows={[
        { label: 'faced', interval: { share: 0.04, low: 0.01, high: 0.09 } },
        { label: 'with a ring', interval: { share: 0, low: 0, high: 0.31 } },
      ]}
    />,
    <RowBars
      id="r"
      title="Causes"
      rows={[
        { label: 'slip', n: 9 },
        { label: 'cut too deep', n: 3 },
        { label: 'other', n: 0 },
      ]}
    />,
    <RowBars
      id="r"
      title="Causes"
      rows={[
        { label: 'slip', n: 9 },
        { label: 'other', n: 3 },
      ]}
      running
    />,
  ],
};

test.each(Object.entries(DRAWN))('%s is drawn as written down', async (name, draw) => {
  const marks = draw().map((one) => renderPart(one).replaceAll('><', '>\n<'));
  await expect(`${marks.join('\n\n')}\n`).toMatchFileSnapshot(`asDrawn/${name}.txt`);
});
