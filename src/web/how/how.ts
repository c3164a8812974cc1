import { type Request, type Response, Router } from 'express';
import { coverExamples } from '../../../data/examples/coverExamples.ts';
import { CHECKED_HEAT, ENGAGEMENT, heatExamples } from '../../../data/examples/heatExamples.ts';
import { judgeExamples } from '../../../data/examples/judgeExamples.ts';
import { measureExamples } from '../../../data/examples/measureExamples.ts';
import { plateExamples } from '../../../data/examples/plateExamples.ts';
import { studExamples } from '../../../data/examples/studExamples.ts';
import type { Example } from '../../../data/examples/worked.ts';
import { BENDING_FORMULA } from '../../../shared/words/bending/bendingWorkings.ts';
import type { Formula, WorkedExample } from '../../../shared/words/formula.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import {
  type CalculationListed,
  CalculationPage,
  HowIndexPage,
  HowPage,
  type HowSubject,
} from '../../../views/pages/howPage.tsx';
import { WordsPage } from '../../../views/pages/wordsPage.tsx';
import { BesideChecked } from '../../../views/parts/besideChecked.tsx';
import { HowBending } from '../../../views/parts/how/bending/howBendingPart.tsx';
import { firstSentence, nameInWords } from '../../../views/parts/how/formulaText.tsx';
import { HowHeat } from '../../../views/parts/how/howHeat.tsx';
import { renderPage } from '../../../views/render.ts';
import { heatCover } from '../../calc/heat/heatCover.ts';
import { frameOf, type PageContext } from '../request/pageContext.ts';
import { NoSuchPage } from '../request/pageErrors.ts';
import { fieldsOf } from '../request/typed.ts';
import { readFormulas } from './formulas.ts';
import { type Here, jobNow, workedOutHere } from './here.ts';
import { bendingExample } from './howBending.ts';
import { coverBesideChecked, sureBesideChecked } from './howChecked.ts';
import { glossary } from './words.ts';

interface Subject extends HowSubject {
  /** Of `src/calc`. */
  readonly folder: string;
  readonly examples: Readonly<Record<string, Example>>;
}

export const SUBJECTS: readonly Subject[] = [
  {
    id: 'cover',
    folder: 'cover',
    title: 'The cover and its cut',
    about:
      'How the face lies, the depth of cut that just cleans it up, and the wall that leaves. The tool plane is square to the axis, below the deepest heat mark by the allowance. The depth of cut is counted from the highest point of the face. Each station loses what is above the plane.',
    examples: coverExamples,
  },
  {
    id: 'measuring',
    folder: 'measure',
    title: 'Measuring, and how sure it is',
    about:
      'Planes through the readings, how far off a gauge and its reader may be, and the chance that no station is below the minimum. A gauge’s error is shared by all stations. The scatter of single readings is not. The two are counted separately.',
    examples: measureExamples,
  },
  {
    id: 'studs',
    folder: 'stud',
    title: 'Studs',
    about:
      'Threads, flexplate stacks, reach, engagement and the joint. What shows on the engine side, with the converter pushed back, is the stud’s length less the gap and the stack. A nut starts by hand if enough full threads show.',
    examples: studExamples,
  },
  {
    id: 'bending',
    folder: 'plate',
    title: 'How the cover bends',
    about:
      'Why heat marks come back behind the studs, and how much worse a thinner wall makes it. Advice, to compare covers.',
    examples: plateExamples,
  },
  {
    id: 'heat',
    folder: 'heat',
    title: 'How hot the face gets',
    about:
      'One engagement of the lock-up clutch, and what a thinner wall changes. Advice, to compare covers.',
    examples: heatExamples,
  },
  {
    id: 'judging',
    folder: 'judge',
    title: 'From findings to a verdict',
    about:
      'Each check gives one finding: OK, caution, not OK, or not checked. The verdict is the first row of a table that the findings meet. It names the finding that decided it. No number overrules a crack.',
    examples: judgeExamples,
  },
];

/** How everything is worked out: the calculations’ own words, with examples worked out when asked for. */
export function howRouter(context: PageContext): Router {
  const router = Router();
  // Read when somebody first asks: the program starts without them.
  let read: readonly Formula[] | null = null;
  const formulas = () => (read ??= readFormulas());
  const bending = bendingWorkedOnce();
  // The examples are always the same, and so are their answers.
  const kept = new Map<string, WorkedExample | null>();
  router.get('/how', (req, res) => getIndex(context, formulas(), req, res));
  router.get('/how/words', (req, res) => getWords(context, req, res));
  const stepsOf = stepsOfPages(formulas);
  router.get('/how/formula', (req, res) => getFormula(context, stepsOf, req, res));
  router.get('/how/:subject', async (req, res) => {
    const subject = subjectNamed(req.params.subject);
    const frame = await frameOf(req, context);
    const children = await leadOf(subject.id, frame.lengthUnit, bending);
    const calculations = calculationsOf(subject, formulas());
    res.send(renderPage(HowPage({ frame, subject, calculations, children })));
  });
  router.get('/how/:subject/:calculation', async (req, res) => {
    const subject = subjectNamed(req.params.subject);
    const { calculation } = req.params;
    const name = `${subject.folder}/${calculation}`;
    const all = calculationsOf(subject, formulas());
    const at = all.findIndex(({ id }) => id === calculation);
    if (at < 0) throw new NoSuchPage(NO_SUCH);
    if (!kept.has(name)) kept.set(name, subject.examples[calculation]?.() ?? null);
    const asked = fieldsOf(req.query);
    const here = await workedOutHere(context, req, asked);
    const page = {
      frame: await frameOf(req, context),
      here:
        here &&
        hereOn(
          here,
          (step) => asked.step === step || pagesOf(stepsOf(), step).includes(`${subject.id}/${calculation}`),
        ),
      subject,
      id: calculation,
      formulas: formulas().filter((one) => one.name === name),
      example: kept.get(name) ?? null,
      before: all[at - 1] ?? null,
      after: all[at + 1] ?? null,
    };
    res.send(renderPage(CalculationPage(page)));
  });
  return router;
}

/** Which calculations a step of a working belongs to, by its formula: as their examples show it, else as their words do. */
type StepPages = () => ReadonlyMap<string, readonly string[]>;

function stepsOfPages(formulas: () => readonly Formula[]): StepPages {
  let pages: Map<string, string[]> | null = null;
  return () => {
    if (pages !== null) return pages;
    pages = new Map();
    for (const subject of SUBJECTS) {
      for (const { id } of calculationsOf(subject, formulas())) {
        for (const { how } of subject.examples[id]?.().answers ?? []) {
          for (const { formula } of how) {
            const page = `${subject.id}/${id}`;
            pages.set(formula, [...new Set([...(pages.get(formula) ?? []), page])]);
          }
        }
      }
    }
    return pages;
  };
}

function pagesOf(known: ReadonlyMap<string, readonly string[]>, step: string): readonly string[] {
  return known.get(step) ?? [ELSEWHERE[step]].filter((page) => page !== undefined);
}

/** Steps that no example shows, and the calculation that explains them. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  't = min(tᵢ − kᵢ), kᵢ = zᵢ − c': 'cover/toolPlane',
  'P = ∫ φ(x) Π Φ((mᵢ − u_c·x)/uᵢ) dx': 'measuring/conformanceProbability',
  'most min(tᵢ − zᵢ + a·xᵢ + b·yᵢ + c), cleaned everywhere, √(a² + b²) ≤ τ/D': 'cover/dialledIn',
  'At = π/4 · (D − 0.9743/n)²': 'studs/tensileStressArea',
  'least of Le over every size within its tolerance': 'studs/threadEngagement',
  'out = off + lean · S/height; room = (H − F)/2': 'studs/replacedStud',
  [BENDING_FORMULA.peak]: 'bending/pressurePeak',
  [BENDING_FORMULA.waviness]: 'bending/bendCover',
  [BENDING_FORMULA.center]: 'bending/bendCover',
  [BENDING_FORMULA.stress]: 'bending/greatestStress',
};

/** A working leads here with its first formula: on to the calculation, with the values of the page it was on. */
async function getFormula(
  context: PageContext,
  stepsOf: StepPages,
  req: Request,
  res: Response,
): Promise<void> {
  const { step = '', from = '' } = fieldsOf(req.query);
  const [page] = pagesOf(stepsOf(), step);
  if (page === undefined) throw new NoSuchPage(NO_SUCH);
  const job = await jobNow(context, from);
  const query = new URLSearchParams({ step, ...(job ?? (from === '' ? {} : { from })) });
  res.redirect(303, `/how/${page}?${query}`);
}

/** Of a page's workings those that take a step of this calculation. */
function hereOn(here: Here, isOf: (step: string) => boolean): Here | null {
  const workings = here.workings.filter(({ answer }) => answer.how.some(({ formula }) => isOf(formula)));
  return workings.length === 0 ? null : { ...here, workings };
}

async function getIndex(
  context: PageContext,
  formulas: readonly Formula[],
  req: Request,
  res: Response,
): Promise<void> {
  const subjects = SUBJECTS.map((subject) => ({
    ...subject,
    count: calculationsOf(subject, formulas).length,
  }));
  res.send(renderPage(HowIndexPage({ frame: await frameOf(req, context), subjects })));
}

async function getWords(context: PageContext, req: Request, res: Response): Promise<void> {
  const frame = await frameOf(req, context);
  res.send(renderPage(WordsPage({ frame, ...glossary(frame) })));
}

/** The calculations of a subject, each once, in their order, with the first sentence of its words. */
function calculationsOf({ folder }: Subject, formulas: readonly Formula[]): CalculationListed[] {
  const of = formulas.filter(({ name }) => name.startsWith(`${folder}/`));
  return of
    .filter(({ name }, i) => of[i - 1]?.name !== name)
    .map(({ name, text }) => {
      const id = name.slice(name.indexOf('/') + 1);
      return { id, name: nameInWords(id), finds: firstSentence(text) };
    });
}

const NO_SUCH = 'There is no such page. Go to “How it is worked out” and choose one from the list.';

function subjectNamed(id: string): Subject {
  const subject = SUBJECTS.find((one) => one.id === id);
  if (subject) return subject;
  throw new NoSuchPage(NO_SUCH);
}

type BendingExample = ReturnType<typeof bendingExample>;

/** Takes a while, and is the same for everybody. One that failed is tried again by the next who asks. */
function bendingWorkedOnce(): () => BendingExample {
  let worked: BendingExample | null = null;
  return () => {
    worked ??= bendingExample().catch((error: unknown) => {
      worked = null;
      throw error;
    });
    return worked;
  };
}

/** What stands above the formulas of a subject, where there is something. */
async function leadOf(id: string, unit: LengthUnit, bending: () => BendingExample) {
  switch (id) {
    case 'heat': {
      const rows = CHECKED_HEAT.map((checked) => ({
        checked,
        found: heatCover({ ...ENGAGEMENT, thicknessMm: checked.thicknessMm }),
      }));
      return HowHeat({ unit, engagement: ENGAGEMENT, rows });
    }
    case 'cover':
      return BesideChecked({
        given:
          'Two sets of readings: twelve stations in two rows, and eight in one row where indicating in with shims helps.',
        rows: coverBesideChecked(),
      });
    case 'measuring':
      return BesideChecked({
        given:
          'The chance that no station is below the minimum, with one error shared by all and one of each station’s own.',
        rows: sureBesideChecked(),
      });
    case 'bending':
      return HowBending({ unit, ...(await bending()) });
    default:
      return null;
  }
}
