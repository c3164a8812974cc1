import type { ComponentChildren } from 'preact';
import {
  COVER_ROWS,
  type CoverRow,
  findingsOfRow,
  type RowTold,
  rowTold,
} from '../../shared/words/answerRows.ts';
import type { Bending } from '../../shared/words/bending/bending.ts';

import { rangeThanNew, timesNew } from '../../shared/words/bending/thanNew.ts';
import type { Chosen } from '../../shared/words/catalogue.ts';
import { type CutPlanAnswer, DIALLING_WORTH_MM, type MeasuredCheck } from '../../shared/words/cover.ts';
import { passFigures, printSure } from '../../shared/words/cut.ts';
import type { Finding } from '../../shared/words/finding.ts';
import { findingsTold } from '../../shared/words/findingsShown.ts';
import { heatMarksInWords } from '../../shared/words/heatMarks.ts';
import {
  type LengthUnit,
  lengthFigure,
  printAs,
  printLength,
  printNumber,
  UNBALANCE,
} from '../../shared/words/print.ts';
import { AnswerRow, AnswerRows } from './answerRows.tsx';
import { BendingPart, type BesideProps } from './bendingPart.tsx';
import {
  type CoverDrawingShape,
  SectionFigure,
  StationsAnswered,
  TiltFigure,
  TrackFigure,
} from './coverAnswer.tsx';
import { CutPlanPart, cuttingTime } from './cutPlanPart.tsx';
import { FindingList } from './findingList.tsx';
import { HeatMarksPart } from './heatMarksPart.tsx';
import { HowFigure } from './how/howFigure.tsx';
import { WhatIf, type WhatIfProps } from './whatIfPart.tsx';

export interface CoverRowsProps {
  /** Starts the ids on a page that shows two answers. */
  readonly id: 'cover' | 'job';
  readonly level: 2 | 3;
  readonly unit: LengthUnit;
  /** Whether a depth of cut is told at all. */
  readonly cut: boolean;
  readonly shape: CoverDrawingShape;
  readonly check: MeasuredCheck;
  readonly plan: CutPlanAnswer | null;
  /** Ids of the findings that decided it. */
  readonly decides: readonly string[];
  readonly bending: {
    readonly bending: Bending | null;
    readonly why: string | null;
    readonly besideWhy: string | null;
  } | null;
  readonly beside: BesideProps | null;
  /** The address of the drawings of how it bends. */
  readonly drawings: string;
  /** Trying another cut, where that can be done. */
  readonly tryCut: Pick<WhatIfProps, 'action' | 'include' | 'check'> | null;
  /** A cut that is planned is typed here. */
  readonly cutPlanned?: ComponentChildren;
  /** Chosen for the cut; left out: the shop's. */
  readonly lathe?: Chosen<'lathe'> | null | undefined;
  /** The passes stand elsewhere on the page. */
  readonly passesElsewhere?: boolean;
  /** Rows that are open whatever they say. */
  readonly opened?: readonly CoverRow[];
}

/** Everything that was looked at, a row a subject. */
export function CoverRows(props: CoverRowsProps) {
  const { check, decides, cut } = props;
  const shown = findingsTold(check.findings, cut);
  const rows = (Object.keys(COVER_ROWS) as CoverRow[]).flatMap((row) => {
    const findings = findingsOfRow(row, shown);
    const body = BODY[row](props);
    if (findings.length === 0 && body === null) return [];
    return [{ row, findings, told: rowTold(findings, decides), body }];
  });
  return (
    <AnswerRows label="What was looked at">
      {rows.map(({ row, findings, told, body }) => (
        <Row row={row} findings={findings} told={told} props={props}>
          {body}
        </Row>
      ))}
    </AnswerRows>
  );
}

function Row(one: {
  row: CoverRow;
  findings: readonly Finding[];
  told: RowTold;
  props: CoverRowsProps;
  children: ComponentChildren;
}) {
  const { row, findings, told, props, children } = one;
  const { unit = undefined, figure = null } = FIGURE[row](props) ?? {};
  const own = told.open ? null : (SAYS[row]?.(props, told) ?? null);
  const asked = props.opened?.includes(row) ?? false;
  // Opened by what is wrong, it shows that alone: whoever opens it has everything.
  const folded = told.open && !asked;
  const inSight = ({ id, status }: Finding) =>
    !folded || status === 'fail' || status === 'caution' || id === told.says?.id;
  const list = (some: readonly Finding[]) =>
    some.length > 0 && <FindingList findings={some} unit={props.unit} id={`${props.id}-finding`} />;
  return (
    <AnswerRow
      id={`${props.id}-row-${row}`}
      level={props.level}
      status={findings.length === 0 ? null : told.status}
      title={COVER_ROWS[row]}
      says={own ?? told.says?.sentence ?? ''}
      figure={figure}
      {...(unit !== undefined && { unit })}
      open={told.open || asked}
      saidBelow={own === null && findings.length > 0}
    >
      {list(findings.filter(inSight))}
      {folded ? (
        <details class="more-findings row-rest" id={`${props.id}-row-${row}-rest`}>
          <summary>{REST[row]}</summary>
          {list(findings.filter((one) => !inSight(one)))}
          {children}
          <HowTo row={row} check={props.check} />
        </details>
      ) : (
        <>
          {children}
          <HowTo row={row} check={props.check} />
        </>
      )}
    </AnswerRow>
  );
}

/** The working of the figure of each row, by its name in the answer. */
const WORKING: Partial<Record<CoverRow, string>> = {
  wall: 'leastWallAfterMm',
  sure: 'conformanceProbability',
  indicated: 'wallGainedMm',
  cut: 'cleanUpMm',
  balance: 'unbalanceGmm',
  clearances: 'releaseClearanceAfterMm',
};

function HowTo({ row, check }: { row: CoverRow; check: CoverRowsProps['check'] }) {
  if (row === 'bending') return null;
  const working = check.answers[WORKING[row] ?? ''];
  return (
    <p class="to-how">
      {working !== undefined && (
        <>
          <HowFigure how={working}>This figure’s formula, with its values here</HowFigure>{' '}
        </>
      )}
      <a href="/how/cover">How it is worked out</a>
    </p>
  );
}

/** What is folded in a row that what is wrong has opened. */
const REST: Readonly<Record<CoverRow, string>> = {
  wall: 'Drawing, and every station',
  looked: 'What else was looked at',
  sure: 'What else was looked at',
  indicated: 'Drawing, and what else was looked at',
  cut: 'Try another cut, and the passes',
  bending: 'Figures and drawings',
  marks: 'Figures',
  balance: 'How it is worked out',
  clearances: 'What else was looked at',
};

interface RowFigure {
  readonly figure: string;
  readonly unit?: string;
}

const after = (bending: Bending | null | undefined) => {
  const [fresh, left] = (['new', 'after'] as const).map((id) => bending?.cases.find((one) => one.id === id));
  return fresh && left ? { fresh, left } : null;
};

/** The one figure of each row. */
const FIGURE: Readonly<Record<CoverRow, (props: CoverRowsProps) => RowFigure | null>> = {
  wall: ({ check, cut, unit }) => ({
    figure: lengthFigure(cut ? check.leastWall.afterMm : check.leastWall.beforeMm, unit),
    unit,
  }),
  looked: () => null,
  sure: ({ check, cut }) =>
    check.conformanceProbability === null || !cut
      ? null
      : { figure: printSure(check.conformanceProbability) },
  indicated: ({ check, cut, unit }) =>
    check.dialledIn && cut
      ? { figure: lengthFigure(Math.max(0, check.dialledIn.wallGainedMm), unit), unit: `${unit} saved` }
      : null,
  cut: ({ plan, cut, passesElsewhere }) =>
    plan && cut && !passesElsewhere ? { figure: cuttingTime(plan.timeS) } : null,
  bending: () => null,
  marks: () => null,
  balance: ({ check, cut, unit }) =>
    check.unbalance && cut ? { figure: printAs(check.unbalance.gmm, UNBALANCE[unit]) } : null,
  clearances: () => null,
};

/** What a row says where its own findings say less. */
const SAYS: Partial<Readonly<Record<CoverRow, (props: CoverRowsProps, told: RowTold) => string | null>>> = {
  cut: ({ plan, check, cut, passesElsewhere, unit }, { status }) => {
    if (!cut) return 'None: the cover is replaced.';
    if (passesElsewhere || status === 'caution') return null;
    if (plan === null) return 'It cleans up. No passes are planned: the lathe is not described yet.';
    const depths = passFigures(plan.passes, unit).map(({ depth }) => depth);
    const passes = depths.length === 1 ? '1 pass' : `${depths.length} passes`;
    const left = check.cutsLeft === null ? '' : ` Cuts left after it: ${check.cutsLeft}.`;
    return `${passes}: ${depths.join(', ')} ${unit}, at ${printNumber(plan.spindleRpm, 0)} rpm.${left}`;
  },
  indicated: ({ check: { dialledIn }, unit }, { says }) =>
    dialledIn === null || says?.id !== 'dialled-in' || dialledIn.wallGainedMm < DIALLING_WORTH_MM
      ? null
      : `With shims, the cut would leave ${printLength(dialledIn.leastWallMm, unit)} at the thinnest station.`,
  balance: ({ check: { unbalance }, unit }, { says }) => {
    if (says?.limit == null || unbalance === null) return null;
    const { heavySideDeg } = unbalance;
    const side = heavySideDeg === null ? '' : `The heavy side is at ${printNumber(heavySideDeg, 0)}°. `;
    const limit = printAs(says.limit, UNBALANCE[unit]);
    return `${side}The unbalance is ${says.status === 'pass' ? 'within' : 'more than'} the limit of ${limit}.`;
  },
  marks: ({ check: { heatMarks = [] }, unit }) => heatMarksInWords(heatMarks, unit)[0] ?? null,
  bending: ({ bending }, { status }) => {
    if (status === 'caution') return null;
    const compared = after(bending?.bending);
    if (compared === null) return bending?.why ?? null;
    const { fresh, left } = compared;
    return `After the cut, peak lining pressure is ${rangeThanNew(timesNew(left.peakOverMean, fresh.peakOverMean))}.`;
  },
};

/** What stands in an open row under its findings; null where there is nothing. */
const BODY: Readonly<Record<CoverRow, (props: CoverRowsProps) => ComponentChildren>> = {
  wall: ({ id, unit, check, cut, shape }) => (
    <>
      <TrackFigure shape={shape} check={check} unit={unit} id={id} cut={cut} />
      {cut && <SectionFigure shape={shape} check={check} unit={unit} id={id} />}
      <details class="twin">
        <summary>Every station in a table</summary>
        <StationsAnswered check={check} unit={unit} cut={cut} />
      </details>
    </>
  ),
  looked: () => null,
  sure: () => null,
  indicated: ({ id, unit, check, cut, shape }) =>
    cut ? <TiltFigure shape={shape} check={check} unit={unit} id={id} /> : null,
  cut: ({ id, unit, cut, plan, lathe, bending, tryCut, cutPlanned, passesElsewhere }) => {
    if (!cut) return cutPlanned ?? null;
    return (
      <>
        {tryCut && <WhatIf {...tryCut} bending={bending?.bending ?? null} unit={unit} level={3} />}
        {cutPlanned}
        {!passesElsewhere && <CutPlanPart plan={plan} lathe={lathe} unit={unit} id={id} level={3} />}
      </>
    );
  },
  bending: ({ id, unit, bending, drawings, beside }) =>
    bending && (
      <BendingPart
        {...bending}
        unit={unit}
        id={id}
        level={3}
        drawings={drawings}
        {...(beside && { beside })}
      />
    ),
  marks: ({ check: { heatMarks = [] }, unit }) =>
    heatMarks.some(({ meanMm }) => meanMm > 0) ? <HeatMarksPart rows={heatMarks} unit={unit} /> : null,
  balance: () => null,
  clearances: () => null,
};
