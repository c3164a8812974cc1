import { briefLength, printAs, printNumber, WAVINESS } from '../../../../shared/words/print.ts';
import type { ExampleProps } from './exampleCover.tsx';

/** Why marks come back behind the studs, in a paragraph. */
export function ForAMachinist({ unit, full, thin, walls }: ExampleProps) {
  return (
    <>
      <h2>For the machinist</h2>
      <p>
        When the lock-up comes on, oil presses the lining against the face, and pushes the whole cover toward
        the engine. The pads under the studs are thick, so the cover gives least there. Between the studs it
        bows out a little more. The lining is squeezed hardest where the cover gives least: behind each stud.
        There it slips hotter and burns first. That is why heat marks are found behind the studs.
      </p>
      <p>
        In the example below the cover moves only {printAs(full.rippleMm, WAVINESS[unit])} more between the
        studs than behind them. Yet the lining presses {printNumber(full.peakOverMean, 2)} times as hard there
        as on average. With {briefLength(walls.thinMm, unit)} left on the friction surface instead of{' '}
        {briefLength(walls.fullMm, unit)} it is {printNumber(thin.peakOverMean, 2)} times.
      </p>
      <p>
        So a cover faced thin marks sooner. A stiffening ring, or a stiffer cover, makes the pressure more
        even. These figures compare one cover with another. They do not promise how long one lasts.
      </p>
    </>
  );
}
