import type { ComponentChildren } from 'preact';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import {
  CutDrawn,
  type CutDrawnProps,
  type CutTyped,
  StudDrawn,
  type StudDrawnProps,
} from './drawnParts.tsx';

export interface CutDrawnPageProps {
  readonly frame: Frame;
  readonly drawn: CutTyped;
  /** null where there is nothing to draw. */
  readonly shown: Pick<CutDrawnProps, 'shape' | 'check'> | null;
  /** What is wrong with what was typed. */
  readonly why: string | null;
  readonly back: string;
}

/** A cut as it is typed, drawn in the wall: a form takes the drawing alone. */
export function CutDrawnPage({ frame, drawn, shown, why, back }: CutDrawnPageProps) {
  return (
    <DrawnPage frame={frame} title="Depth of cut, drawn" back={back}>
      {shown ? (
        <CutDrawn drawn={drawn} {...shown} unit={frame.lengthUnit} />
      ) : (
        <div class="cut-drawn" id={`${drawn}-drawn`}>
          <p class="note" data-tell>
            The cut is not drawn. {why ?? 'Measure the wall first.'}
          </p>
        </div>
      )}
    </DrawnPage>
  );
}

export interface StudDrawnPageProps {
  readonly frame: Frame;
  readonly drawn: Omit<StudDrawnProps, 'unit'> | null;
  readonly back: string;
}

/** The stud that is chosen, drawn in its stack. */
export function StudDrawnPage({ frame, drawn, back }: StudDrawnPageProps) {
  return (
    <DrawnPage frame={frame} title="Stud, drawn" back={back}>
      {drawn ? (
        <StudDrawn {...drawn} unit={frame.lengthUnit} />
      ) : (
        <figure class="drawing wide" id="stud-drawn">
          <figcaption data-tell>Choose the flexplate stack first. Then its stud is drawn here.</figcaption>
        </figure>
      )}
    </DrawnPage>
  );
}

function DrawnPage(props: { frame: Frame; title: string; back: string; children: ComponentChildren }) {
  const { frame, title, back, children } = props;
  return (
    <Layout title={title} here="jobs" {...frame}>
      <h1>{title}</h1>
      {children}
      <p>Nothing is saved by looking.</p>
      <div class="actions">
        <a class="button first" href={back}>
          Back
        </a>
      </div>
    </Layout>
  );
}
