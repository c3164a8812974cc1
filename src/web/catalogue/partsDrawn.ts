import {
  CATALOGUE_WASHER,
  NUT,
  NUT_THREAD_BOX,
  STUD,
  THREAD_BOX,
} from '../../../shared/words/fields/stud.ts';
import { majorMmOf, rootMmOf } from '../../../views/drawings/stackParts.tsx';
import type { NutTyped, StudTyped, WasherTyped } from '../../../views/parts/entryDrawnPart.tsx';
import { nutExpected, studExpected, washerExpected } from '../../shop/studs/studsExpected.ts';
import type { TypedForm } from '../request/typed.ts';
import { readThreadField } from '../stud/stackForm.ts';
import { crossedIn, figuresDrawn, noFigures, notDrawn } from './figuresDrawn.ts';

/** What is drawn while a figure is not entered; common practice, no source. */
const USUAL = { majorMm: 9.525, rootMm: 8.255, threadStartMm: 2, threadEndMm: 22, pilotMm: 5 } as const;

const { threadStartMm, threadEndMm, projectionMm, pilotDiameterMm, filletMm } = STUD;
const OF_STUD = { threadStartMm, threadEndMm, projectionMm, pilotDiameterMm, filletMm };

/** What can be drawn of the stud in these boxes. */
export function studDrawn(form: TypedForm): StudTyped {
  const thread = readThreadField(form, THREAD_BOX, 'external');
  const figures = figuresDrawn(form, OF_STUD, studExpected({ thread: form.text(THREAD_BOX) }));
  const major = thread === null ? USUAL.majorMm : majorMmOf(thread);
  const crossed = crossedIn(figures, OF_STUD, [
    ['threadStartMm', 'threadEndMm'],
    ['threadStartMm', 'projectionMm'],
    ['threadEndMm', 'projectionMm'],
  ]);
  const drawn = crossed === null ? figures : noFigures(figures);
  const tip = drawn.projectionMm;
  const end = drawn.threadEndMm ?? (tip === null ? USUAL.threadEndMm : 0.8 * tip);
  const root = thread === null ? USUAL.rootMm : rootMmOf(thread);
  return {
    kind: 'stud',
    drawn: {
      majorMm: major,
      minorMm: root,
      threadStartMm: drawn.threadStartMm ?? Math.min(USUAL.threadStartMm, end / 4),
      threadEndMm: end,
      projectionMm: tip ?? end + USUAL.pilotMm,
      pilotDiameterMm: drawn.pilotDiameterMm ?? root,
      filletMm: drawn.filletMm || null,
    },
    figures: drawn,
    thread: thread?.designation ?? null,
    toScale:
      thread !== null && [drawn.threadStartMm, drawn.threadEndMm, tip, drawn.pilotDiameterMm].every(given),
    leftOut: [...notDrawn(form), ...(crossed === null ? [] : [crossed])],
  };
}

const { heightMm, countersinkMm, bearingOuterDiameterMm } = NUT;
const OF_NUT = { heightMm, countersinkMm, bearingOuterDiameterMm };

/** What can be drawn of the nut in these boxes. */
export function nutDrawn(form: TypedForm): NutTyped {
  const thread = readThreadField(form, NUT_THREAD_BOX, 'internal');
  const figures = figuresDrawn(form, OF_NUT, nutExpected({ thread: form.text(NUT_THREAD_BOX) }));
  const major = thread === null ? USUAL.majorMm : majorMmOf(thread);
  const height = figures.heightMm ?? 0.85 * major;
  const sunk = (figures.countersinkMm ?? 0) * 2 >= height;
  const drawn = sunk ? { ...figures, countersinkMm: null } : figures;
  return {
    kind: 'nut',
    drawn: {
      heightMm: height,
      toleranceMm: 0,
      thread,
      proofMPa: null,
      tensileMPa: null,
      countersinkMm: drawn.countersinkMm ?? 0,
      bearingOuterDiameterMm: drawn.bearingOuterDiameterMm,
      washerMm: 0,
      prevailing: false,
      majorMm: major,
    },
    figures: drawn,
    thread: thread?.designation ?? null,
    toScale: thread !== null && [drawn.heightMm, drawn.bearingOuterDiameterMm].every(given),
    leftOut: [
      ...notDrawn(form),
      ...(sunk ? ['Not in the drawing: two such countersinks leave no thread.'] : []),
    ],
  };
}

const { innerDiameterMm, outerDiameterMm, thicknessMm } = CATALOGUE_WASHER;
const OF_WASHER = { innerDiameterMm, outerDiameterMm, thicknessMm };

/** What can be drawn of the washer or shim in these boxes. */
export function washerDrawn(form: TypedForm): WasherTyped {
  const figures = figuresDrawn(form, OF_WASHER, washerExpected());
  const crossed = crossedIn(figures, OF_WASHER, [['innerDiameterMm', 'outerDiameterMm']]);
  const drawn = crossed === null ? figures : noFigures(figures);
  const outer = drawn.outerDiameterMm ?? 2 * (drawn.innerDiameterMm ?? 10.3);
  return {
    kind: 'washer',
    drawn: {
      innerDiameterMm: drawn.innerDiameterMm ?? outer / 2,
      outerDiameterMm: outer,
      thicknessMm: drawn.thicknessMm ?? outer / 12,
    },
    figures: drawn,
    toScale: Object.values(drawn).every(given),
    leftOut: [...notDrawn(form), ...(crossed === null ? [] : [crossed])],
  };
}

const given = (mm: number | null): boolean => mm !== null;
