import { type LengthUnit, UNIT_WORD } from '../../shared/words/print.ts';
import { StackDrawn, type StackDrawnProps } from '../drawings/stackDrawn.tsx';
import { DrawnAsTyped } from './form/drawnAsTyped.tsx';

/** What can be drawn of a stack as it is typed, and why the rest is left out. */
export interface StackTyped extends Omit<StackDrawnProps, 'id' | 'unit'> {
  readonly leftOut: readonly string[];
}

export interface StackDrawnPartProps {
  readonly typed: StackTyped;
  readonly unit: LengthUnit;
  /** The entry of the catalog that is changed; what it keeps is not asked about. */
  readonly entryId?: string | undefined;
}

/** The stack drawn beside its boxes, and anew when one of them changes. */
export function StackDrawnPart({ typed, unit, entryId }: StackDrawnPartProps) {
  return (
    <DrawnAsTyped
      id="stack-drawn"
      from="/stud/drawn"
      on="input from:#stack-boxes delay:400ms, input from:#f-pull delay:400ms"
      entryId={entryId}
    >
      <StackDrawnNow typed={typed} unit={unit} />
      <noscript>
        <button class="button" type="submit" name="add" value="drawing" id="draw-stack">
          Draw the stack
        </button>
      </noscript>
    </DrawnAsTyped>
  );
}

export function StackDrawnNow({ typed, unit }: Omit<StackDrawnPartProps, 'entryId'>) {
  const { leftOut, ...drawn } = typed;
  const any = drawn.layers.length > 0;
  return (
    <figure class="drawing" id="stack-drawn">
      <p class="view-caption">
        {any
          ? `The stack as typed, to scale. Lengths in ${UNIT_WORD[unit]}.`
          : 'The stack is drawn here, to scale, as its layers are entered.'}
      </p>
      {any && <StackDrawn {...drawn} id="stack-drawing" unit={unit} />}
      <figcaption>
        {leftOut.map((sentence) => (
          <p class="note" data-tell>
            {sentence}
          </p>
        ))}
        {drawn.layers.some(({ holeDiameterMm }) => holeDiameterMm === null) && (
          <p class="hint">Dashed: the hole diameter is not entered.</p>
        )}
      </figcaption>
    </figure>
  );
}
