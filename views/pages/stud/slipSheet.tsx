import type { ComponentChildren } from 'preact';
import { upperFirst } from '../../../shared/words/fields/field.ts';
import { type LengthUnit, printLength, printShare, printTorque } from '../../../shared/words/print.ts';
import type { CounterSlip } from '../../../shared/words/stud/slip.ts';
import type { Fits } from '../../../shared/words/stud/stud.ts';
import { FIT_STATUS, HOLDS_STATUS, slips } from '../../../shared/words/verdicts.ts';
import { StudInStack } from '../../drawings/studInStack.tsx';
import { Cautions } from '../../parts/caution.tsx';
import { Sign } from '../../parts/form/sign.tsx';
import { When } from '../../parts/when.tsx';
import { shelfInWords } from './shelfParts.tsx';
import { makerTorqueOf, readToCaller } from './slipWords.ts';

export interface SlipSheetProps {
  readonly slip: CounterSlip;
  readonly unit: LengthUnit;
  readonly shopName: string;
  readonly customerReference: string;
  readonly who: string;
  /** An instant. */
  readonly at: string;
  /** "S-12"; null while it is not saved. */
  readonly number: string | null;
}

/** What the counter hands over: on half a Letter sheet, or a whole one; gray. What does not hold is as large as what fits. */
export function SlipSheet({ slip, unit, shopName, customerReference, who, at, number }: SlipSheetProps) {
  return (
    <article class={isLong(slip) ? 'slip slip-long' : 'slip'} aria-label="Counter slip">
      <div class="slip-two slip-top">
        <FitsHead slip={slip} />
        <HoldsHead slip={slip} unit={unit} />
      </div>
      <figure class="drawing wide">
        <StudInStack
          id="slip"
          stud={slip.stud.stud}
          stack={slip.stack.stack}
          nut={slip.input.nut}
          check={slip.check}
          pullForwardMm={slip.input.pullForwardMm}
          unit={unit}
          onPaper
        />
      </figure>
      <KitTables slip={slip} unit={unit} />
      <section class="slip-say" aria-label="Read to the caller">
        <b>Read to the caller</b>
        <p>“{readToCaller(slip, unit)}”</p>
      </section>
      <Cautions kinds={['torque', 'competition', 'general']} />
      <dl class="slip-block">
        {[
          ['Shop', shopName],
          ['Customer', customerReference],
          ['Answered by', who],
          ['Date', <When at={at} />],
          ['Slip', number ?? 'not saved'],
          ['Sheet', '1 of 1'],
        ].map(([label, value]) => (
          <div>
            <dt>{label}</dt>
            <dd>{value === '' ? '—' : value}</dd>
          </div>
        ))}
      </dl>
    </article>
  );
}

/** More than half a Letter sheet holds: only what fits, with a nut of the shelf and no torque or washer, is short. */
function isLong({ kit, check, input }: CounterSlip): boolean {
  const isPlain = check.fits === 'yes' && kit.nut?.fits === 'yes' && input.joint === null;
  return !isPlain || kit.washer !== null || kit.shims.length > 0;
}

const FITS_HEAD: Readonly<Record<Fits, string>> = {
  yes: 'Fits',
  'with-care': 'Fits with care',
  no: 'Does not fit',
};

function FitsHead({ slip: { check, stud } }: { slip: CounterSlip }) {
  return (
    <div>
      <h1 class="slip-head">
        <Sign status={FIT_STATUS[check.fits]} /> {FITS_HEAD[check.fits]}
      </h1>
      <p>
        {stud.name}. {check.because}
      </p>
    </div>
  );
}

function HoldsHead({ slip: { check, input }, unit }: { slip: CounterSlip; unit: LengthUnit }) {
  const said = (id: string) => check.findings.find((finding) => finding.id === id)?.sentence ?? '';
  const torque = input.joint && printTorque(input.joint.torqueNm, unit);
  const head = {
    yes: `Holds at ${torque}`,
    no: slips(check) ? `Does not hold at ${torque}` : `${torque}: too much for the stud`,
    'not-checked': torque === null ? 'Torque not checked' : `Not known if ${torque} holds`,
  }[check.holds];
  const share = check.joint?.proofShare ?? null;
  const tooMuch = check.holds === 'no' && !slips(check);
  return (
    <div>
      <h2 class="slip-head">
        <Sign status={HOLDS_STATUS[check.holds]} /> {head}
      </h2>
      <p>
        {input.joint === null
          ? 'Look up the vehicle maker’s torque.'
          : said(tooMuch ? 'joint-proof' : 'joint-slip')}
        {share !== null && !tooMuch && ` Highest preload: ${printShare(share, 0)} of the stud’s proof load.`}
      </p>
    </div>
  );
}

/** Everything the caller carries away, and what not to take. */
function KitTables({ slip, unit }: { slip: CounterSlip; unit: LengthUnit }) {
  const { stud, stack, input, kit, notThis } = slip;
  const mm = (x: number) => printLength(x, unit, 'coarse');
  const times = kit.count === null ? '' : `${kit.count} × `;
  const { layers, holeCircleDiameterMm: circle, style } = stack.stack;
  const total = layers.reduce((sum, layer) => sum + layer.thicknessMm, 0);
  const gap = input.pullForwardMm;
  return (
    <div class="slip-two">
      <table class="slip-kit">
        <tbody>
          <Row head="Stud">
            <b>
              {times}
              {stud.name}
            </b>
            , {slip.studClass === null ? 'strength class not known' : upperFirst(slip.studClass)}
            <br />
            Length from pad {mm(stud.stud.projectionMm)}
            {onShelf(stud)}
          </Row>
          <Row head="Nut">
            <KitNut slip={slip} times={times} unit={unit} />
          </Row>
          {[...(kit.washer ? [kit.washer] : []), ...kit.shims].map(({ entry }) => (
            <Row head={entry.use === 'shim' ? 'Shims' : 'Washer'}>
              <b>
                {times}
                {entry.name}
              </b>
              , {mm(entry.thicknessMm)} thick{onShelf(entry)}
            </Row>
          ))}
          <Row head="Flexplate">
            {upperFirst(style)}: {layers.map((layer) => `${layer.name} ${mm(layer.thicknessMm)}`).join(' + ')}
            {layers.length > 1 && ` = ${mm(total)}`}
            {circle !== null && `; bolt circle ${mm(circle)}`}
          </Row>
        </tbody>
      </table>
      <table class="slip-kit">
        <tbody>
          <Row head="Gap">
            {gap === null ? (
              <b>not measured: measure it</b>
            ) : (
              <>
                Pull-forward gap {mm(gap)},{' '}
                <b>{slip.gapMeasured ? 'measured' : 'from the catalog: measure yours'}</b>
              </>
            )}
          </Row>
          <Row head="Torque">{torqueLine(slip, unit)}</Row>
          {notThis && (
            <Row head="Do not use">
              <b>{notThis.name}</b>: {notThis.because}
            </Row>
          )}
        </tbody>
      </table>
    </div>
  );
}

/** The nut of the kit; without one, the stack's, which nobody chose from the shelf. */
function KitNut({ slip, times, unit }: { slip: CounterSlip; times: string; unit: LengthUnit }) {
  const { kit, stack, input, nutClass } = slip;
  const { nut } = input;
  if (nut === null) return <>not entered</>;
  const missing = kit.missing[0];
  return (
    <>
      <b>
        {times}
        {kit.nut?.entry.name ?? nut.thread?.designation ?? stack.nutThreadTyped}
      </b>
      {nutClass !== null && `, ${upperFirst(nutClass)}`}, {printLength(nut.heightMm, unit, 'coarse')} high
      {nut.prevailing && ', locking'}
      {kit.nut ? onShelf(kit.nut.entry) : `. ${missing}`}
      {kit.nut?.fits === 'with-care' && ` Take care: ${kit.nut.because}`}
    </>
  );
}

/** "; 48 in stock, shelf L-3". */
function onShelf(entry: Parameters<typeof shelfInWords>[0]): string {
  const words = shelfInWords(entry);
  return words === '' ? '' : `; ${words}`;
}

function Row({ head, children }: { head: string; children: ComponentChildren }) {
  return (
    <tr>
      <th scope="row">{head}</th>
      <td>{children}</td>
    </tr>
  );
}

function torqueLine(slip: CounterSlip, unit: LengthUnit) {
  const { input, check, torqueFrom } = slip;
  const maker = makerTorqueOf(slip);
  const makers = maker && (
    <>
      <b>{printTorque(maker.torqueNm, unit)}</b>, the vehicle maker’s figure ({maker.source}).
    </>
  );
  if (input.joint === null) return makers ?? 'Look up the vehicle maker’s torque.';
  const torque = <b>{printTorque(input.joint.torqueNm, unit)}</b>;
  if (makers && input.joint.torqueNm === maker?.torqueNm) return makers;
  if (torqueFrom === 'maker')
    return (
      <>
        {makers} {torque}, entered as the vehicle maker’s figure.
      </>
    );
  const window = check.findings.find(({ id }) => id === 'joint-torque')?.sentence;
  return (
    <>
      {makers} {torque}, not the vehicle maker’s figure{makers ? '' : ': look that up first'}. Advice:{' '}
      {window}
    </>
  );
}
