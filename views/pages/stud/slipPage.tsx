import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import type { StudChoice } from '../../../shared/words/choices.ts';
import { type LengthUnit, printLength } from '../../../shared/words/print.ts';
import type { Joint } from '../../../shared/words/stud.ts';
import { FIT_WORD } from '../../../shared/words/verdicts.ts';
import { StudInStack } from '../../drawings/studInStack.tsx';
import type { Frame } from '../../frame.ts';
import { Layout } from '../../layout.tsx';
import { Cautions } from '../../parts/caution.tsx';
import { Sign } from '../../parts/form/sign.tsx';
import { day } from '../../parts/when.tsx';
import { JointLine } from './jointFields.tsx';
import { shelfInWords } from './shelfParts.tsx';
import { FIT_STATUS, lowerFirst, stackInWords } from './studPage.tsx';

export interface StudSlipProps {
  readonly frame: Frame;
  readonly stack: CatalogueStack;
  readonly pullForwardMm: number | null;
  /** null where no torque was typed. */
  readonly joint: Joint | null;
  readonly torqueFrom: string;
  readonly choice: StudChoice;
  /** The stud of the same thread that does not do, and why. */
  readonly other: StudChoice | null;
  /** A day. */
  readonly on: string;
}

/** What the counter hands over: which stud, for which stack, and why the other one does not do. */
export function StudSlipPage(props: StudSlipProps) {
  const { frame, stack, pullForwardMm, joint, choice, other, on } = props;
  const { stud } = choice.entry;
  const unit = frame.lengthUnit;
  const { check } = choice.match;
  return (
    <Layout
      title="Counter slip"
      here="studs"
      {...frame}
      titleBlock={[
        { label: 'stud', value: choice.entry.name, wide: true },
        { label: 'stack', value: stack.name, wide: true },
        { label: 'shop', value: frame.shopName },
        { label: 'date', value: day(on) },
        { label: 'sheet', value: '1 of 1' },
      ]}
    >
      <h1>
        {choice.entry.name}: {lowerFirst(check.headline)}
      </h1>
      <p class="why">
        <Sign status={FIT_STATUS[choice.match.fits]} /> <b>{FIT_WORD[choice.match.fits]}.</b> {check.because}
      </p>
      <StudFacts entry={choice.entry} stack={stack} unit={unit} />
      <figure class="drawing wide">
        <StudInStack
          id="slip"
          stud={stud}
          stack={stack.stack}
          nut={stack.nut}
          check={check}
          pullForwardMm={pullForwardMm}
          name={choice.entry.name}
          unit={unit}
        />
      </figure>
      {other && (
        <p>
          <Sign status="fail" /> <b>Not {other.entry.name}:</b> {other.match.check.because}
        </p>
      )}
      {joint && <JointLine check={check} joint={joint} unit={unit} torqueFrom={props.torqueFrom} />}
      <Cautions kinds={['torque', 'competition', 'general']} />
      <div class="actions no-print">
        <button class="button first" type="button" id="print" data-print>
          Print
        </button>
        <a class="button" href="/stud">
          Another stack
        </a>
      </div>
    </Layout>
  );
}

function StudFacts({
  entry,
  stack,
  unit,
}: {
  entry: StudChoice['entry'];
  stack: CatalogueStack;
  unit: LengthUnit;
}) {
  return (
    <dl class="facts">
      {shelfInWords(entry) !== '' && (
        <>
          <dt>On the shelf</dt>
          <dd>{shelfInWords(entry)}</dd>
        </>
      )}
      <dt>Thread</dt>
      <dd>{entry.stud.thread.designation}</dd>
      <dt>From the pad face</dt>
      <dd>
        thread {printLength(entry.stud.threadStartMm, unit, 'coarse')} to{' '}
        {printLength(entry.stud.threadEndMm, unit, 'coarse')}, tip{' '}
        {printLength(entry.stud.projectionMm, unit, 'coarse')}
      </dd>
      <dt>Stack</dt>
      <dd>{stackInWords(stack, unit)}</dd>
    </dl>
  );
}
