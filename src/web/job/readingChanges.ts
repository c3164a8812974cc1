import { lengthInWords } from '../../../shared/quantity/fieldLines.ts';
import type { Writing } from '../../../shared/quantity/fieldText.ts';
import type { Family } from '../../../shared/words/catalogue.ts';
import type { Reading } from '../../../shared/words/job.ts';
import { briefLength } from '../../../shared/words/print.ts';
import { READING_WORD } from '../../../shared/words/readings.ts';
import type { Compared } from '../../../views/parts/sideBySide.tsx';
import { onSeveralRadii, placeOn } from '../../shop/placesOfJob.ts';

/** Only figures: typed so, it says nothing that the value does not. */
const BARE = /^[\d.,\s+\-−]*(mm)?$/;

export interface ReadingChanges {
  /** "3 readings added, 1 corrected". */
  readonly summary: string;
  readonly changes: readonly Compared[];
}

/** What one revision did to the readings: which were added, corrected or withdrawn, each by its place. */
export function readingChanges(
  added: readonly Reading[],
  all: readonly Reading[],
  cover: Family | undefined,
  writing: Writing,
): ReadingChanges {
  const counts = { added: 0, corrected: 0, withdrawn: 0 };
  const manyRadii = onSeveralRadii(all);
  const changes = added.map((reading): Compared => {
    const was = all.find((one) => one.id === reading.replaces) ?? null;
    counts[was === null ? 'added' : reading.valueMm === null ? 'withdrawn' : 'corrected']++;
    return {
      label: readingPlace(reading, cover, manyRadii, writing),
      before: was === null ? '' : valueInWords(was, writing),
      after: reading.valueMm === null ? 'withdrawn' : valueInWords(reading, writing),
    };
  });
  const told = Object.entries(counts).filter(([, n]) => n > 0);
  const summary = told
    .map(([did, n], i) => `${n}${i === 0 ? ` reading${n === 1 ? '' : 's'}` : ''} ${did}`)
    .join(', ');
  return { summary, changes };
}

/** "Wall behind stud 2", "Heat mark depth between studs 1 and 2 after the cut, r 110 mm". */
function readingPlace(
  reading: Reading,
  cover: Family | undefined,
  manyRadii: boolean,
  writing: Writing,
): string {
  const after = reading.pass === 'after' ? ' after the cut' : '';
  const radius = manyRadii ? `, r ${briefLength(reading.radiusMm, writing.lengthUnit)}` : '';
  return `${READING_WORD.before[reading.kind]} ${placeOn(cover, reading.angleDeg)}${after}${radius}`;
}

function valueInWords(reading: Reading, writing: Writing): string {
  const typed = BARE.test(reading.typed) ? '' : ` (typed ${reading.typed})`;
  const doubted = reading.doubtful
    ? ', not confirmed'
    : reading.confirmed
      ? ', asked about and confirmed'
      : '';
  return `${lengthInWords(reading.valueMm, writing)}${typed}${doubted}`;
}
