import { type FieldLine, lengthInWords, linesOf } from '../../../shared/quantity/fieldLines.ts';
import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { printDay } from '../../../shared/words/day.ts';
import { lowerFirst, nothingOf } from '../../../shared/words/fields/field.ts';
import { CUT, INSPECTED, LOOKED, PLAN, RECEIVED } from '../../../shared/words/fields/job.ts';
import { JOINT } from '../../../shared/words/fields/joint.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import { RING_WELDED } from '../../../shared/words/fields/weld.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { foundOfItem, type Inspected, isItemOk, limitsOfItem } from '../../../shared/words/inspection.ts';
import {
  type Closing,
  type CutPlan,
  type CutsMade,
  type Decision,
  type JobSections,
  LOOK_ITEMS,
  type Looked,
  type MeasuringSetup,
  type Received,
  type SectionName,
  type Signature,
  type StudsChosen,
} from '../../../shared/words/job.ts';
import { listInWords, printLength, printShare } from '../../../shared/words/print.ts';
import { DECISION_WORD, FIT_WORD, holdsInWords, VERDICT_WORD } from '../../../shared/words/verdicts.ts';
import { ITEM_WORD } from '../../../views/pages/job/stepWords.ts';
import { replacedInWords, retorqueInWords } from '../../../views/pages/job/studWorkForms.tsx';
import { sourcesOf } from '../../../views/pages/stud/jointFields.tsx';
import { bendingInWords } from '../../../views/parts/bendingPart.tsx';
import { decisionTold, studsTold } from '../../shop/jobTold.ts';
import { namedText } from '../catalogue/chosen.ts';
import { criteriaFields, familyFields, stackFields, studFields } from '../catalogue/entryFields.ts';

type InWords = { readonly [S in SectionName]: (body: JobSections[S], writing: Writing) => FieldLine[] };

const line = (label: string, value: string): FieldLine => ({ label, value });
const under = (head: string, lines: FieldLine[]) =>
  lines.map(({ label, value }) => line(`${head}: ${lowerFirst(label)}`, value));

const inWords: InWords = {
  received,
  looked,
  inspected,
  setup,
  plan,
  decision,
  cuts,
  studs,
  signature,
  closed,
};

/** Whether a revision changed one of the sections that are told field by field. */
export function isSection(what: string): what is SectionName {
  return what in inWords;
}

/** What a section says, field by field in plain words; null is the section before anybody filled it in. */
export function sectionFields<S extends SectionName>(
  section: S,
  body: JobSections[S] | null,
  writing: Writing,
): FieldLine[] {
  const filled = body ?? (BEFORE_ANY[section] as JobSections[S] | undefined);
  return filled === undefined ? [] : inWords[section](filled, writing);
}

/** What a section amounts to while nobody has filled it in; those left out amount to nothing. */
const BEFORE_ANY: Partial<JobSections> = {
  looked: {
    crackTest: 'not-done',
    crackMethod: null,
    crackNote: '',
    items: LOOK_ITEMS.map((item) => ({ item, result: 'not-looked', final: false, note: '' })),
  },
  setup: {
    gauge: '',
    gaugeFigures: null,
    chucking: null,
    residualRunoutMm: null,
    wallReadThrough: 'bare',
    stations: [],
  },
  plan: { plannedCutMm: null, typed: '' },
  closed: { closed: false },
};

function received(body: Received, writing: Writing): FieldLine[] {
  const [, ...figures] = familyFields(body.family, writing);
  return [
    ...linesOf(RECEIVED, body, writing, {
      made: {
        familyId: [],
        family: [line(RECEIVED.family.label, body.family.name)],
        familyRevision: [line(RECEIVED.familyRevision.label, String(body.familyRevision))],
      },
    }),
    ...under('Cover type', figures),
  ];
}

function looked(body: Looked, writing: Writing): FieldLine[] {
  const items = LOOK_ITEMS.map((item) => {
    const one = body.items.find((candidate) => candidate.item === item);
    const lines = linesOf(INSPECTED, one ?? nothingOf(INSPECTED), writing, { made: { item: [] } });
    const said = lines.map(({ label, value }) => (value === 'yes' ? lowerFirst(label) : value));
    return line(ITEM_WORD[item], said.filter((value) => !['', 'no', 'not given'].includes(value)).join('; '));
  });
  return linesOf(LOOKED, body, writing, { made: { items } });
}

function inspected(body: Inspected, { lengthUnit }: Writing): FieldLine[] {
  return body.items.map((one) => {
    const limits = limitsOfItem(one.item, lengthUnit);
    const said = [
      `${foundOfItem(one, lengthUnit)}${one.value === null ? '' : ` (typed ${one.typed})`}`,
      `${isItemOk(one) ? 'OK' : 'Not OK'}, ${limits} is needed`,
      ...(one.confirmed ? ['confirmed'] : []),
      ...(one.note === '' ? [] : [one.note]),
    ];
    return line(one.item.name, `${said.join('; ')}; ${one.who}`);
  });
}

function setup(body: MeasuringSetup, writing: Writing): FieldLine[] {
  return linesOf(SETUP, body, writing, {
    made: {
      gauges: (body.gauges ?? []).map(({ use, gauge }) =>
        line(
          use === 'wall' ? 'Gauge from the catalog, wall' : 'Gauge from the catalog, indicator',
          `${gauge.name}${gauge.dueOn === null ? '' : `, due ${printDay(gauge.dueOn)}`}`,
        ),
      ),
      ringWelded: body.ringWelded ? linesOf(RING_WELDED, body.ringWelded, writing) : [],
      stations: [
        line(
          SETUP.stations.label,
          body.stations
            .map((one) => `${Number(one.angleDeg.toFixed(3))}° at ${lengthInWords(one.radiusMm, writing)}`)
            .join('; ') || 'as the cover type lays them out',
        ),
      ],
    },
  });
}

function plan(body: CutPlan, writing: Writing): FieldLine[] {
  return linesOf(PLAN, body, writing, {
    made: { typed: [], lathe: body.lathe ? [line(PLAN.lathe.label, namedText('lathe', body))] : [] },
  });
}

function decision(body: Decision, writing: Writing): FieldLine[] {
  const { check } = body;
  const length = (mm: number | null) =>
    mm === null ? 'no wall was measured' : printLength(mm, writing.lengthUnit);
  const minimum = check.minimumWall;
  return [
    line('Decision', DECISION_WORD[body.decision]),
    line('Verdict', VERDICT_WORD[check.verdict]),
    line('Why', becauseOf(decisionTold(body, writing.lengthUnit).body.check)),
    line('Reason given', body.reason),
    line('Depth of cut', length(check.cut?.dialledMm ?? null)),
    line('Thinnest wall left', length(check.leastWall?.afterMm ?? null)),
    line('Minimum wall', minimum === null ? 'none set' : `${length(minimum.mm)} (${minimum.source})`),
    line(
      'Confidence in the wall',
      check.conformanceProbability === null ? 'not worked out' : printShare(check.conformanceProbability),
    ),
    ...under('Shop limits', criteriaFields(body.criteria, writing)),
    ...(body.bending
      ? [
          line('How it bends', bendingInWords(body.bending, writing.lengthUnit)),
          line('Calculation of bending', body.bending.calcVersion),
        ]
      : []),
    line('Calculation', body.calcVersion),
    line('Worked out at', `revision ${body.workedOutAtRevision}`),
  ];
}

/** In the reader's unit, where today's calculation still finds the same. */
function becauseOf({ headline, because }: { headline: string; because: string }): string {
  return `${headline} ${because}`.trim();
}

function cuts(body: CutsMade, writing: Writing): FieldLine[] {
  return body.cuts.map((cut, i) => {
    const lines = linesOf(CUT, cut, writing, { made: { typed: [] }, quiet: true });
    const said = lines.flatMap(({ label, value }) =>
      value === '' ? [] : [label === CUT.look.label ? `${lowerFirst(label)}: ${value}` : value],
    );
    return line(`Pass ${i + 1}`, said.join('; '));
  });
}

function studs(body: StudsChosen, writing: Writing): FieldLine[] {
  const [, ...ofStack] = stackFields(body.stack, writing);
  const [, ...ofStud] = studFields(body.stud, writing);
  return [
    line('Stud', body.stud.name),
    line('Flexplate stack', body.stack.name),
    line('Whether it fits', FIT_WORD[body.check.fits]),
    line('Why', becauseOf(studsTold(body, writing.lengthUnit).body.check)),
    line('Pull-forward gap', lengthInWords(body.pullForwardMm, writing)),
    ...jointLines(body, writing),
    ...(body.replaced ?? []).map((one) =>
      line(`Replaced stud ${one.stud}`, `${replacedInWords(one, writing)}; ${worst(one.findings)}`),
    ),
    ...(body.retightening
      ? [
          line(
            'Re-torqued',
            `${retorqueInWords(body.retightening, writing)}; ${worst(body.retightening.findings)}`,
          ),
        ]
      : []),
    line('Note', body.note),
    ...under('Stud', ofStud),
    ...under('Flexplate stack', ofStack),
    line('Calculation', body.calcVersion),
  ];
}

/** What was found of it, the worst first, in short. */
function worst(findings: readonly Finding[]): string {
  const failed = findings.filter(({ status }) => status === 'fail').map(({ title }) => title.toLowerCase());
  return failed.length === 0 ? 'nothing failed' : `failed: ${listInWords(failed)}`;
}

/** The joint, figure by figure; nothing where it was not asked for. */
function jointLines({ input, jointFrom, check }: StudsChosen, writing: Writing): FieldLine[] {
  const joint = input?.joint;
  if (!joint) return [];
  return [
    line('Whether the joint holds', holdsInWords(check).toLowerCase()),
    ...linesOf(JOINT, joint, writing, { made: { ofStack: [] }, beside: sourcesOf(jointFrom ?? null) }),
  ];
}

function signature(body: Signature): FieldLine[] {
  return [
    line('Statement', body.statement),
    line('Signed', `the job as it was at revision ${body.signedRevision}`),
  ];
}

function closed(body: Closing): FieldLine[] {
  return [line('Closed', body.closed ? 'yes' : 'no')];
}
