import type { ComponentChildren } from 'preact';
import type { GaugeReading } from '../../shared/words/gauges/gaugeReading.ts';
import { type LengthUnit, UNIT_WORD } from '../../shared/words/print.ts';
import { type CoverFigures, CoverLettered } from '../drawings/coverLettered.tsx';
import type { HalfSection } from '../drawings/coverSection.tsx';
import { GaugeBars } from '../drawings/gaugeBars.tsx';
import { NutAlone, type NutAloneProps } from '../drawings/nutAlone.tsx';
import { StudAlone, type StudAloneProps } from '../drawings/studAlone.tsx';
import { WasherAlone, type WasherAloneProps } from '../drawings/washerAlone.tsx';
import { DrawnAsTyped } from './form/drawnAsTyped.tsx';

/** What can be drawn of an entry as it is typed, and why the rest is left out. */
interface Typed {
  readonly leftOut: readonly string[];
}
interface Scaled extends Typed {
  /** Nothing in the drawing is at a usual share of something else. */
  readonly toScale: boolean;
}
type Given<Props> = Omit<Props, 'id' | 'unit'> & Scaled;

export interface CoverTyped extends Scaled {
  readonly kind: 'family';
  readonly section: HalfSection;
  readonly figures: CoverFigures;
}
export type StudTyped = { readonly kind: 'stud' } & Given<StudAloneProps>;
export type NutTyped = { readonly kind: 'nut' } & Given<NutAloneProps>;
export type WasherTyped = { readonly kind: 'washer' } & Given<WasherAloneProps>;

export interface GaugeTyped extends Typed {
  readonly kind: 'gauge';
  readonly reading: GaugeReading;
}

export type EntryTyped = CoverTyped | StudTyped | NutTyped | WasherTyped | GaugeTyped;

export interface DrawnFormProps {
  readonly typed: EntryTyped;
  readonly unit: LengthUnit;
  /** The entry of the catalog that is changed; what it keeps is not asked about. */
  readonly entryId?: string | undefined;
  readonly children?: ComponentChildren;
}

const ID = 'entry-drawn';

/** An entry of the catalog drawn beside its boxes. */
export function DrawnForm({ typed, unit, entryId, children }: DrawnFormProps) {
  return (
    <div class="drawn-form">
      <DrawnAsTyped id={ID} from={`/catalogue/${typed.kind}/new/drawing`} entryId={entryId}>
        <EntryDrawnNow typed={typed} unit={unit} />
      </DrawnAsTyped>
      {children}
    </div>
  );
}

export function EntryDrawnNow({ typed, unit }: Pick<DrawnFormProps, 'typed' | 'unit'>) {
  return (
    <figure class="drawing" id={ID}>
      <Drawing typed={typed} unit={unit} />
      <figcaption>
        <p class="hint">
          {VIEW[typed.kind]}
          {'toScale' in typed && ` ${scaleInWords(typed.toScale)} Lengths in ${UNIT_WORD[unit]}.`}
        </p>
        {typed.leftOut.map((sentence) => (
          <p class="note" data-tell>
            {sentence}
          </p>
        ))}
      </figcaption>
    </figure>
  );
}

const VIEW: Readonly<Record<EntryTyped['kind'], string>> = {
  family: 'Half section, engine side up.',
  stud: 'The stud on its pad, engine side at the right.',
  nut: 'Above the axis in section, below it from outside.',
  washer: 'Section through the middle.',
  gauge: 'Bars of one group to one scale. What is not entered counts as zero.',
};

function scaleInWords(toScale: boolean): string {
  return toScale ? 'To scale.' : 'What is blank is drawn as usual.';
}

function Drawing({ typed, unit }: Pick<DrawnFormProps, 'typed' | 'unit'>): ComponentChildren {
  const id = 'entry-drawing';
  switch (typed.kind) {
    case 'family':
      return <CoverLettered {...typed} id={id} unit={unit} />;
    case 'stud':
      return <StudAlone {...typed} id={id} unit={unit} />;
    case 'nut':
      return <NutAlone {...typed} id={id} unit={unit} />;
    case 'washer':
      return <WasherAlone {...typed} id={id} unit={unit} />;
    case 'gauge':
      return <GaugeBars reading={typed.reading} id={id} unit={unit} />;
  }
}
