import type {
  Chucking,
  CoverCheckInput,
  CrackTest,
  Gauge,
  InspectionFailure,
  Verdict,
} from '../../shared/words/cover.ts';
import type { DecisionKind } from '../../shared/words/job.ts';
import { demoCriteria } from './criteria.ts';
import { demoFamilies } from './families.ts';

/** Invented covers for the demonstration shop. No figure here is any maker’s. */

export interface TypedReading {
  readonly typed: string;
  readonly mm: number;
}

export interface DemoStation {
  readonly angleDeg: number;
  readonly radiusMm: number;
  /** Repeats included. */
  readonly wall: readonly TypedReading[];
  readonly face: TypedReading | null;
  readonly mark: TypedReading | null;
}

export interface DemoMark {
  readonly angleDeg: number;
  readonly radiusMm: number;
  readonly depth: TypedReading;
}

export interface DemoGauge {
  readonly name: string;
  readonly gauge: Gauge;
}

export interface DemoCover {
  readonly id: string;
  readonly familyId: string;
  readonly about: string;
  readonly unit: 'mm' | 'in';
  /** Empty while nobody has measured it. */
  readonly stations: readonly DemoStation[];
  readonly marks: readonly DemoMark[];
  readonly gauge: DemoGauge | null;
  readonly crackTest: CrackTest;
  readonly chucking: Chucking | null;
  readonly plannedCut: TypedReading | null;
  readonly inspectionFailures: readonly InspectionFailure[];
  readonly doubtfulReadings: readonly string[];
  /** What the check must answer; null while there is nothing to check. */
  readonly expected: Verdict | null;
  /** What its builder decided, where that is not the verdict. */
  readonly decision: DecisionKind | null;
}

const mic: DemoGauge = {
  name: 'tube micrometer 0–25 mm, with indicator',
  gauge: {
    standardUncertaintyMm: 0.003,
    resolutionMm: 0.001,
    repeatabilityMm: 0.003,
    faceStandardUncertaintyMm: 0.003,
    cutSettingStandardUncertaintyMm: 0.006,
  },
};

const caliper: DemoGauge = {
  name: 'wall caliper, dial 0.01 mm',
  gauge: {
    standardUncertaintyMm: 0.006,
    resolutionMm: 0.01,
    repeatabilityMm: 0.015,
    faceStandardUncertaintyMm: 0.003,
    cutSettingStandardUncertaintyMm: 0.006,
  },
};

/** `4.921` or `0.1937 in`. */
function typed(text: string): TypedReading {
  const inch = text.endsWith(' in');
  const value = Number(text.replace(' in', ''));
  return { typed: text, mm: inch ? value * 25.4 : value };
}

function mark(angleDeg: number, radiusMm: number, depth: string): DemoMark {
  return { angleDeg, radiusMm, depth: typed(depth) };
}

/** `angle radius | wall; wall | face height | mark depth`; the last two may be empty. */
function station(row: string): DemoStation {
  const [place, walls, face, depth] = row.split('|').map((part) => part.trim());
  const [angleDeg, radiusMm] = place!.split(' ').map(Number);
  return {
    angleDeg: angleDeg!,
    radiusMm: radiusMm!,
    wall: walls!.split(';').map((text) => typed(text.trim())),
    face: face ? typed(face) : null,
    mark: depth ? typed(depth) : null,
  };
}

type Told = Pick<DemoCover, 'id' | 'familyId' | 'about' | 'gauge' | 'crackTest' | 'chucking' | 'expected'> &
  Partial<DemoCover> & { readonly rows: readonly string[] };

function cover({ rows, ...told }: Told): DemoCover {
  return {
    unit: 'mm',
    marks: [],
    plannedCut: null,
    inspectionFailures: [],
    doubtfulReadings: [],
    decision: null,
    ...told,
    stations: rows.map(station),
  };
}

/** What the check is asked of a demonstration cover, with its family’s figures and the shop’s. */
export function demoInput(cover: DemoCover): CoverCheckInput {
  const { family } = demoFamilies.find(({ id }) => id === cover.familyId)!;
  return {
    cover: {
      studCount: family.studCount,
      studCircleDiameterMm: family.studCircleDiameterMm,
      trackInnerDiameterMm: family.trackInnerDiameterMm,
      trackOuterDiameterMm: family.trackOuterDiameterMm,
      nominalWallMm: family.nominalWallMm,
      densityKgPerM3: null,
    },
    stations: cover.stations.map(({ angleDeg, radiusMm, wall, face, mark }) => ({
      angleDeg,
      radiusMm,
      wallMm: wall.map(({ mm }) => mm),
      faceMm: face?.mm ?? null,
      markDepthMm: mark?.mm ?? null,
    })),
    marks: cover.marks.map(({ angleDeg, radiusMm, depth }) => ({ angleDeg, radiusMm, depthMm: depth.mm })),
    gauge: cover.gauge?.gauge ?? null,
    criteria: {
      minimumWallMm: family.shopMinimumWallMm ?? demoCriteria.minimumWallMm,
      minimumWallSource: family.shopMinimumWallSource,
      faceRunoutLimitMm: demoCriteria.faceRunoutLimitMm,
      cleanUpAllowanceMm: demoCriteria.cleanUpAllowanceMm,
      confidence: demoCriteria.confidence,
      typicalCutMm: demoCriteria.typicalCutMm,
    },
    makerMinimumWallMm: family.makerMinimumWallMm,
    makerMinimumWallSource: family.makerMinimumWallSource,
    chucking: cover.chucking,
    plannedCutMm: cover.plannedCut?.mm ?? null,
    crackTest: cover.crackTest,
    releaseClearanceMm: null,
    inspectionFailures: cover.inspectionFailures,
    doubtfulReadings: cover.doubtfulReadings,
  };
}

export const demoCovers: readonly DemoCover[] = [
  cover({
    id: 'kestrel-bright',
    familyId: 'kestrel-4',
    about: 'Light marks behind the studs, wall to spare: it faces and goes back.',

    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',

    expected: 'face',
    rows: [
      '0 110 | 4.968; 4.968 | 0.060 | 0.17',
      '45 110 | 4.971; 4.968 | 0.050 | ',
      '90 110 | 4.948; 4.944 | 0.030 | 0.18',
      '135 110 | 4.906; 4.905 | -0.025 | ',
      '180 110 | 4.885; 4.882 | -0.050 | 0.19',
      '225 110 | 4.893; 4.888 | -0.045 | ',
      '270 110 | 4.904; 4.899 | -0.010 | 0.20',
      '315 110 | 4.933; 4.942 | 0.035 | ',
      '0 128 | 4.981; 4.987 | 0.060 | 0.05',
      '90 128 | 4.936; 4.939 | 0.020 | 0.06',
      '180 128 | 4.882; 4.876 | -0.055 | 0.07',
      '270 128 | 4.923; 4.922 | -0.020 | 0.08',
    ],
  }),
  cover({
    id: 'kestrel-spent',
    familyId: 'kestrel-4',
    about: 'Faced before, and deep in colour: cleaned, its wall is below the shop’s minimum.',

    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',

    expected: 'replace',
    rows: [
      '0 110 | 4.512; 4.513 | -0.025 | 0.30',
      '45 110 | 4.527; 4.525 | 0.000 | 0.09',
      '90 110 | 4.575; 4.574 | 0.030 | 0.29',
      '135 110 | 4.617; 4.615 | 0.050 | 0.09',
      '180 110 | 4.609; 4.600 | 0.050 | 0.31',
      '225 110 | 4.587; 4.589 | 0.025 | 0.09',
      '270 110 | 4.542; 4.537 | -0.010 | 0.32',
      '315 110 | 4.513; 4.505 | -0.025 | 0.08',
      '0 128 | 4.496; 4.498 | -0.045 | 0.11',
      '90 128 | 4.581; 4.578 | 0.030 | 0.09',
      '180 128 | 4.609; 4.624 | 0.050 | 0.11',
      '270 128 | 4.540; 4.540 | -0.025 | 0.10',
    ],
  }),
  cover({
    id: 'kestrel-cracked',
    familyId: 'kestrel-4',
    about: 'Wall enough, but the dye found a crack at a stud’s weld. No number overrules it.',

    gauge: mic,
    crackTest: 'found',
    chucking: 'pads-and-pilot-trued',

    expected: 'replace',
    rows: [
      '0 110 | 4.906 | 0.005 | 0.23',
      '45 110 | 4.920 | 0.030 | ',
      '90 110 | 4.911 | 0.035 | 0.23',
      '135 110 | 4.910 | 0.020 | ',
      '180 110 | 4.884 | -0.005 | 0.20',
      '225 110 | 4.879 | -0.025 | ',
      '270 110 | 4.880 | -0.030 | 0.21',
      '315 110 | 4.887 | -0.015 | ',
      '0 128 | 4.913 | 0.010 | 0.10',
      '90 128 | 4.924 | 0.045 | 0.09',
      '180 128 | 4.900 | 0.000 | 0.09',
      '270 128 | 4.872 | -0.040 | 0.07',
    ],
  }),
  cover({
    id: 'kestrel-keen',
    familyId: 'kestrel-4',
    about: 'A cut planned far deeper than it needs.',

    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    plannedCut: typed('0.65'),

    expected: 'plan-again',
    rows: [
      '0 110 | 4.851; 4.851 | -0.040 | 0.15',
      '45 110 | 4.846; 4.842 | -0.030 | ',
      '90 110 | 4.868; 4.866 | -0.005 | 0.16',
      '135 110 | 4.887; 4.889 | 0.025 | ',
      '180 110 | 4.912; 4.909 | 0.040 | 0.16',
      '225 110 | 4.911; 4.905 | 0.040 | ',
      '270 110 | 4.888; 4.887 | 0.010 | 0.14',
      '315 110 | 4.874; 4.877 | -0.020 | ',
      '0 128 | 4.829; 4.833 | -0.040 | 0.07',
      '90 128 | 4.866; 4.863 | -0.015 | 0.07',
      '180 128 | 4.919; 4.917 | 0.045 | 0.06',
      '270 128 | 4.890; 4.893 | 0.010 | 0.06',
    ],
  }),
  cover({
    id: 'rowan-thin',
    familyId: 'rowan-4',
    about:
      'The wall passes, but thinly, on a cover that marks soon: its builder faces it and welds a ring to it.',

    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',

    marks: [mark(24, 111, '0.21')],

    decision: 'face-and-ring',
    expected: 'face',
    rows: [
      '0 104 | 4.519; 4.517 | 0.015 | 0.25',
      '45 104 | 4.532; 4.529 | 0.030 | 0.06',
      '90 104 | 4.540; 4.538 | 0.040 | 0.24',
      '135 104 | 4.533; 4.534 | 0.035 | 0.08',
      '180 104 | 4.524; 4.527 | 0.010 | 0.25',
      '225 104 | 4.515; 4.517 | -0.005 | 0.07',
      '270 104 | 4.500; 4.499 | -0.015 | 0.24',
      '315 104 | 4.506; 4.512 | -0.005 | 0.06',
      '0 118 | 4.511; 4.510 | 0.000 | 0.16',
      '90 118 | 4.533; 4.531 | 0.030 | 0.16',
      '180 118 | 4.527; 4.525 | 0.000 | 0.14',
      '270 118 | 4.499; 4.495 | -0.030 | 0.15',
    ],
  }),
  cover({
    id: 'rowan-shy',
    familyId: 'rowan-4',
    about: 'A cut planned too shallow to take the marks away.',

    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    plannedCut: typed('0.20'),

    expected: 'plan-again',
    rows: [
      '0 104 | 4.615 | 0.035 | 0.25',
      '45 104 | 4.602 | 0.005 | 0.04',
      '90 104 | 4.571 | -0.020 | 0.26',
      '135 104 | 4.573 | -0.025 | 0.04',
      '180 104 | 4.594 | -0.015 | 0.26',
      '225 104 | 4.605 | 0.010 | 0.07',
      '270 104 | 4.629 | 0.030 | 0.26',
      '315 104 | 4.618 | 0.035 | 0.06',
      '0 118 | 4.628 | 0.020 | 0.14',
      '90 118 | 4.580 | -0.030 | 0.17',
      '180 118 | 4.576 | -0.025 | 0.17',
      '270 118 | 4.630 | 0.030 | 0.17',
    ],
  }),
  cover({
    id: 'rowan-waiting',
    familyId: 'rowan-4',
    about: 'Received and tagged; nobody has measured it yet.',

    gauge: null,
    crackTest: 'not-done',
    chucking: null,

    expected: null,
    rows: [],
  }),
  cover({
    id: 'heron-one-ring',
    familyId: 'heron-6',
    about: 'Measured on one ring, and two places of that left out.',

    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',

    expected: 'measure-again',
    rows: [
      '0 112 | 5.953 | 0.020 | 0.09',
      '30 112 | 5.964 | 0.020 | ',
      '60 112 | 5.974 | 0.025 | 0.10',
      '120 112 | 5.949 | 0.005 | 0.09',
      '150 112 | 5.936 | 0.000 | ',
      '180 112 | 5.925 | -0.015 | 0.11',
      '210 112 | 5.914 | -0.020 | ',
      '270 112 | 5.925 | -0.010 | ',
      '300 112 | 5.940 | -0.005 | 0.08',
      '330 112 | 5.952 | 0.015 | ',
    ],
  }),
  cover({
    id: 'heron-untested',
    familyId: 'heron-6',
    about: 'All in order but the crack test, which nobody has done.',

    gauge: mic,
    crackTest: 'not-done',
    chucking: 'pads-and-pilot-trued',

    expected: 'face-if-sound',
    rows: [
      '0 112 | 5.896; 5.900 | -0.005 | 0.12',
      '30 112 | 5.889; 5.890 | -0.025 | ',
      '60 112 | 5.869; 5.868 | -0.030 | 0.14',
      '90 112 | 5.869; 5.872 | -0.035 | ',
      '120 112 | 5.866; 5.866 | -0.025 | 0.13',
      '150 112 | 5.889; 5.884 | -0.020 | ',
      '180 112 | 5.903; 5.900 | 0.010 | 0.11',
      '210 112 | 5.907; 5.912 | 0.030 | ',
      '240 112 | 5.929; 5.926 | 0.035 | 0.12',
      '270 112 | 5.939; 5.936 | 0.040 | ',
      '300 112 | 5.935; 5.932 | 0.025 | 0.12',
      '330 112 | 5.911; 5.911 | 0.015 | ',
      '0 130 | 5.903; 5.894 | -0.010 | 0.06',
      '60 130 | 5.859; 5.864 | -0.035 | 0.06',
      '120 130 | 5.869; 5.870 | -0.030 | 0.07',
      '180 130 | 5.903; 5.907 | 0.000 | 0.07',
      '240 130 | 5.944; 5.945 | 0.040 | 0.07',
      '300 130 | 5.930; 5.924 | 0.035 | 0.07',
    ],
  }),
  cover({
    id: 'heron-doubted',
    familyId: 'heron-6',
    about: 'One wall looks like a slipped digit and was never confirmed.',

    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',

    doubtfulReadings: ['wall at station 5 (behind stud 3)'],

    expected: 'measure-again',
    rows: [
      '0 112 | 5.888 | -0.025 | 0.11',
      '30 112 | 5.895 | -0.025 | ',
      '60 112 | 5.899 | -0.015 | 0.10',
      '90 112 | 5.911 | -0.005 | ',
      '120 112 | 5.392 | 0.000 | 0.10',
      '150 112 | 5.929 | 0.020 | ',
      '180 112 | 5.937 | 0.025 | 0.10',
      '210 112 | 5.956 | 0.025 | ',
      '240 112 | 5.939 | 0.020 | 0.12',
      '270 112 | 5.929 | 0.010 | ',
      '300 112 | 5.921 | -0.015 | 0.11',
      '330 112 | 5.910 | -0.020 | ',
      '0 130 | 5.906 | -0.030 | 0.08',
      '60 130 | 5.898 | -0.025 | 0.07',
      '120 130 | 5.926 | 0.005 | 0.07',
      '180 130 | 5.950 | 0.030 | 0.06',
      '240 130 | 5.936 | 0.025 | 0.07',
      '300 130 | 5.917 | -0.020 | 0.08',
    ],
  }),
  cover({
    id: 'alder-unlimited',
    familyId: 'alder-3',
    about: 'No one has set a minimum for this family: advice only.',

    gauge: caliper,
    crackTest: 'none-found',
    chucking: 'side-wall-jaws',

    expected: 'advice-only',
    rows: [
      '0 103 | 4.425 | 0.035 | 0.22',
      '60 103 | 4.428 | 0.020 | ',
      '120 103 | 4.395 | -0.005 | 0.21',
      '180 103 | 4.390 | -0.015 | ',
      '240 103 | 4.397 | -0.015 | 0.22',
      '300 103 | 4.416 | 0.015 | ',
      '0 116 | 4.448 | 0.030 | 0.10',
      '120 116 | 4.405 | -0.005 | 0.12',
      '240 116 | 4.390 | -0.025 | 0.13',
    ],
  }),
  cover({
    id: 'curlew-close',
    familyId: 'curlew-6',
    about: 'Above the minimum by a hair, with a caliper: more readings would settle it.',

    gauge: caliper,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',

    expected: 'measure-again',
    rows: [
      '0 113 | 4.606; 4.606 | 0.000 | 0.17',
      '30 113 | 4.611; 4.601 | 0.015 | 0.04',
      '60 113 | 4.612; 4.621 | 0.020 | 0.15',
      '90 113 | 4.649; 4.641 | 0.025 | 0.04',
      '120 113 | 4.634; 4.630 | 0.025 | 0.17',
      '150 113 | 4.666; 4.635 | 0.015 | 0.02',
      '180 113 | 4.625; 4.647 | 0.010 | 0.15',
      '210 113 | 4.635; 4.644 | 0.000 | 0.02',
      '240 113 | 4.597; 4.610 | -0.010 | 0.16',
      '270 113 | 4.636; 4.616 | -0.015 | 0.05',
      '300 113 | 4.601; 4.598 | -0.015 | 0.17',
      '330 113 | 4.615; 4.596 | -0.005 | 0.03',
      '0 131 | 4.615; 4.622 | -0.005 | 0.09',
      '60 131 | 4.634; 4.631 | 0.020 | 0.11',
      '120 131 | 4.637; 4.650 | 0.030 | 0.08',
      '180 131 | 4.629; 4.636 | 0.005 | 0.09',
      '240 131 | 4.605; 4.596 | -0.020 | 0.10',
      '300 131 | 4.610; 4.584 | -0.025 | 0.08',
    ],
  }),
  cover({
    id: 'wren-leaning',
    familyId: 'wren-3',
    about: 'Too thin as chucked; dialled in, it passes. Read in inches.',
    unit: 'in',
    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',

    expected: 'plan-again',
    rows: [
      '0 103 | 0.1721 in | 0.0005 in | 0.002 in',
      '60 103 | 0.1746 in | 0.0000 in | ',
      '120 103 | 0.1769 in | 0.0000 in | 0.009 in',
      '180 103 | 0.1757 in | -0.0005 in | ',
      '240 103 | 0.1731 in | 0.0000 in | 0.002 in',
      '300 103 | 0.1710 in | 0.0005 in | ',
      '0 115 | 0.1724 in | 0.0005 in | 0.002 in',
      '120 115 | 0.1765 in | -0.0005 in | 0.006 in',
      '240 115 | 0.1733 in | 0.0000 in | 0.002 in',
    ],
  }),
  cover({
    id: 'linden-unread',
    familyId: 'linden-4',
    about: 'No indicator to hand: both ways the face may lie leave enough.',

    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',

    expected: 'face',
    rows: [
      '0 107 | 5.464; 5.461 | | 0.16',
      '45 107 | 5.469; 5.469 | | ',
      '90 107 | 5.475; 5.475 | | 0.16',
      '135 107 | 5.469; 5.475 | | ',
      '180 107 | 5.442; 5.442 | | 0.15',
      '225 107 | 5.426; 5.428 | | ',
      '270 107 | 5.432; 5.429 | | 0.15',
      '315 107 | 5.425; 5.424 | | ',
      '0 124 | 5.453; 5.451 | | 0.08',
      '90 124 | 5.477; 5.481 | | 0.09',
      '180 124 | 5.444; 5.443 | | 0.10',
      '270 124 | 5.429; 5.430 | | 0.07',
    ],
  }),
  cover({
    id: 'linden-one-way',
    familyId: 'linden-4',
    about: 'No indicator to hand, and only one of the two ways leaves enough.',

    gauge: mic,
    crackTest: 'none-found',
    chucking: null,

    expected: 'measure-again',
    rows: [
      '0 107 | 5.152 | | 0.18',
      '45 107 | 5.223 | | ',
      '90 107 | 5.219 | | 0.19',
      '135 107 | 5.188 | | ',
      '180 107 | 5.117 | | 0.18',
      '225 107 | 5.051 | | ',
      '270 107 | 5.031 | | 0.17',
      '315 107 | 5.076 | | ',
      '0 124 | 5.132 | | 0.11',
      '90 124 | 5.245 | | 0.12',
      '180 124 | 5.118 | | 0.09',
      '270 124 | 5.016 | | 0.10',
    ],
  }),
  cover({
    id: 'curlew-stripped',
    familyId: 'curlew-6',
    about: 'Two stud threads stripped to the root: the shop says nothing mends that.',

    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',

    inspectionFailures: [{ item: 'stud threads', final: true }],

    expected: 'replace',
    rows: [
      '0 113 | 4.606; 4.606 | 0.000 | 0.17',
      '30 113 | 4.611; 4.601 | 0.015 | 0.04',
      '60 113 | 4.612; 4.621 | 0.020 | 0.15',
      '90 113 | 4.649; 4.641 | 0.025 | 0.04',
      '120 113 | 4.634; 4.630 | 0.025 | 0.17',
      '150 113 | 4.666; 4.635 | 0.015 | 0.02',
      '180 113 | 4.625; 4.647 | 0.010 | 0.15',
      '210 113 | 4.635; 4.644 | 0.000 | 0.02',
      '240 113 | 4.597; 4.610 | -0.010 | 0.16',
      '270 113 | 4.636; 4.616 | -0.015 | 0.05',
      '300 113 | 4.601; 4.598 | -0.015 | 0.17',
      '330 113 | 4.615; 4.596 | -0.005 | 0.03',
      '0 131 | 4.615; 4.622 | -0.005 | 0.09',
      '60 131 | 4.634; 4.631 | 0.020 | 0.11',
      '120 131 | 4.637; 4.650 | 0.030 | 0.08',
      '180 131 | 4.629; 4.636 | 0.005 | 0.09',
      '240 131 | 4.605; 4.596 | -0.020 | 0.10',
      '300 131 | 4.610; 4.584 | -0.025 | 0.08',
    ],
  }),
  cover({
    id: 'sandpiper-faced',
    familyId: 'sandpiper-3',
    about: 'Faced before. The wall passes, but it would bend past the shop’s limit: with a ring it keeps it.',

    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',

    marks: [mark(14, 112, '0.17')],

    expected: 'face',
    rows: [
      '0 104 | 3.771; 3.769 | 0.010 | 0.17',
      '60 104 | 3.776; 3.774 | 0.020 | 0.03',
      '120 104 | 3.772; 3.773 | 0.015 | 0.19',
      '180 104 | 3.760; 3.763 | 0.000 | 0.02',
      '240 104 | 3.752; 3.751 | -0.010 | 0.18',
      '300 104 | 3.758; 3.761 | -0.005 | 0.03',
      '0 118 | 3.769; 3.766 | 0.010 | 0.20',
      '120 118 | 3.774; 3.776 | 0.015 | 0.21',
      '240 118 | 3.748; 3.751 | -0.015 | 0.20',
    ],
  }),
];
