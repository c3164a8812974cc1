import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { replacedStudSchema, retighteningSchema } from '../../../shared/schemas/studWork.ts';
import type { ShopCriteria } from '../../../shared/words/catalogue.ts';
import type { Job, ReplacedStudAsked, RetighteningAsked, StudsChosen } from '../../../shared/words/job.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { Refusal } from '../../../shared/words/refusal.ts';
import type { Joint } from '../../../shared/words/stud.ts';
import { checkStud, STUD_CALC_VERSION } from '../../calc/stud/checkStud.ts';
import { retightening } from '../../calc/stud/joint/retightening.ts';
import { replacedInStack } from '../../calc/stud/match/replacedInStack.ts';
import type { TypedForm } from '../request/typed.ts';
import { torqueUnitOf } from './joint.ts';

/** Half the settling is counted only where the maker allows tightening again and no thread-locker is on the threads. */
export function settlingCounted(joint: Joint | null, again: RetighteningAsked | null): Joint | null {
  if (!joint?.retightened || again === null) return joint;
  return again.makerAllows === 'yes' && !again.threadLocker ? joint : { ...joint, retightened: false };
}

/** The studs chosen with what was set anew and tightened again, judged under the shop's limits of today. */
export function withStudWork(
  chosen: StudsChosen,
  work: {
    readonly replaced: readonly ReplacedStudAsked[];
    readonly retightening: RetighteningAsked | null;
  },
  about: { readonly job: Job; readonly criteria: ShopCriteria; readonly unit: LengthUnit },
  place: (index: number) => string = () => 'studNumber',
): StudsChosen {
  const { job, criteria, unit } = about;
  const { replaced: _r, retightening: _t, ...kept } = chosen;
  const bare = asTightenedAgain(kept, work.retightening, unit);
  const { input } = bare;
  const studCount = job.sections.received?.body.family.studCount ?? null;
  const faults = work.replaced.flatMap(({ stud }, i) =>
    studCount !== null && stud > studCount
      ? [{ path: place(i), message: `There is no stud ${stud}: the cover has ${studCount}.` }]
      : [],
  );
  if (faults.length > 0) throw new Refusal('no-such-stud-on-cover', faults);
  const replaced =
    input === undefined
      ? []
      : work.replaced.map((one) => ({
          ...one,
          findings: replacedInStack(input, one, criteria.studSetting ?? null, unit),
        }));
  return {
    ...bare,
    ...(replaced.length > 0 && { replaced: replaced.sort((a, b) => a.stud - b.stud) }),
    ...(work.retightening && {
      retightening: {
        ...work.retightening,
        findings: retightening(work.retightening, input?.joint?.torqueNm ?? null, unit),
      },
    }),
  };
}

/** What was recorded of tightening again may take back the half of the settling that was counted on. */
function asTightenedAgain(
  chosen: StudsChosen,
  again: RetighteningAsked | null,
  unit: LengthUnit,
): StudsChosen {
  const { input } = chosen;
  const joint = settlingCounted(input?.joint ?? null, again);
  if (input === undefined || joint === input.joint) return chosen;
  const whole = { ...input, joint };
  return { ...chosen, input: whole, check: checkStud(whole, unit), calcVersion: STUD_CALC_VERSION };
}

/** What was measured of them, without what was found. */
export function studWorkOf(chosen: StudsChosen | null): {
  readonly replaced: readonly ReplacedStudAsked[];
  readonly retightening: RetighteningAsked | null;
} {
  const bare = <T extends { findings: unknown }>({ findings: _, ...asked }: T) => asked;
  return {
    replaced: (chosen?.replaced ?? []).map(bare),
    retightening: chosen?.retightening ? bare(chosen.retightening) : null,
  };
}

/** One stud set anew as typed; `none` takes it off the list. null with the sentences in the form. */
export function readReplaced(
  form: TypedForm,
  unit: LengthUnit,
): { readonly stud: number; readonly entry: ReplacedStudAsked | null } | null {
  const bare = torqueUnitOf(form.fields, unit);
  const stud = form.count('studNumber', 'The number of the stud');
  if (!form.has('studNumber')) form.needed(stud, 'studNumber', 'The number of the stud');
  const how = form.choice('setHow', ['welded', 'pressed', 'none'] as const);
  if (how === null) form.fault('setHow', 'How it was set was not chosen. Choose one.');
  const held = form.choice('held', ['yes', 'no'] as const);
  const raw = {
    stud,
    how,
    leanMm: form.length('lean', 'The lean'),
    leanAtMm: form.length('leanAt', 'The height at which it leans'),
    offMm: form.length('off', 'The distance of its foot out of place'),
    filletMm: form.length('fillet', 'The weld or fillet at its foot'),
    provedNm: form.torque('proved', 'The torque it was proved with', bare),
    heldIt: held === null ? null : held === 'yes',
    note: form.text('setNote'),
  };
  if (form.faults.length > 0 || stud === null) return null;
  if (how === 'none') return { stud, entry: null };
  const parsed = replacedStudSchema.safeParse(raw);
  if (parsed.success) return { stud, entry: parsed.data };
  form.addFaults(faultsOf(parsed.error), (path) => REPLACED_FIELDS[path] ?? path);
  return null;
}

const REPLACED_FIELDS: Readonly<Record<string, string>> = {
  stud: 'studNumber',
  how: 'setHow',
  note: 'setNote',
  leanMm: 'lean',
  leanAtMm: 'leanAt',
  offMm: 'off',
  filletMm: 'fillet',
  provedNm: 'proved',
  heldIt: 'held',
};

export function readRetightening(form: TypedForm, unit: LengthUnit, today: string): RetighteningAsked | null {
  const torqueNm = form.torque('againTorque', 'The torque', torqueUnitOf(form.fields, unit));
  if (!form.has('againTorque')) form.needed(torqueNm, 'againTorque', 'The torque');
  if (form.faults.length > 0) return null;
  const parsed = retighteningSchema.safeParse({
    on: form.text('againOn') || today,
    torqueNm,
    makerAllows: form.choice('makerAllows', ['yes', 'no', 'not-said'] as const) ?? 'not-said',
    threadLocker: form.text('locker') === '1',
    note: form.text('againNote'),
  });
  if (parsed.success) return parsed.data;
  form.addFaults(faultsOf(parsed.error), (path) => RETIGHTENED_FIELDS[path] ?? path);
  return null;
}

const RETIGHTENED_FIELDS: Readonly<Record<string, string>> = {
  torqueNm: 'againTorque',
  on: 'againOn',
  note: 'againNote',
};
