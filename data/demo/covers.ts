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
import { inches } from './inches.ts';

/** Invented covers for the demo shop. No figure here is any maker’s. */

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
  name: 'tube micrometer 0–1 in, with indicator',
  gauge: {
    standardUncertaintyMm: inches(0.0001),
    resolutionMm: inches(0.0001),
    repeatabilityMm: inches(0.0001),
    faceStandardUncertaintyMm: inches(0.0001),
    cutSettingStandardUncertaintyMm: inches(0.00025),
  },
};

const caliper: DemoGauge = {
  name: 'wall caliper, dial 0.0005 in',
  gauge: {
    standardUncertaintyMm: inches(0.00025),
    resolutionMm: inches(0.0005),
    repeatabilityMm: inches(0.0006),
    faceStandardUncertaintyMm: inches(0.0001),
    cutSettingStandardUncertaintyMm: inches(0.00025),
  },
};

/** `0.1937`: read in inches, as everything in this shop. */
function typed(text: string): TypedReading {
  return { typed: `${text} in`, mm: inches(Number(text)) };
}

function mark(angleDeg: number, radiusIn: number, depth: string): DemoMark {
  return { angleDeg, radiusMm: inches(radiusIn), depth: typed(depth) };
}

/** `angle radius | wall; wall | indicator reading | heat mark depth`, in inches; the last two may be empty. */
function station(row: string): DemoStation {
  const [place, walls, face, depth] = row.split('|').map((part) => part.trim());
  const [angleDeg, radiusIn] = place!.split(' ').map(Number);
  return {
    angleDeg: angleDeg!,
    radiusMm: inches(radiusIn!),
    wall: walls!.split(';').map((text) => typed(text.trim())),
    face: face ? typed(face) : null,
    mark: depth ? typed(depth) : null,
  };
}

type Told = Pick<DemoCover, 'id' | 'familyId' | 'about' | 'gauge' | 'crackTest' | 'chucking' | 'expected'> &
  Partial<DemoCover> & { readonly rows: readonly string[] };

function cover({ rows, ...told }: Told): DemoCover {
  return {
    marks: [],
    plannedCut: null,
    inspectionFailures: [],
    doubtfulReadings: [],
    decision: null,
    ...told,
    stations: rows.map(station),
  };
}

/** What the check is asked of a demo cover, with the figures of its cover type and of the shop. */
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
    id: '1125-4-plain-bright',
    familyId: '1125-4-plain',
    about: 'Light heat marks behind the studs, wall to spare: it can be faced and used again.',
    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    expected: 'face',
    rows: [
      '0 4.375 | 0.1956; 0.1956 | 0.0025 | 0.0065',
      '45 4.375 | 0.1957; 0.1956 | 0.0020 | ',
      '90 4.375 | 0.1948; 0.1946 | 0.0010 | 0.007',
      '135 4.375 | 0.1931; 0.1931 | -0.0010 | ',
      '180 4.375 | 0.1923; 0.1922 | -0.0020 | 0.0075',
      '225 4.375 | 0.1926; 0.1924 | -0.0020 | ',
      '270 4.375 | 0.1931; 0.1929 | -0.0005 | 0.008',
      '315 4.375 | 0.1942; 0.1946 | 0.0015 | ',
      '0 5 | 0.1961; 0.1963 | 0.0025 | 0.002',
      '90 5 | 0.1943; 0.1944 | 0.0010 | 0.0025',
      '180 5 | 0.1922; 0.1920 | -0.0020 | 0.003',
      '270 5 | 0.1938; 0.1938 | -0.0010 | 0.003',
    ],
  }),
  cover({
    id: '1125-4-plain-spent',
    familyId: '1125-4-plain',
    about: 'Faced before, with deep heat marks: cleaned up, its wall is below the shop’s minimum.',
    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    expected: 'replace',
    rows: [
      '0 4.375 | 0.1776; 0.1777 | -0.0010 | 0.012',
      '45 4.375 | 0.1782; 0.1781 | 0.0000 | 0.0035',
      '90 4.375 | 0.1801; 0.1801 | 0.0010 | 0.0115',
      '135 4.375 | 0.1818; 0.1817 | 0.0020 | 0.0035',
      '180 4.375 | 0.1815; 0.1811 | 0.0020 | 0.012',
      '225 4.375 | 0.1806; 0.1807 | 0.0010 | 0.0035',
      '270 4.375 | 0.1788; 0.1786 | -0.0005 | 0.0125',
      '315 4.375 | 0.1777; 0.1774 | -0.0010 | 0.003',
      '0 5 | 0.1770; 0.1771 | -0.0020 | 0.0045',
      '90 5 | 0.1804; 0.1802 | 0.0010 | 0.0035',
      '180 5 | 0.1815; 0.1820 | 0.0020 | 0.0045',
      '270 5 | 0.1787; 0.1787 | -0.0010 | 0.004',
    ],
  }),
  cover({
    id: '1125-4-plain-cracked',
    familyId: '1125-4-plain',
    about: 'Enough wall, but the dye showed a crack at a stud weld. No figure overrules a crack.',
    gauge: mic,
    crackTest: 'found',
    chucking: 'pads-and-pilot-trued',
    expected: 'replace',
    rows: [
      '0 4.375 | 0.1931 | 0.0000 | 0.009',
      '45 4.375 | 0.1937 | 0.0010 | ',
      '90 4.375 | 0.1933 | 0.0015 | 0.009',
      '135 4.375 | 0.1933 | 0.0010 | ',
      '180 4.375 | 0.1923 | 0.0000 | 0.008',
      '225 4.375 | 0.1921 | -0.0010 | ',
      '270 4.375 | 0.1921 | -0.0010 | 0.0085',
      '315 4.375 | 0.1924 | -0.0005 | ',
      '0 5 | 0.1934 | 0.0005 | 0.004',
      '90 5 | 0.1939 | 0.0020 | 0.0035',
      '180 5 | 0.1929 | 0.0000 | 0.0035',
      '270 5 | 0.1918 | -0.0015 | 0.003',
    ],
  }),
  cover({
    id: '1125-4-plain-keen',
    familyId: '1125-4-plain',
    about: 'The planned cut is far deeper than it needs.',
    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    plannedCut: typed('0.026'),
    expected: 'plan-again',
    rows: [
      '0 4.375 | 0.1910; 0.1910 | -0.0015 | 0.006',
      '45 4.375 | 0.1908; 0.1906 | -0.0010 | ',
      '90 4.375 | 0.1917; 0.1916 | 0.0000 | 0.0065',
      '135 4.375 | 0.1924; 0.1925 | 0.0010 | ',
      '180 4.375 | 0.1934; 0.1933 | 0.0015 | 0.0065',
      '225 4.375 | 0.1933; 0.1931 | 0.0015 | ',
      '270 4.375 | 0.1924; 0.1924 | 0.0005 | 0.0055',
      '315 4.375 | 0.1919; 0.1920 | -0.0010 | ',
      '0 5 | 0.1901; 0.1903 | -0.0015 | 0.003',
      '90 5 | 0.1916; 0.1915 | -0.0005 | 0.003',
      '180 5 | 0.1937; 0.1936 | 0.0020 | 0.0025',
      '270 5 | 0.1925; 0.1926 | 0.0005 | 0.0025',
    ],
  }),
  cover({
    id: '1050-4-ribbed-thin',
    familyId: '1050-4-ribbed',
    about:
      'Little wall to spare on a cover that marks early: its builder faces it and welds on a stiffening ring.',
    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    marks: [mark(24, 4.375, '0.008')],
    decision: 'face-and-ring',
    expected: 'face',
    rows: [
      '0 4.125 | 0.1779; 0.1778 | 0.0005 | 0.010',
      '45 4.125 | 0.1784; 0.1783 | 0.0010 | 0.0025',
      '90 4.125 | 0.1787; 0.1787 | 0.0015 | 0.0095',
      '135 4.125 | 0.1785; 0.1785 | 0.0015 | 0.003',
      '180 4.125 | 0.1781; 0.1782 | 0.0005 | 0.010',
      '225 4.125 | 0.1778; 0.1778 | 0.0000 | 0.003',
      '270 4.125 | 0.1772; 0.1771 | -0.0005 | 0.0095',
      '315 4.125 | 0.1774; 0.1776 | 0.0000 | 0.0025',
      '0 4.6875 | 0.1776; 0.1776 | 0.0000 | 0.0065',
      '90 4.6875 | 0.1785; 0.1784 | 0.0010 | 0.0065',
      '180 4.6875 | 0.1782; 0.1781 | 0.0000 | 0.0055',
      '270 4.6875 | 0.1771; 0.1770 | -0.0010 | 0.006',
    ],
  }),
  cover({
    id: '1050-4-ribbed-shy',
    familyId: '1050-4-ribbed',
    about: 'The planned cut is too shallow to remove the heat marks.',
    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    plannedCut: typed('0.008'),
    expected: 'plan-again',
    rows: [
      '0 4.125 | 0.1817 | 0.0015 | 0.010',
      '45 4.125 | 0.1812 | 0.0000 | 0.0015',
      '90 4.125 | 0.1800 | -0.0010 | 0.010',
      '135 4.125 | 0.1800 | -0.0010 | 0.0015',
      '180 4.125 | 0.1809 | -0.0005 | 0.010',
      '225 4.125 | 0.1813 | 0.0005 | 0.003',
      '270 4.125 | 0.1822 | 0.0010 | 0.010',
      '315 4.125 | 0.1818 | 0.0015 | 0.0025',
      '0 4.6875 | 0.1822 | 0.0010 | 0.0055',
      '90 4.6875 | 0.1803 | -0.0010 | 0.0065',
      '180 4.6875 | 0.1802 | -0.0010 | 0.0065',
      '270 4.6875 | 0.1823 | 0.0010 | 0.0065',
    ],
  }),
  cover({
    id: '1050-4-ribbed-waiting',
    familyId: '1050-4-ribbed',
    about: 'Received and tagged; not measured yet.',
    gauge: null,
    crackTest: 'not-done',
    chucking: null,
    expected: null,
    rows: [],
  }),
  cover({
    id: '1150-6-billet-one-ring',
    familyId: '1150-6-billet',
    about: 'Measured on one row of stations, and two of those are missing.',
    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    expected: 'measure-again',
    rows: [
      '0 4.4375 | 0.2344 | 0.0010 | 0.0035',
      '30 4.4375 | 0.2348 | 0.0010 | ',
      '60 4.4375 | 0.2352 | 0.0010 | 0.004',
      '120 4.4375 | 0.2342 | 0.0000 | 0.0035',
      '150 4.4375 | 0.2337 | 0.0000 | ',
      '180 4.4375 | 0.2333 | -0.0005 | 0.0045',
      '210 4.4375 | 0.2328 | -0.0010 | ',
      '270 4.4375 | 0.2333 | -0.0005 | ',
      '300 4.4375 | 0.2339 | 0.0000 | 0.003',
      '330 4.4375 | 0.2343 | 0.0005 | ',
    ],
  }),
  cover({
    id: '1150-6-billet-untested',
    familyId: '1150-6-billet',
    about: 'Everything is in order but the crack test, which has not been done.',
    gauge: mic,
    crackTest: 'not-done',
    chucking: 'pads-and-pilot-trued',
    expected: 'face-if-sound',
    rows: [
      '0 4.4375 | 0.2321; 0.2323 | 0.0000 | 0.0045',
      '30 4.4375 | 0.2319; 0.2319 | -0.0010 | ',
      '60 4.4375 | 0.2311; 0.2310 | -0.0010 | 0.0055',
      '90 4.4375 | 0.2311; 0.2312 | -0.0015 | ',
      '120 4.4375 | 0.2309; 0.2309 | -0.0010 | 0.005',
      '150 4.4375 | 0.2319; 0.2317 | -0.0010 | ',
      '180 4.4375 | 0.2324; 0.2323 | 0.0005 | 0.0045',
      '210 4.4375 | 0.2326; 0.2328 | 0.0010 | ',
      '240 4.4375 | 0.2334; 0.2333 | 0.0015 | 0.0045',
      '270 4.4375 | 0.2338; 0.2337 | 0.0015 | ',
      '300 4.4375 | 0.2337; 0.2335 | 0.0010 | 0.0045',
      '330 4.4375 | 0.2327; 0.2327 | 0.0005 | ',
      '0 5.0625 | 0.2324; 0.2320 | -0.0005 | 0.0025',
      '60 5.0625 | 0.2307; 0.2309 | -0.0015 | 0.0025',
      '120 5.0625 | 0.2311; 0.2311 | -0.0010 | 0.003',
      '180 5.0625 | 0.2324; 0.2326 | 0.0000 | 0.003',
      '240 5.0625 | 0.2340; 0.2341 | 0.0015 | 0.003',
      '300 5.0625 | 0.2335; 0.2332 | 0.0015 | 0.003',
    ],
  }),
  cover({
    id: '1150-6-billet-doubted',
    familyId: '1150-6-billet',
    about: 'One wall reading looks like a slipped digit and was never confirmed.',
    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    doubtfulReadings: ['wall at station 5 (behind stud 3)'],
    expected: 'measure-again',
    rows: [
      '0 4.4375 | 0.2318 | -0.0010 | 0.0045',
      '30 4.4375 | 0.2321 | -0.0010 | ',
      '60 4.4375 | 0.2322 | -0.0005 | 0.004',
      '90 4.4375 | 0.2327 | 0.0000 | ',
      '120 4.4375 | 0.2123 | 0.0000 | 0.004',
      '150 4.4375 | 0.2334 | 0.0010 | ',
      '180 4.4375 | 0.2337 | 0.0010 | 0.004',
      '210 4.4375 | 0.2345 | 0.0010 | ',
      '240 4.4375 | 0.2338 | 0.0010 | 0.0045',
      '270 4.4375 | 0.2334 | 0.0005 | ',
      '300 4.4375 | 0.2331 | -0.0005 | 0.0045',
      '330 4.4375 | 0.2327 | -0.0010 | ',
      '0 5.0625 | 0.2325 | -0.0010 | 0.003',
      '60 5.0625 | 0.2322 | -0.0010 | 0.003',
      '120 5.0625 | 0.2333 | 0.0000 | 0.003',
      '180 5.0625 | 0.2343 | 0.0010 | 0.0025',
      '240 5.0625 | 0.2337 | 0.0010 | 0.003',
      '300 5.0625 | 0.2330 | -0.0010 | 0.003',
    ],
  }),
  cover({
    id: '1000-3-plain-unlimited',
    familyId: '1000-3-plain',
    about: 'No minimum is set for this cover type: advice only.',
    gauge: caliper,
    crackTest: 'none-found',
    chucking: 'side-wall-jaws',
    expected: 'advice-only',
    rows: [
      '0 4.0625 | 0.1742 | 0.0015 | 0.0085',
      '60 4.0625 | 0.1743 | 0.0010 | ',
      '120 4.0625 | 0.1730 | 0.0000 | 0.0085',
      '180 4.0625 | 0.1728 | -0.0005 | ',
      '240 4.0625 | 0.1731 | -0.0005 | 0.0085',
      '300 4.0625 | 0.1739 | 0.0005 | ',
      '0 4.625 | 0.1751 | 0.0010 | 0.004',
      '120 4.625 | 0.1734 | 0.0000 | 0.0045',
      '240 4.625 | 0.1728 | -0.0010 | 0.005',
    ],
  }),
  cover({
    id: '1150-6-ribbed-close',
    familyId: '1150-6-ribbed',
    about: 'Barely above the minimum, measured with a caliper: more readings would settle it.',
    gauge: caliper,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    expected: 'measure-again',
    rows: [
      '0 4.4375 | 0.1813; 0.1813 | 0.0000 | 0.0065',
      '30 4.4375 | 0.1815; 0.1811 | 0.0005 | 0.0015',
      '60 4.4375 | 0.1816; 0.1819 | 0.0010 | 0.006',
      '90 4.4375 | 0.1830; 0.1827 | 0.0010 | 0.0015',
      '120 4.4375 | 0.1824; 0.1823 | 0.0010 | 0.0065',
      '150 4.4375 | 0.1837; 0.1825 | 0.0005 | 0.001',
      '180 4.4375 | 0.1821; 0.1830 | 0.0005 | 0.006',
      '210 4.4375 | 0.1825; 0.1828 | 0.0000 | 0.001',
      '240 4.4375 | 0.1810; 0.1815 | -0.0005 | 0.0065',
      '270 4.4375 | 0.1825; 0.1817 | -0.0005 | 0.002',
      '300 4.4375 | 0.1811; 0.1810 | -0.0005 | 0.0065',
      '330 4.4375 | 0.1817; 0.1809 | 0.0000 | 0.001',
      '0 5.125 | 0.1817; 0.1820 | 0.0000 | 0.0035',
      '60 5.125 | 0.1824; 0.1823 | 0.0010 | 0.0045',
      '120 5.125 | 0.1826; 0.1831 | 0.0010 | 0.003',
      '180 5.125 | 0.1822; 0.1825 | 0.0000 | 0.0035',
      '240 5.125 | 0.1813; 0.1809 | -0.0010 | 0.004',
      '300 5.125 | 0.1815; 0.1805 | -0.0010 | 0.003',
    ],
  }),
  cover({
    id: '1000-3-ribbed-leaning',
    familyId: '1000-3-ribbed',
    about: 'Too thin as chucked; indicated in with shims, it has enough wall.',
    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    expected: 'plan-again',
    rows: [
      '0 4 | 0.1721 | 0.0005 | 0.002',
      '60 4 | 0.1746 | 0.0000 | ',
      '120 4 | 0.1769 | 0.0000 | 0.009',
      '180 4 | 0.1757 | -0.0005 | ',
      '240 4 | 0.1731 | 0.0000 | 0.002',
      '300 4 | 0.1710 | 0.0005 | ',
      '0 4.5625 | 0.1724 | 0.0005 | 0.002',
      '120 4.5625 | 0.1765 | -0.0005 | 0.006',
      '240 4.5625 | 0.1733 | 0.0000 | 0.002',
    ],
  }),
  cover({
    id: '1125-4-billet-unread',
    familyId: '1125-4-billet',
    about: 'No indicator at hand: however the face lies, enough wall is left.',
    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    expected: 'face',
    rows: [
      '0 4.25 | 0.2151; 0.2150 |  | 0.0065',
      '45 4.25 | 0.2153; 0.2153 |  | ',
      '90 4.25 | 0.2156; 0.2156 |  | 0.0065',
      '135 4.25 | 0.2153; 0.2156 |  | ',
      '180 4.25 | 0.2143; 0.2143 |  | 0.006',
      '225 4.25 | 0.2136; 0.2137 |  | ',
      '270 4.25 | 0.2139; 0.2137 |  | 0.006',
      '315 4.25 | 0.2136; 0.2135 |  | ',
      '0 4.875 | 0.2147; 0.2146 |  | 0.003',
      '90 4.875 | 0.2156; 0.2158 |  | 0.0035',
      '180 4.875 | 0.2143; 0.2143 |  | 0.004',
      '270 4.875 | 0.2137; 0.2138 |  | 0.003',
    ],
  }),
  cover({
    id: '1125-4-billet-one-way',
    familyId: '1125-4-billet',
    about: 'No indicator at hand, and only one way the face may lie leaves enough wall.',
    gauge: mic,
    crackTest: 'none-found',
    chucking: null,
    expected: 'measure-again',
    rows: [
      '0 4.25 | 0.2028 |  | 0.007',
      '45 4.25 | 0.2056 |  | ',
      '90 4.25 | 0.2055 |  | 0.0075',
      '135 4.25 | 0.2043 |  | ',
      '180 4.25 | 0.2015 |  | 0.007',
      '225 4.25 | 0.1989 |  | ',
      '270 4.25 | 0.1981 |  | 0.0065',
      '315 4.25 | 0.1998 |  | ',
      '0 4.875 | 0.2020 |  | 0.0045',
      '90 4.875 | 0.2065 |  | 0.0045',
      '180 4.875 | 0.2015 |  | 0.0035',
      '270 4.875 | 0.1975 |  | 0.004',
    ],
  }),
  cover({
    id: '1150-6-ribbed-stripped',
    familyId: '1150-6-ribbed',
    about: 'Two stud threads stripped to the root: the shop does not repair that.',
    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    inspectionFailures: [{ item: 'stud threads', final: true }],
    expected: 'replace',
    rows: [
      '0 4.4375 | 0.1813; 0.1813 | 0.0000 | 0.0065',
      '30 4.4375 | 0.1815; 0.1811 | 0.0005 | 0.0015',
      '60 4.4375 | 0.1816; 0.1819 | 0.0010 | 0.006',
      '90 4.4375 | 0.1830; 0.1827 | 0.0010 | 0.0015',
      '120 4.4375 | 0.1824; 0.1823 | 0.0010 | 0.0065',
      '150 4.4375 | 0.1837; 0.1825 | 0.0005 | 0.001',
      '180 4.4375 | 0.1821; 0.1830 | 0.0005 | 0.006',
      '210 4.4375 | 0.1825; 0.1828 | 0.0000 | 0.001',
      '240 4.4375 | 0.1810; 0.1815 | -0.0005 | 0.0065',
      '270 4.4375 | 0.1825; 0.1817 | -0.0005 | 0.002',
      '300 4.4375 | 0.1811; 0.1810 | -0.0005 | 0.0065',
      '330 4.4375 | 0.1817; 0.1809 | 0.0000 | 0.001',
      '0 5.125 | 0.1817; 0.1820 | 0.0000 | 0.0035',
      '60 5.125 | 0.1824; 0.1823 | 0.0010 | 0.0045',
      '120 5.125 | 0.1826; 0.1831 | 0.0010 | 0.003',
      '180 5.125 | 0.1822; 0.1825 | 0.0000 | 0.0035',
      '240 5.125 | 0.1813; 0.1809 | -0.0010 | 0.004',
      '300 5.125 | 0.1815; 0.1805 | -0.0010 | 0.003',
    ],
  }),
  cover({
    id: '1025-3-plain-faced',
    familyId: '1025-3-plain',
    about:
      'Faced before. Enough wall, but it would bend past the shop’s limit; with a stiffening ring it does not.',
    gauge: mic,
    crackTest: 'none-found',
    chucking: 'pads-and-pilot-trued',
    marks: [mark(14, 4.4375, '0.006')],
    expected: 'face',
    rows: [
      '0 4.0625 | 0.1485; 0.1484 | 0.0005 | 0.0065',
      '60 4.0625 | 0.1487; 0.1486 | 0.0010 | 0.001',
      '120 4.0625 | 0.1485; 0.1485 | 0.0005 | 0.0075',
      '180 4.0625 | 0.1480; 0.1481 | 0.0000 | 0.001',
      '240 4.0625 | 0.1477; 0.1477 | -0.0005 | 0.007',
      '300 4.0625 | 0.1480; 0.1481 | 0.0000 | 0.001',
      '0 4.625 | 0.1484; 0.1483 | 0.0005 | 0.008',
      '120 4.625 | 0.1486; 0.1487 | 0.0005 | 0.0085',
      '240 4.625 | 0.1476; 0.1477 | -0.0005 | 0.008',
    ],
  }),
];
