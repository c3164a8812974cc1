import type { ComponentChildren } from 'preact';
import {
  COVER_ROWS,
  type CoverRow,
  findingsOfRow,
  type RowTold,
  rowTold,
} from '../../../shared/words/answerRows.ts';
import type { Bending } from '../../../shared/words/bending/bending.ts';
import { rangeThanNew, timesNew } from '../../../shared/words/bending/thanNew.ts';
import { type CutPlanAnswer, DIALLING_WORTH_MM, type MeasuredCheck } from '../../../shared/words/cover.ts';
import { passFigures, printSure } from '../../../shared/words/cut.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { cutTold, findingsShown } from '../../../shared/words/findingsShown.ts';
import { heatMarksInWords } from '../../../shared/words/heatMarks.ts';
import { lengthFigure, printAs, printLength, printNumber, UNBALANCE } from '../../../shared/words/print.ts';
import { AnswerRow, AnswerRows } from '../../parts/answerRows.tsx';
import { BendingPart } from '../../parts/bendingPart.tsx';
import {
  type CoverDrawingShape,
  SectionFigure,
  StationsAnswered,
  TiltFigure,
  TrackFigure,
} from '../../parts/coverAnswer.tsx';
import { CutPlanPart, cuttingTime } from '../../parts/cutPlanPart.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import { HeatMarksPart } from '../../parts/heatMarksPart.tsx';
import { WhatIf } from '../../parts/whatIfPart.tsx';
import type { CoverFormView } from './coverFields.tsx';

export interface CoverRowsProps {
  readonly form: CoverFormView;
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
}

/** Everything that was looked at, a row a subject. */
export function CoverRows(props: CoverRowsProps) {
  const { check, decides } = props;
  const shown = findingsShown(check);
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
  return (
    <AnswerRow
      id={`cover-row-${row}`}
      status={row === 'marks' ? null : told.status}
      title={COVER_ROWS[row]}
      says={own ?? told.says?.sentence ?? ''}
      figure={figure}
      {...(unit !== undefined && { unit })}
      open={told.open}
    >
      {findings.length > 0 && (
        <FindingList findings={findings} unit={props.form.lengthUnit} id="cover-finding" />
      )}
      {children}
      {row !== 'bending' && (
        <p class="to-how">
          <a href="/how/cover">How it is worked out</a>
        </p>
      )}
    </AnswerRow>
  );
}

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
  wall: ({ check, form: { lengthUnit: unit } }) => ({
    figure: lengthFigure(cutTold(check.verdict) ? check.leastWall.afterMm : check.leastWall.beforeMm, unit),
    unit,
  }),
  looked: () => null,
  sure: ({ check }) =>
    check.conformanceProbability === null || !cutTold(check.verdict)
      ? null
      : { figure: printSure(check.conformanceProbability) },
  indicated: ({ check, form: { lengthUnit: unit } }) =>
    check.dialledIn && cutTold(check.verdict)
      ? { figure: lengthFigure(Math.max(0, check.dialledIn.wallGainedMm), unit), unit: `${unit} saved` }
      : null,
  cut: ({ plan, check }) => (plan && cutTold(check.verdict) ? { figure: cuttingTime(plan.timeS) } : null),
  bending: () => null,
  marks: () => null,
  balance: ({ check, form: { lengthUnit } }) =>
    check.unbalance && cutTold(check.verdict)
      ? { figure: printAs(check.unbalance.gmm, UNBALANCE[lengthUnit]) }
      : null,
  clearances: () => null,
};

/** What a row says where its own findings say less. */
const SAYS: Partial<Readonly<Record<CoverRow, (props: CoverRowsProps, told: RowTold) => string | null>>> = {
  cut: ({ plan, check, form: { lengthUnit: unit } }, { status }) => {
    if (!cutTold(check.verdict) || status === 'caution') return null;
    if (plan === null) return 'It cleans up. No passes are planned: the lathe is not described yet.';
    const depths = passFigures(plan.passes, unit).map(({ depth }) => depth);
    const passes = depths.length === 1 ? '1 pass' : `${depths.length} passes`;
    const left = check.cutsLeft === null ? '' : ` Cuts left after it: ${check.cutsLeft}.`;
    return `${passes}: ${depths.join(', ')} ${unit}, at ${printNumber(plan.spindleRpm, 0)} rpm.${left}`;
  },
  indicated: ({ check: { dialledIn }, form: { lengthUnit: unit } }, { says }) =>
    dialledIn === null || says?.id !== 'dialled-in' || dialledIn.wallGainedMm < DIALLING_WORTH_MM
      ? null
      : `With shims, the cut would leave ${printLength(dialledIn.leastWallMm, unit)} at the thinnest station.`,
  balance: ({ check: { unbalance }, form: { lengthUnit: unit } }, { says }) => {
    if (says?.limit == null || unbalance === null) return null;
    const { heavySideDeg } = unbalance;
    const side = heavySideDeg === null ? '' : `The heavy side is at ${printNumber(heavySideDeg, 0)}°. `;
    const limit = printAs(says.limit, UNBALANCE[unit]);
    return `${side}The unbalance is ${says.status === 'pass' ? 'within' : 'more than'} the limit of ${limit}.`;
  },
  marks: ({ check: { heatMarks = [] }, form: { lengthUnit } }) =>
    heatMarksInWords(heatMarks, lengthUnit)[0] ?? null,
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
  wall: ({ form: { lengthUnit: unit }, check, shape }) => (
    <>
      <TrackFigure shape={shape} check={check} unit={unit} id="cover" />
      {cutTold(check.verdict) && <SectionFigure shape={shape} check={check} unit={unit} id="cover" />}
      <StationsAnswered check={check} unit={unit} />
    </>
  ),
  looked: () => null,
  sure: () => null,
  indicated: ({ form: { lengthUnit: unit }, check, shape }) =>
    cutTold(check.verdict) ? <TiltFigure shape={shape} check={check} unit={unit} id="cover" /> : null,
  cut: ({ form: { lengthUnit: unit }, check, plan, bending }) =>
    cutTold(check.verdict) ? (
      <>
        <WhatIf
          action="/cover/what-if"
          include="#cover-form"
          check={check}
          bending={bending?.bending ?? null}
          unit={unit}
          level={3}
        />
        <CutPlanPart plan={plan} unit={unit} id="cover" level={3} />
      </>
    ) : null,
  bending: ({ form, bending }) =>
    bending && (
      <BendingPart
        {...bending}
        unit={form.lengthUnit}
        id="cover"
        level={3}
        drawings={`/cover/bending?${new URLSearchParams(form.fields)}`}
        beside={{ families: form.families, chosen: form.fields.beside ?? '', form: 'cover-form' }}
      />
    ),
  marks: ({ check: { heatMarks = [] }, form: { lengthUnit } }) =>
    heatMarks.some(({ meanMm }) => meanMm > 0) ? <HeatMarksPart rows={heatMarks} unit={lengthUnit} /> : null,
  balance: () => null,
  clearances: () => null,
};
