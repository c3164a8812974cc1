import type { ComponentChildren } from 'preact';
import type { Answer } from '../../shared/words/answer.ts';
import type { Formula, WorkedExample } from '../../shared/words/formula.ts';
import { SymbolsDrawn, symbolsOf } from '../drawings/symbols/symbolsDrawn.tsx';
import type { Frame } from '../frame.ts';
import { Layout } from '../layout.tsx';
import { Cautions } from '../parts/caution.tsx';
import { Working } from '../parts/findingList.tsx';
import { FormulaText, nameInWords } from '../parts/how/formulaText.tsx';
import { MathLine } from '../parts/how/mathLine.tsx';

export interface HowSubject {
  readonly id: string;
  readonly title: string;
  readonly about: string;
}

export interface HowIndexProps {
  readonly frame: Frame;
  readonly subjects: readonly (HowSubject & { readonly count: number })[];
}

/** Every calculation, by what it is about. */
export function HowIndexPage({ frame, subjects }: HowIndexProps) {
  return (
    <Layout title="How it is worked out" here="worked-out" {...frame}>
      <h1>How it is worked out</h1>
      <p>
        The calculations behind the numbers. Each is shown with its formula, its symbols, where it holds, its
        source, and an example worked out as you open the page. Formulas are in millimeters and other SI
        units, as the calculations are.
      </p>
      <ul class="rows">
        {subjects.map(({ id, title, about, count }) => (
          <li>
            <a class="row how-row" href={`/how/${id}`}>
              <span class="row-text">
                <b>{title}</b>
                <small>{about}</small>
              </span>
              <span class="row-end-word">
                {count === 0 ? '' : count === 1 ? '1 calculation' : `${count} calculations`}
              </span>
            </a>
          </li>
        ))}
        <li>
          <a class="row how-row" href="/how/words">
            <span class="row-text">
              <b>Words used here</b>
              <small>What each word on the screen means, and what each box wants.</small>
            </span>
          </a>
        </li>
      </ul>
      <h2>What a source is worth</h2>
      <p>
        A standard or handbook is named with its edition. “From memory” means its page was not at hand when
        the formula was written. “First principles” means it follows from geometry or equilibrium. “Common
        practice, no source” is what the trade does, with nothing printed to point to. “This program’s own
        rule” is a choice made here.
      </p>
      <Cautions kinds={['general', 'lathe', 'crack', 'torque']} />
    </Layout>
  );
}

export interface CalculationListed {
  /** In its address. */
  readonly id: string;
  readonly name: string;
  /** What it finds. */
  readonly finds: string;
}

export interface HowPageProps {
  readonly frame: Frame;
  readonly subject: HowSubject;
  readonly calculations: readonly CalculationListed[];
  /** What is told before the single calculations. */
  readonly children?: ComponentChildren;
}

/** One subject: what it is about, and each of its calculations a press away. */
export function HowPage({ frame, subject, calculations, children }: HowPageProps) {
  return (
    <Layout title={`How it is worked out: ${subject.title}`} here="worked-out" {...frame}>
      <p class="back">
        <a href="/how">How it is worked out</a>
      </p>
      <h1>{subject.title}</h1>
      <p>{subject.about}</p>
      <h2 id="calculations">The calculations</h2>
      {calculations.length === 0 ? (
        <p class="note">
          The formulas can’t be shown: this copy of the program came without its source folder. Everything
          else works.
        </p>
      ) : (
        <ul class="calculations">
          {calculations.map(({ id, name, finds }) => (
            <li>
              <a href={`/how/${subject.id}/${id}`}>{name}</a>
              <small>{finds}</small>
            </li>
          ))}
        </ul>
      )}
      {children}
      <Cautions kinds={['general', 'lathe', 'crack', 'torque']} />
    </Layout>
  );
}

export interface CalculationProps {
  readonly frame: Frame;
  readonly subject: HowSubject;
  readonly id: string;
  /** One file may say it of two. */
  readonly formulas: readonly Formula[];
  readonly example: WorkedExample | null;
  /** The same with the values of the page somebody came from. */
  readonly here: {
    readonly name: string;
    readonly href: string;
    readonly workings: readonly { readonly title: string | null; readonly answer: Answer }[];
  } | null;
  readonly before: CalculationListed | null;
  readonly after: CalculationListed | null;
}

/** One calculation: its words and formula, the drawing that names its symbols, and an example worked out here. */
export function CalculationPage(props: CalculationProps) {
  const { frame, subject, id, formulas, example, here, before, after } = props;
  const name = nameInWords(id);
  const drawing = symbolsOf(`${subject.id}/${id}`);
  return (
    <Layout title={`How it is worked out: ${name}`} here="worked-out" {...frame}>
      <p class="back">
        <a href="/how">How it is worked out</a> · <a href={`/how/${subject.id}`}>{subject.title}</a>
      </p>
      <h1 class="calculation-name">{name}</h1>
      <div class={drawing === null ? 'calculation' : 'calculation beside-symbols'}>
        <div>
          {formulas.map((formula) => (
            <FormulaText formula={formula} />
          ))}
        </div>
        {drawing && (
          <figure class="drawing symbols">
            <SymbolsDrawn drawing={drawing} />
          </figure>
        )}
        {here && <HereShown here={here} frame={frame} />}
        {example && <ExampleShown example={example} frame={frame} />}
      </div>
      <nav class="before-after" aria-label="Calculations beside this one">
        {before && (
          <a rel="prev" href={`/how/${subject.id}/${before.id}`}>
            Before: {before.name}
          </a>
        )}
        {after && (
          <a rel="next" href={`/how/${subject.id}/${after.id}`}>
            Next: {after.name}
          </a>
        )}
      </nav>
      <Cautions kinds={['general']} />
    </Layout>
  );
}

/** The values of a job, a cover or a stud, in the formulas above. */
function HereShown({ here, frame }: { here: NonNullable<CalculationProps['here']>; frame: Frame }) {
  return (
    <section class="worked-example" id="here" aria-labelledby="here-title">
      <h2 id="here-title">
        <a href={here.href}>{here.name}</a>
      </h2>
      {here.workings.map(({ title, answer }) => (
        <>
          {title !== null && <p>{title}</p>}
          <Working answer={answer} unit={frame.lengthUnit} formula={(text) => <MathLine text={text} />} />
        </>
      ))}
    </section>
  );
}

function ExampleShown({ example, frame }: { example: WorkedExample; frame: Frame }) {
  return (
    <div class="worked-example">
      <p>
        <b>Worked out here: </b>
        {example.given}
      </p>
      {example.answers.map((answer) => (
        <Working answer={answer} unit={frame.lengthUnit} formula={(text) => <MathLine text={text} />} />
      ))}
      {example.says.length === 1 ? (
        <p class={example.answers.length === 0 ? 'result' : undefined}>{example.says[0]}</p>
      ) : (
        example.says.length > 1 && (
          <ul class="says">
            {example.says.map((one) => (
              <li>{one}</li>
            ))}
          </ul>
        )
      )}
    </div>
  );
}
