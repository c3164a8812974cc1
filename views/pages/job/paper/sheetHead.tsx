import { isMeasured } from '../../../../shared/words/cover.ts';
import type { Job } from '../../../../shared/words/job.ts';
import { THINNEST_WORD } from '../../../../shared/words/paper.ts';
import { type LengthUnit, lengthFigure, printLength } from '../../../../shared/words/print.ts';
import { DECISION_WORD, VERDICT_WORD } from '../../../../shared/words/verdicts.ts';
import { Qr } from '../../../parts/qr.tsx';
import { When } from '../../../parts/when.tsx';
import { lookedSummary } from '../look.tsx';
import { STAGE_WORD } from '../stepWords.ts';
import type { SheetProps } from './sheetProps.ts';

/** What was decided, the figure it stands on, and the way back to the job. */
export function SheetHead(props: SheetProps) {
  const { job, qr } = props;
  return (
    <header class="page-head">
      <Decision {...props} />
      <Deciding {...props} />
      <Qr modules={qr} label={`Job ${job.number}`} />
    </header>
  );
}

function Decision({ job, check, cut, findings }: SheetProps) {
  const { decision } = job.sections;
  const decided = decision !== null && job.outcome !== null ? decision : null;
  const saidBelow = findings.notOk.some(({ when, overruled }) => when === 'before' && overruled !== null);
  return (
    <div>
      <p class="label">{decided ? 'Decision' : 'Not decided yet'}</p>
      <h1 class="large">{decided ? decidedInWords(decided.body.decision, cut) : STAGE_WORD[job.stage]}</h1>
      <p>
        {decided ? (
          <>
            Decided by {decided.who}, <When at={decided.at} />.{' '}
          </>
        ) : (
          check && `Verdict: ${lowered(VERDICT_WORD[check.verdict])}. `
        )}
        {stageInWords(job)} {lookedSummary(job)}.
      </p>
      {decided && decided.body.reason !== '' && !saidBelow && (
        <p>
          {decided.who}: “{decided.body.reason}”
        </p>
      )}
    </div>
  );
}

function decidedInWords(decision: keyof typeof DECISION_WORD, cut: string | null): string {
  return decision === 'face' && cut !== null ? `${DECISION_WORD.face}: ${cut}` : DECISION_WORD[decision];
}

function lowered(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

const DONE: Partial<Record<Job['stage'], string>> = {
  'to-cut': 'Not cut yet.',
  'to-verify': 'Cut, not re-measured yet.',
  'to-sign': 'Not signed yet.',
};

/** How far the cut has come; of a cover that is replaced there is none. */
function stageInWords(job: Job): string {
  if (job.outcome === 'replace') return '';
  if (job.stage === 'signed') return 'Cut and re-measured.';
  return DONE[job.stage] ?? '';
}

/** The figure that decides, large; where the cover is replaced, why. */
function Deciding({ printing, job, check, walls }: SheetProps) {
  const unit = printing.frame.lengthUnit;
  const { stations, thinnest, after } = walls;
  const place = thinnest === null ? undefined : stations[thinnest];
  const mm = place && (after === 'none' ? place.beforeMm : place.afterMm);
  if (check !== null && !isMeasured(check)) {
    return (
      <div>
        <p class="label">Wall</p>
        <p class="large">Not measured</p>
        <p>{check.because}</p>
      </div>
    );
  }
  if (check === null || place === undefined || mm === null || mm === undefined) return <div />;
  const row = place.row === 'inner' || place.row === 'middle' || place.row === 'outer';
  return (
    <div>
      <p class="label">{THINNEST_WORD[after]}</p>
      <p class="large">
        {lengthFigure(mm, unit)} <span>{unit}</span>
      </p>
      <p>
        Station {thinnest! + 1}, {place.place}
        {row && `, ${place.row} row`}. {besideMinimum(check.minimumWall, mm, unit)}
      </p>
      {check.verdict === 'replace' && job.outcome !== 'face' && <p>{check.because}</p>}
    </div>
  );
}

/** The difference is that of the figures as printed, so that it can be reckoned again from them. */
function besideMinimum(
  minimum: { readonly mm: number; readonly source: string } | null,
  mm: number,
  unit: LengthUnit,
): string {
  if (minimum === null) return 'No minimum is set.';
  const printed = (value: number) => Number(lengthFigure(value, unit));
  const decimals = lengthFigure(mm, unit).split('.')[1]?.length ?? 0;
  const apart = printed(mm) - printed(minimum.mm);
  const beside =
    apart === 0
      ? 'just at it'
      : `${Math.abs(apart).toFixed(decimals)} ${unit} ${apart < 0 ? 'below' : 'above'} it`;
  return `Minimum ${printLength(minimum.mm, unit)} (${minimum.source}): ${beside}.`;
}
