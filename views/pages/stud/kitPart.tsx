import type { LengthUnit } from '../../../shared/words/print.ts';
import type { Kit, NutChoice } from '../../../shared/words/stud/kit.ts';
import { FIT_STATUS, FIT_WORD } from '../../../shared/words/verdicts.ts';
import { Sign } from '../../parts/form/sign.tsx';
import { nutInWords, shelfInWords, washerInWords } from './shelfParts.tsx';

/** What goes out with the stud: how many, which nut, washer and shims, and why another nut does not suit. */
export function KitPart({ kit, studName, unit }: { kit: Kit; studName: string; unit: LengthUnit }) {
  const { count, nut, washer, shims, missing } = kit;
  const times = count === null ? '' : `${count} × `;
  const parts = [...(washer ? [washer] : []), ...shims];
  const others = kit.nuts.filter((one) => one !== nut && !one.otherThread);
  const otherThread = kit.nuts.filter((one) => one.otherThread).length;
  return (
    <section id="kit">
      <h2>What to hand over</h2>
      <ul class="plain">
        <li>
          {times}
          {studName}
        </li>
        {nut && (
          <li id="kit-nut">
            {times}
            <b>{nut.entry.name}</b>: {nutInWords(nut.entry, unit)}
            {nut.fits === 'with-care' && `. Take care: ${nut.because}`}
          </li>
        )}
        {parts.map(({ entry }) => (
          <li>
            {times}
            <b>{entry.name}</b>: {washerInWords(entry, unit)}
          </li>
        ))}
      </ul>
      {missing.map((sentence) => (
        <p class="note">{sentence}</p>
      ))}
      {others.length > 0 && (
        <details class="more-findings">
          <summary>Other nuts of this thread</summary>
          <ul class="plain">
            {others.map((one) => (
              <OtherNut nut={one} />
            ))}
          </ul>
          {otherThread > 0 && <p class="hint">{otherThread} more with a different thread.</p>}
        </details>
      )}
    </section>
  );
}

function OtherNut({ nut: { fits, entry, because } }: { nut: NutChoice }) {
  const shelf = shelfInWords(entry);
  return (
    <li>
      <Sign status={FIT_STATUS[fits]} /> <b>{entry.name}</b>
      {shelf !== '' && ` (${shelf})`}, {FIT_WORD[fits]}: {because}
    </li>
  );
}
