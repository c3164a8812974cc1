import type { LengthUnit } from '../../shared/words/print.ts';
import { type CoverFigures, CoverLettered } from '../drawings/coverLettered.tsx';
import type { HalfSection } from '../drawings/coverSection.tsx';

/** What can be drawn of a cover type as it is typed, and why the rest is left out. */
export interface CoverTyped {
  readonly section: HalfSection;
  readonly figures: CoverFigures;
  /** Nothing in the drawing is at a usual share of something else. */
  readonly toScale: boolean;
  readonly leftOut: readonly string[];
}

export interface CoverDrawnPartProps {
  readonly typed: CoverTyped;
  readonly unit: LengthUnit;
  /** The entry of the catalog that is changed; what it keeps is not asked about. */
  readonly entryId?: string | undefined;
}

/** The cover type drawn beside its boxes, and anew when one of them changes. */
export function CoverDrawnPart({ typed, unit, entryId }: CoverDrawnPartProps) {
  return (
    <div
      class="beside-boxes"
      hx-get="/catalogue/family/new/drawing"
      hx-include="closest form"
      hx-params="not who,why,note,back"
      {...(entryId !== undefined && { 'hx-vals': JSON.stringify({ entry: entryId }) })}
      hx-trigger="input from:closest form delay:300ms"
      hx-target="#cover-drawn"
      hx-select="#cover-drawn"
      hx-select-oob="unset"
      hx-swap="outerHTML"
      hx-push-url="false"
      hx-sync="this:queue last"
    >
      <CoverDrawnNow typed={typed} unit={unit} />
    </div>
  );
}

export function CoverDrawnNow({ typed, unit }: Omit<CoverDrawnPartProps, 'entryId'>) {
  const { section, figures, toScale, leftOut } = typed;
  return (
    <figure class="drawing" id="cover-drawn">
      <CoverLettered id="cover-drawing" section={section} figures={figures} unit={unit} />
      <figcaption>
        <p class="hint">
          Half section, engine side up. {toScale ? 'To scale.' : 'What is blank is drawn as usual.'} Lengths
          in {unit === 'in' ? 'inches' : 'millimeters'}.
        </p>
        <div aria-live="polite">
          {leftOut.map((sentence) => (
            <p class="note">{sentence}</p>
          ))}
        </div>
      </figcaption>
    </figure>
  );
}
