import type { ComponentChildren } from 'preact';
import type { Formula, WorkedExample } from '../../shared/words/formula.ts';
import type { Frame } from '../frame.ts';
import { Layout } from '../layout.tsx';
import { Cautions } from '../parts/caution.tsx';
import { Working } from '../parts/findingList.tsx';
import { FormulaText, nameInWords } from '../parts/how/formulaText.tsx';

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

export interface HowPageProps {
  readonly frame: Frame;
  readonly subject: HowSubject;
  readonly formulas: readonly { readonly formula: Formula; readonly example: WorkedExample | null }[];
  /** What is told before the single calculations. */
  readonly children?: ComponentChildren;
}

/** `cover/toolPlane` as `tool plane`. */
const calculationName = (name: string) => nameInWords(name.slice(name.indexOf('/') + 1));

/** All calculations on one subject. */
export function HowPage({ frame, subject, formulas, children }: HowPageProps) {
  // One file may hold two; its example stands below the last.
  const last = (index: number) => formulas[index + 1]?.formula.name !== formulas[index]!.formula.name;
  return (
    <Layout title={`How it is worked out: ${subject.title}`} here="worked-out" {...frame}>
      <p class="back">
        <a href="/how">How it is worked out</a>
      </p>
      <h1>{subject.title}</h1>
      <p>{subject.about}</p>
      {children}
      <h2 id="calculations">The calculations</h2>
      {formulas.length === 0 ? (
        <p class="note">
          The formulas can’t be shown: this copy of the program came without its source folder. Everything
          else works.
        </p>
      ) : (
        <>
          <details class="how-contents">
            <summary>All {formulas.length} calculations</summary>
            <ul>
              {formulas
                .filter((_, index) => last(index))
                .map(({ formula }) => (
                  <li>
                    <a href={`#${formula.name.replace('/', '-')}`}>{calculationName(formula.name)}</a>
                  </li>
                ))}
            </ul>
          </details>
          {formulas.map(({ formula, example }, index) => (
            <section class="calculation">
              {formulas[index - 1]?.formula.name !== formula.name && (
                <h3 id={formula.name.replace('/', '-')}>{calculationName(formula.name)}</h3>
              )}
              <FormulaText formula={formula} />
              {last(index) && example && <ExampleShown example={example} frame={frame} />}
            </section>
          ))}
        </>
      )}
      <Cautions kinds={['general', 'lathe', 'crack', 'torque']} />
    </Layout>
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
        <Working answer={answer} unit={frame.lengthUnit} />
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
