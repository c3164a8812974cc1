import type { Writing } from '../../../shared/quantity/fieldText.ts';
import { GAP } from '../../../shared/words/fields/gap.ts';
import { type LengthUnit, lengthFigure, listInWords, printLength } from '../../../shared/words/print.ts';
import type { Fault } from '../../../shared/words/refusal.ts';
import type { GapFound } from '../../../shared/words/stud/gap.ts';
import { FIT_STATUS } from '../../../shared/words/verdicts.ts';
import { PullForwardPicture } from '../../drawings/pullForwardPicture.tsx';
import { StudInStack } from '../../drawings/studInStack.tsx';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { Cautions } from '../../parts/caution.tsx';
import { FindingList } from '../../parts/findingList.tsx';
import type { DoubtedLength } from '../../parts/form/askedHere.ts';
import { Boxes } from '../../parts/form/bodyFields.tsx';
import { ErrorSummary } from '../../parts/form/errorSummary.tsx';
import { Choice } from '../../parts/form/fieldBox.tsx';
import { Questions } from '../../parts/form/questionAt.tsx';
import { Sign } from '../../parts/form/sign.tsx';
import { lowerFirst } from './studPage.tsx';

export interface GapProps {
  readonly frame: Frame;
  readonly fields: Readonly<Record<string, string>>;
  readonly writing: Writing;
  readonly stacks: readonly { readonly id: string; readonly name: string }[];
  /** Those of the shop's limits, which count where none are typed; '' where it has set none. */
  readonly shimsThere: string;
  readonly doubts: readonly DoubtedLength[];
  /** null until both depths are typed. */
  readonly answer: GapFound | null;
  readonly studHref: string | null;
  readonly faults: readonly Fault[];
}

/** The gap from two measured depths; equal shims; the same shims in the stack and in the hub's engagement; the stud. */
export function GapPage(props: GapProps) {
  const { frame, fields, answer, faults } = props;
  const unit = frame.lengthUnit;
  return (
    <Layout title="Pull-forward gap" here="studs" {...frame}>
      <h1>{answer ? headline(answer, unit) : 'How far does the converter come forward?'}</h1>
      <p class="why">
        Push the converter fully back on the pump. Measure from the bell housing face to the pads, and how far
        the flexplate stands out of the engine face. The maker's gap comes first.
      </p>
      {answer && <Answered answer={answer} studHref={props.studHref} unit={unit} />}
      <form method="get" action="/stud/gap" id="gap-form">
        <ErrorSummary faults={faults} />
        <input type="hidden" name="unit" value={unit} />
        <Questions doubts={props.doubts} fields={fields}>
          <div class="fields">
            <Boxes
              of={GAP}
              fields={fields}
              faults={faults}
              writing={props.writing}
              hints={{
                leastGapMm: `Blank: about ${printLength(3.2, unit, 'coarse')} to ${printLength(4.8, unit, 'coarse')}, common practice, from memory`,
                shimsMm:
                  props.shimsThere === ''
                    ? 'More than one? Separate with ;'
                    : `Blank: the shop’s, ${props.shimsThere}`,
              }}
            />
            <Choice
              label="Flexplate stack"
              name="stack"
              value={fields.stack ?? ''}
              options={[
                { value: '', label: 'not yet' },
                ...props.stacks.map(({ id, name }) => ({ value: id, label: name })),
              ]}
            />
          </div>
        </Questions>
        <div class="actions">
          <button class={answer ? 'button' : 'button first'} type="submit" id="work-out-gap">
            Work it out
          </button>
        </div>
      </form>
      <Cautions kinds={['torque', 'general']} />
    </Layout>
  );
}

function headline({ found, shimMm }: GapFound, unit: LengthUnit): string {
  const mm = (x: number) => printLength(x, unit, 'coarse');
  if (found.gapMm <= 0) return `No gap: the converter would be pushed ${mm(-found.gapMm)} into the pump.`;
  return shimMm > 0
    ? `Gap ${mm(found.gapMm)} with a ${mm(shimMm)} shim under every pad.`
    : `Gap ${mm(found.gapMm)}, no shims.`;
}

function Answered({
  answer,
  studHref,
  unit,
}: {
  answer: GapFound;
  studHref: string | null;
  unit: LengthUnit;
}) {
  const { found, shimMm, stack, choice } = answer;
  const layers = stack?.stack.layers.filter((layer) => layer.name !== 'shim') ?? null;
  return (
    <section id="gap-answer" aria-label="The gap">
      <p>{shimsInWords(answer, unit)}</p>
      <figure class="drawing wide">
        <PullForwardPicture
          id="gap"
          bareGapMm={found.bareGapMm}
          shimMm={shimMm}
          stackMm={layers?.reduce((sum, layer) => sum + layer.thicknessMm, 0) ?? null}
          hubEngagementMm={answer.measured.hubEngagementMm}
          unit={unit}
        />
      </figure>
      <FindingList findings={found.findings} unit={unit} id="gap-finding" />
      {stack && choice && (
        <>
          <h2>{choice.match.fits === 'no' ? 'No stud fits then; the nearest' : 'The stud for that gap'}</h2>
          <p>
            <Sign status={FIT_STATUS[choice.match.fits]} /> <b>{choice.entry.name}</b>{' '}
            {lowerFirst(choice.match.check.headline)} {choice.match.check.because}
          </p>
          <figure class="drawing wide">
            <StudInStack
              id="gap-stud"
              stud={choice.entry.stud}
              stack={stack.stack}
              nut={stack.nut}
              check={choice.match.check}
              pullForwardMm={found.gapMm}
              name={choice.entry.name}
              unit={unit}
            />
          </figure>
        </>
      )}
      {studHref && (
        <div class="actions">
          <a class="button first" id="all-studs" href={studHref}>
            Check every stud with this gap
          </a>
        </div>
      )}
    </section>
  );
}

/** What is recommended, or why nothing is. */
function shimsInWords({ recommended, found }: GapFound, unit: LengthUnit): string {
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const [best, ...others] = recommended;
  const { gapLimitsMm: limits, hubAllowsGapMm: hubAllows } = found;
  const gapIsEnough = found.bareGapMm >= limits.least - 1e-9;
  if (found.shimsMm === null && hubAllows !== null && gapIsEnough)
    return `No shim keeps both gap and hub: at the minimum gap the impeller hub is ${mm(limits.least - hubAllows)} short in the pump. Measure the hub again, or ask the maker for a smaller gap.`;
  if (found.shimsMm === null)
    return `The gap without shims, ${mm(found.bareGapMm)}, is already too small: no shim helps. Find what keeps the converter off the pump.`;
  if (best === undefined)
    return `Needs ${mm(found.shimsMm.least)} to ${mm(found.shimsMm.most)} of shim under every pad${hubAllows === null ? '' : ', for the gap and for the impeller hub'}. No shim in stock gives that, alone or two together.`;
  if (best.totalMm === 0) return 'No shims are needed.';
  const said = (one: typeof best) =>
    `${one.thicknessesMm.map((t) => lengthFigure(t, unit, 'coarse')).join(' + ')} ${unit} (gap ${mm(one.gapMm)})`;
  return `Recommended under every pad: ${said(best)}.${others.length > 0 ? ` Also: ${listInWords(others.map(said))}.` : ''}`;
}
