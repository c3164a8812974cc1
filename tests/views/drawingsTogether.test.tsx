import type { VNode } from 'preact';
import { describe, it } from 'vitest';
import { FacePlan } from '../../views/drawings/facePlan.tsx';
import { StudInStack } from '../../views/drawings/studInStack.tsx';
import { TrackUnrolled } from '../../views/drawings/trackUnrolled.tsx';
import { renderPart } from '../../views/render.ts';
import { expectSound } from './markup.ts';
import { nut, shape, stack, stud, track } from './samples.ts';

const MEASURES = { bossDiameterMm: 90, rimDiameterMm: 304, padDiameterMm: 24 };

describe('several drawings on one page', () => {
  it('share no id', () => {
    const two = (id: string): VNode => (
      <>
        <FacePlan id={`${id}-p`} shape={shape(5)} {...MEASURES} stations={[]} marks={[]} unit="in" />
        <TrackUnrolled id={`${id}-t`} check={track()} studCount={5} unit="in" />
        <StudInStack
          id={`${id}-s`}
          stud={stud}
          stack={stack}
          nut={nut}
          pullForwardMm={4}
          check={null}
          unit="in"
        />
      </>
    );
    expectSound(
      renderPart(
        <div>
          {two('a')}
          {two('b')}
        </div>,
      ),
    );
  });
});
