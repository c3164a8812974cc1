import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import type { MeasuredCheck } from '../../../shared/words/cover.ts';
import type { Job } from '../../../shared/words/job.ts';
import { type LengthUnit, printAgainst, printLength } from '../../../shared/words/print.ts';
import type { StudChoice } from '../../../shared/words/stud/choices.ts';
import { FIT_STATUS, FIT_WORD } from '../../../shared/words/verdicts.ts';
import { StudInStack } from '../../drawings/studInStack.tsx';
import { type CoverDrawingShape, SectionFigure } from '../../parts/coverAnswer.tsx';
import { DrawnAsTyped } from '../../parts/form/drawnAsTyped.tsx';
import { Sign } from '../../parts/form/sign.tsx';

/** Which box of a cut is typed: of the pass that was made, or of the cut that is planned. */
export type CutTyped = 'pass' | 'plan';

const drawnAt = ({ number }: Job, what: string) => `/jobs/${encodeURIComponent(number)}/${what}`;

/** Beside the box of a cut: what it takes from the wall, fetched once the box is seen and anew as it is typed. */
export function CutDrawnAsTyped({ job, drawn }: { job: Job; drawn: CutTyped }) {
  return (
    <DrawnAsTyped
      id={`${drawn}-drawn`}
      from={drawnAt(job, `${drawn}-drawn`)}
      on="intersect once, input from:closest form delay:300ms"
    >
      <div class="cut-drawn" id={`${drawn}-drawn`} />
    </DrawnAsTyped>
  );
}

export interface CutDrawnProps {
  readonly drawn: CutTyped;
  readonly shape: CoverDrawingShape;
  readonly check: MeasuredCheck;
  readonly unit: LengthUnit;
}

/** The section through the thinnest station with this cut in it, and what it leaves in words. */
export function CutDrawn({ drawn, shape, check, unit }: CutDrawnProps) {
  const { leastWall, minimumWall } = check;
  const left = minimumWall
    ? `${printAgainst(leastWall.afterMm, minimumWall.mm, unit)} at the thinnest station; the minimum is ${printLength(minimumWall.mm, unit)}`
    : `${printLength(leastWall.afterMm, unit)} at the thinnest station`;
  return (
    <div class="cut-drawn" id={`${drawn}-drawn`}>
      <p data-tell>Leaves {left}.</p>
      <SectionFigure shape={shape} check={check} unit={unit} id={drawn} />
    </div>
  );
}

export interface StudDrawnProps {
  readonly choice: StudChoice;
  readonly stack: CatalogueStack;
  readonly pullForwardMm: number | null;
  readonly unit: LengthUnit;
}

/** The chosen stud in its stack, and another one once it is chosen. */
export function StudDrawnAsChosen({ job, ...drawn }: StudDrawnProps & { job: Job }) {
  return (
    <DrawnAsTyped id="stud-drawn" from={drawnAt(job, 'stud-drawn')} on="change from:#studs-form-stud">
      <StudDrawn {...drawn} />
    </DrawnAsTyped>
  );
}

export function StudDrawn({ choice: { match, entry }, stack, pullForwardMm, unit }: StudDrawnProps) {
  return (
    <figure class="drawing wide" id="stud-drawn">
      <figcaption data-tell>
        <Sign status={FIT_STATUS[match.fits]} /> {entry.name}: {FIT_WORD[match.fits]}.
      </figcaption>
      <StudInStack
        id="choice-stud"
        stud={entry.stud}
        stack={stack.stack}
        nut={stack.nut}
        check={match.check}
        pullForwardMm={pullForwardMm}
        name={entry.name}
        unit={unit}
      />
    </figure>
  );
}
