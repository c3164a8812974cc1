import type { PaperWalls } from '../../../../shared/words/paper.ts';
import { UNIT_WORD } from '../../../../shared/words/print.ts';
import { FacePlan } from '../../../drawings/facePlan.tsx';
import { amendedSince } from '../jobHead.tsx';
import { type TypedText, withTextsInFull } from './longTexts.ts';
import { PaperDocument } from './paperDocument.tsx';
import { SheetFindings } from './sheetFindings.tsx';
import { SheetHead } from './sheetHead.tsx';
import type { SheetProps } from './sheetProps.ts';
import { SheetTitleBlock } from './sheetTitleBlock.tsx';
import { CutOnPaper, Foot, listsInFull, Statement, StudsOnPaper } from './sheetWork.tsx';
import { rowsInWords, StationTable } from './stationTable.tsx';

/** More have no room beside the face, and get sheets of their own. */
const STATIONS_BESIDE = 16;
/** With more the table beside the face is higher than it, and the caption goes below the face. */
const STATIONS_ABOVE_CAPTION = 12;
/** On a sheet of their own, in each of two columns. */
const STATIONS_IN_A_COLUMN = 40;

/** The job on paper: one page, and sheets of stations alone beyond sixteen, and of people's words beyond its room. */
export function SheetPage(whole: SheetProps) {
  const { printing, job, walls } = whole;
  const continued = continuation(walls);
  const fullFrom = 2 + continued.length;
  const { props, inFull } = withTextsInFull(whole, fullFrom, listsInFull(whole));
  const sheets = 1 + continued.length + inFull.length;
  return (
    <PaperDocument printing={printing} number={job.number} paper="sheet" title={`Job ${job.number}, sheet`}>
      <article class="page">
        <Notes {...props} />
        <SheetHead {...props} />
        <Face {...props} beside={continued.length === 0} />
        <SheetFindings {...props} />
        <div class="page-two">
          <CutOnPaper {...props} fullFrom={fullFrom} />
          <StudsOnPaper {...props} fullFrom={fullFrom} />
        </div>
        <Statement {...props} />
        <Foot {...props} />
        <SheetTitleBlock {...props} sheet={`1 of ${sheets}`} />
      </article>
      {continued.map((columns, i) => (
        <article class="page continued">
          <h2>Job {job.number}: every station</h2>
          <div class="page-two">
            {columns.map((from) => (
              <StationTable
                walls={walls}
                from={from}
                to={from + STATIONS_IN_A_COLUMN}
                unit={printing.frame.lengthUnit}
              />
            ))}
          </div>
          <SheetTitleBlock {...props} sheet={`${i + 2} of ${sheets}`} />
        </article>
      ))}
      {inFull.map((texts, i) => (
        <article class="page continued">
          <InFull number={job.number} texts={texts} />
          <SheetTitleBlock {...props} sheet={`${i + 2 + continued.length} of ${sheets}`} />
        </article>
      ))}
    </PaperDocument>
  );
}

/** What people typed, whole. */
function InFull({ number, texts }: { number: string; texts: readonly TypedText[] }) {
  return (
    <div>
      <h2>Job {number}: in full</h2>
      {texts.map(({ title, text }) => (
        <section class="statement">
          <h2>{title}</h2>
          <p class="said">{text}</p>
        </section>
      ))}
    </div>
  );
}

/** Of each further sheet, the stations its columns begin with. */
function continuation({ stations }: PaperWalls): readonly (readonly number[])[] {
  if (stations.length <= STATIONS_BESIDE) return [];
  const pages: number[][] = [];
  for (let from = 0; from < stations.length; from += 2 * STATIONS_IN_A_COLUMN) {
    const second = from + STATIONS_IN_A_COLUMN;
    pages.push(second < stations.length ? [from, second] : [from]);
  }
  return pages;
}

/** What has to be known before anything else is read. */
function Notes({ job, asItWas }: SheetProps) {
  const { decision } = job.sections;
  const notes = [
    ...(asItWas === null ? [] : [`This is the job as it was at revision ${asItWas}.`]),
    ...(amendedSince(job) === null ? [] : [amendedSince(job)]),
    ...(decision && job.outcome === null
      ? [
          `Decided at revision ${decision.revision}, but readings, inspection or cut changed since: decide again.`,
        ]
      : []),
  ];
  return notes.length === 0 ? null : <p class="page-note">{notes.join(' ')}</p>;
}

const SHOWN = {
  measured: 'wall measured after the cut',
  predicted: 'wall predicted after the cut',
  none: 'wall as measured',
} as const;

/** The face drawn, and its stations as a table beside it where they have room. */
function Face({ printing, shape, check, walls, beside }: SheetProps & { beside: boolean }) {
  const unit = printing.frame.lengthUnit;
  const { stations, after, thinnest } = walls;
  if (check === null || shape === null || stations.length === 0) {
    return <p class="page-empty">Nothing was measured.</p>;
  }
  const marks = [
    ...stations.flatMap(({ angleDeg, radiusMm, markMm }) =>
      markMm === null ? [] : [{ angleDeg, radiusMm, depthMm: markMm }],
    ),
    ...check.marks.map(({ angleDeg, radiusMm, depthMm }) => ({ angleDeg, radiusMm, depthMm })),
  ];
  return (
    <div class={`page-face${beside && stations.length > STATIONS_ABOVE_CAPTION ? ' page-face-full' : ''}`}>
      <figure class="drawing">
        <FacePlan
          id="sheet-plan"
          shape={shape}
          bossDiameterMm={shape.bossDiameterMm}
          rimDiameterMm={shape.rimDiameterMm}
          padDiameterMm={shape.padDiameterMm}
          stations={stations.map(({ angleDeg, radiusMm, beforeMm, afterMm }, i) => ({
            angleDeg,
            radiusMm,
            wallMm: beforeMm,
            wallAfterMm: after === 'none' ? null : afterMm,
            state: i === thinnest ? 'thinnest' : 'measured',
          }))}
          marks={marks}
          thinnest={thinnest}
          asMeasured={after === 'none'}
          unit={unit}
        />
      </figure>
      {beside && <StationTable walls={walls} from={0} to={stations.length} unit={unit} />}
      <p class="page-caption">
        {!beside && `${stations.length} stations: see the next sheet. `}
        Clutch side, stud 1 scribed on the rim. Figures: {SHOWN[after]}, {UNIT_WORD[unit]}; diamond: thinnest
        {marks.length > 0 && '; shaded: heat marks before the cut'}. {rowsInWords(walls, unit)}
      </p>
    </div>
  );
}
