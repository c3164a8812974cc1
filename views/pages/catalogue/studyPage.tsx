import type { Answer } from '../../../shared/words/answer.ts';
import { printDay } from '../../../shared/words/day.ts';
import {
  type GaugeStudy,
  type KeptStudy,
  type StudyAnswer,
  type StudyMeans,
  standingReadings,
  stationOf,
  type VarianceRow,
} from '../../../shared/words/gauges/gaugeStudies.ts';
import { briefLength, type LengthUnit, MM_PER_UNIT, printNumber } from '../../../shared/words/print.ts';
import { ReadingsByPerson } from '../../drawings/readingsByPerson.tsx';
import { SpreadShares } from '../../drawings/spreadShares.tsx';
import { may } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { Working } from '../../parts/findingList.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { type KeyFigure, KeyFigures } from '../../parts/keyFigures.tsx';
import { When } from '../../parts/when.tsx';
import type { StudyPageProps } from './studyPageProps.ts';
import { readingInWords, WithdrawReading } from './studyWithdraw.tsx';
import { planInWords } from './studyWords.ts';

export interface StudyDoneProps extends StudyPageProps {
  readonly answer: StudyAnswer;
  /** null where too little is known of it. */
  readonly means: StudyMeans | null;
}

/** What a study says, when it is over. */
export function StudyPage(props: StudyDoneProps) {
  const { frame, gauge, study, answer, means, faults, act } = props;
  const { variance, repeatsOnly } = answer;
  return (
    <Layout title={`Study ${study.number}, ${gauge.name}`} here="catalogue" {...frame}>
      <link rel="stylesheet" href="/assets/lists.css" />
      <h1>
        Study {study.number} of {gauge.name}
      </h1>
      <p class="why">
        {planInWords(study)}. Set up by {study.who}, {printDay(study.day)}.{' '}
        <a class="no-print" href={`/gauges/${encodeURIComponent(study.gaugeId)}/studies`}>
          All studies of this gauge
        </a>
      </p>
      {act === 'read' && <ErrorSummary faults={faults} />}
      <Stopped {...props} />
      {variance !== null && <Spread {...props} variance={variance} />}
      {variance === null && repeatsOnly !== null && (
        <section>
          <KeyFigures
            figures={[
              {
                label: 'Repeatability',
                value: briefLength(repeatsOnly.repeatability.value!, frame.lengthUnit),
                note: `One standard deviation, ${repeatsOnly.degreesOfFreedom} degrees of freedom`,
              },
            ]}
          />
          <p>How people differ is not known: that needs two whole rounds.</p>
        </section>
      )}
      {variance === null && repeatsOnly === null && (
        <p class="note">No station was read twice by one person, so nothing is known of the gauge.</p>
      )}
      {means !== null && variance !== null && <Means {...props} means={means} variance={variance} />}
      <Withdrawn {...props} />
      <div class="actions">
        <a class="button" href={`/studies/${study.number}/readings.csv`} id="study-csv">
          Readings as CSV
        </a>
      </div>
      {may(frame, 'recorder') && standingReadings(study).some((one) => one !== null) && (
        <WithdrawReading {...props} />
      )}
    </Layout>
  );
}

function Stopped({ study, answer }: StudyDoneProps) {
  const { rounds, leftOver, takenAgain } = answer;
  return (
    <>
      {study.stopped !== null && (
        <p class="note" id="stopped">
          Stopped early by {study.stopped.who}, <When at={study.stopped.at} />: {study.stopped.why}.{' '}
          {rounds === 1 ? '1 whole round was' : `${rounds} whole rounds were`} read
          {leftOver > 0 &&
            `; ${leftOver} ${leftOver === 1 ? 'reading' : 'readings'} beyond ${leftOver === 1 ? 'is' : 'are'} saved${rounds < 2 ? '' : ' and left out'}`}
          .
        </p>
      )}
      {takenAgain > 0 && (
        <p class="note">
          {takenAgain === 1 ? '1 reading was' : `${takenAgain} readings were`} taken again after the figures
          could be seen.
        </p>
      )}
    </>
  );
}

function Spread({ frame, study, variance }: StudyDoneProps & { readonly variance: GaugeStudy }) {
  const unit = frame.lengthUnit;
  const { repeatability, reproducibility, both, share, categories } = variance;
  const figures: KeyFigure[] = [
    { label: 'Repeatability', value: briefLength(repeatability.value!, unit), note: 'One person, again' },
    { label: 'Reproducibility', value: briefLength(reproducibility.value!, unit), note: 'A change of hands' },
    {
      label: 'Both together',
      value: briefLength(both.value!, unit),
      note:
        share.value === null
          ? 'All readings are alike'
          : `${printNumber(share.value, 2)} % of the total spread`,
    },
    {
      label: 'Sizes told apart',
      value: categories === null ? '—' : String(categories),
      note: 'Among these covers; 5 or more is usual',
    },
  ];
  return (
    <section id="spread">
      <KeyFigures figures={figures} />
      <p class="hint">Each is one standard deviation of a reading.</p>
      <div class="two">
        <figure class="drawing">
          <p class="view-caption">What the spread of all readings is made of</p>
          <SpreadShares shares={sharesOf(variance)} />
          <figcaption>Shares of the variance, which add up; standard deviations do not.</figcaption>
        </figure>
        <figure class="drawing">
          <p class="view-caption">
            Every reading, by {study.plan.stations === 1 ? 'cover' : 'station'} <small>{unit}</small>
          </p>
          <ReadingsByPerson stations={drawnOf(study)} people={study.plan.people} unit={unit} />
        </figure>
      </div>
      <Sources variance={variance} unit={unit} />
      <Squares variance={variance} unit={unit} />
    </section>
  );
}

const squared = ({ value }: Answer) => (value ?? 0) ** 2;

function sharesOf({ repeatability, betweenPeople, peopleByCover, betweenCovers, total, pooled }: GaugeStudy) {
  const whole = squared(total) || 1;
  return [
    { name: 'Repeatability', share: squared(repeatability) / whole },
    { name: 'Between people', share: squared(betweenPeople) / whole },
    ...(pooled ? [] : [{ name: 'People by cover', share: squared(peopleByCover) / whole }]),
    { name: 'Between covers', share: squared(betweenCovers) / whole },
  ];
}

function drawnOf(study: KeptStudy) {
  const { plan, order } = study;
  const standing = standingReadings(study);
  return Array.from({ length: plan.covers * plan.stations }, (_, station) => ({
    label: String(stationOf(plan, station).cover),
    byPerson: plan.people.map((_, person) =>
      order.flatMap((turn, place) => {
        const reading = turn.station === station && turn.person === person ? standing[place] : null;
        return reading ? [reading.valueMm] : [];
      }),
    ),
  }));
}

/** More decimals than anyone reads on the gauge: these are figures to be checked against another working. */
const length = (mm: number, unit: LengthUnit) => printNumber(mm / MM_PER_UNIT[unit], unit === 'mm' ? 6 : 7);

/** Squares of small lengths are smaller still: five figures at least. */
function area(mm2: number, unit: LengthUnit): string {
  const value = mm2 / MM_PER_UNIT[unit] ** 2;
  return printNumber(value, value === 0 ? 5 : Math.min(14, Math.max(5, 4 - Math.floor(Math.log10(value)))));
}

function Sources({ variance, unit }: { readonly variance: GaugeStudy; readonly unit: LengthUnit }) {
  const total = variance.total.value!;
  const rows: readonly (readonly [string, Answer])[] = [
    ['Repeatability', variance.repeatability],
    ['Between people', variance.betweenPeople],
    ['People by cover', variance.peopleByCover],
    ['Reproducibility', variance.reproducibility],
    ['Repeatability and reproducibility', variance.both],
    ['Between covers', variance.betweenCovers],
    ['Total', variance.total],
  ];
  return (
    <>
      <h2>Where the spread comes from</h2>
      <section class="scroll" tabindex={0} aria-label="Where the spread comes from">
        <table class="figures" id="sources">
          <thead>
            <tr>
              <th scope="col">Source</th>
              <th scope="col">Standard deviation, {unit}</th>
              <th scope="col">Of the total spread</th>
              <th scope="col">Of the variance</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, one]) => (
              <tr>
                <th scope="row">{name}</th>
                <td>{length(one.value!, unit)}</td>
                <td>{total === 0 ? '—' : `${printNumber((100 * one.value!) / total, 2)} %`}</td>
                <td>
                  {total === 0 ? '—' : `${printNumber((100 * squared(one)) / squared(variance.total), 2)} %`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <details class="change no-print">
        <summary>Working of each</summary>
        {rows.map(([name, one]) => (
          <>
            <h3>{name}</h3>
            <Working answer={one} unit={unit} />
          </>
        ))}
      </details>
    </>
  );
}

function Squares({ variance, unit }: { readonly variance: GaugeStudy; readonly unit: LengthUnit }) {
  const rows: readonly (readonly [string, VarianceRow])[] = [
    ['People', variance.people],
    ['Covers', variance.covers],
    ['People by cover', variance.interaction],
    ['Repeats', variance.within],
  ];
  const nu = rows.reduce((sum, [, one]) => sum + one.degreesOfFreedom, 0);
  return (
    <>
      <h2>Analysis of variance</h2>
      <section class="scroll" tabindex={0} aria-label="Analysis of variance">
        <table class="figures" id="squares">
          <thead>
            <tr>
              <th scope="col">Source</th>
              <th scope="col">Sum of squares, {unit}²</th>
              <th scope="col">Degrees of freedom</th>
              <th scope="col">Mean square, {unit}²</th>
              <th scope="col">F</th>
              <th scope="col">By chance</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(([name, one]) => (
              <tr>
                <th scope="row">{name}</th>
                <td>{area(one.squares, unit)}</td>
                <td>{one.degreesOfFreedom}</td>
                <td>{area(one.squares / one.degreesOfFreedom, unit)}</td>
                <td>{one.fRatio === null ? '—' : printNumber(one.fRatio, 2)}</td>
                <td>{chanceInWords(one.chance)}</td>
              </tr>
            ))}
            <tr>
              <th scope="row">Total</th>
              <td>{area(variance.totalSquares, unit)}</td>
              <td>{nu}</td>
              <td />
              <td />
              <td />
            </tr>
          </tbody>
        </table>
      </section>
      <p class="hint" id="interaction">
        {variance.pooled
          ? 'People by cover: no more than chance would make it, so it is counted with the repeats.'
          : 'People by cover: more than chance would make it. People read some covers differently than others.'}{' '}
        ISO 22514-7, analysis of variance, from memory.{' '}
        <a href="/how/measure/gaugeStudy">How it is worked out</a>
      </p>
    </>
  );
}

function chanceInWords(chance: number | null): string {
  if (chance === null) return '—';
  return chance < 0.0001 ? 'under 0.01 %' : `${printNumber(100 * chance, 2)} %`;
}

function Means({
  frame,
  gauge,
  means,
  variance,
}: StudyDoneProps & { readonly means: StudyMeans; readonly variance: GaugeStudy }) {
  const unit = frame.lengthUnit;
  const found = variance.repeatability.value!;
  const sure = `${printNumber(100 * means.confidence, 1).replace(/\.0$/, '')} %`;
  return (
    <section id="means">
      <h2>What it means here</h2>
      <p>
        The shop’s confidence required is {sure}. One reading is enough for that when it is above the minimum
        by at least:
      </p>
      <ul>
        <li>{briefLength(means.marginEnteredMm, unit)} with what the catalog has of the gauge</li>
        <li>{briefLength(means.marginFoundMm, unit)} with what this study found</li>
      </ul>
      <p>
        {means.enteredMm === null
          ? `The catalog has no repeatability for this gauge; the study found ${briefLength(found, unit)}.`
          : `The catalog has a repeatability of ${briefLength(means.enteredMm, unit)}; the study found ${briefLength(found, unit)}.`}{' '}
        Repeats by one person average out repeatability, not how people differ.
      </p>
      {may(frame, 'keeper') && (
        <p class="no-print">
          <a
            class="button"
            href={`/catalogue/gauge/${encodeURIComponent(gauge.id)}#repeatability`}
            id="use-found"
          >
            Open the gauge to enter it
          </a>
        </p>
      )}
    </section>
  );
}

function Withdrawn({ study, frame }: StudyDoneProps) {
  const withdrawn = study.readings.filter((one) => one.withdrawn !== null);
  if (withdrawn.length === 0) return null;
  return (
    <section id="withdrawn">
      <h2>Withdrawn readings</h2>
      <ul>
        {withdrawn.map((one) => (
          <li>
            {readingInWords(study, one.place)}: {briefLength(one.valueMm, frame.lengthUnit)}, withdrawn by{' '}
            {one.withdrawn!.who}, <When at={one.withdrawn!.at} />: {one.withdrawn!.why}
          </li>
        ))}
      </ul>
    </section>
  );
}
