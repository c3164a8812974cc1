import type { ShopCriteria } from '../../shared/words/catalogue.ts';
import type { Job, ReplacedStudAsked, RetorqueAsked, StudsChosen } from '../../shared/words/job.ts';
import type { LengthUnit } from '../../shared/words/print.ts';
import { Refusal } from '../../shared/words/refusal.ts';
import type { Joint } from '../../shared/words/stud/stud.ts';
import { checkStud, STUD_CALC_VERSION } from '../calc/stud/checkStud.ts';
import { retorque } from '../calc/stud/joint/retorque.ts';
import { replacedInStack } from '../calc/stud/match/replacedInStack.ts';

/** Half the settling is counted only where the maker allows re-torquing and no thread-locker is on the threads. */
export function settlingCounted(joint: Joint | null, again: RetorqueAsked | null): Joint | null {
  if (!joint?.retightened || again === null) return joint;
  return again.makerAllows === 'yes' && !again.threadLocker ? joint : { ...joint, retightened: false };
}

/** The studs chosen with what was replaced and re-torqued, judged under the shop's limits of today. */
export function withStudWork(
  chosen: StudsChosen,
  work: {
    readonly replaced: readonly ReplacedStudAsked[];
    readonly retightening: RetorqueAsked | null;
  },
  about: { readonly job: Job; readonly criteria: ShopCriteria; readonly unit: LengthUnit },
  place: (index: number) => string = () => 'studNumber',
): StudsChosen {
  const { job, criteria, unit } = about;
  const { replaced: _r, retightening: _t, ...kept } = chosen;
  const bare = withRetorque(kept, work.retightening, unit);
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
        findings: retorque(work.retightening, input?.joint?.torqueNm ?? null, unit),
      },
    }),
  };
}

/** What was recorded of re-torquing may take back the half of the settling that was counted on. */
function withRetorque(chosen: StudsChosen, again: RetorqueAsked | null, unit: LengthUnit): StudsChosen {
  const { input } = chosen;
  const joint = settlingCounted(input?.joint ?? null, again);
  if (input === undefined || joint === input.joint) return chosen;
  const whole = { ...input, joint };
  return { ...chosen, input: whole, check: checkStud(whole, unit), calcVersion: STUD_CALC_VERSION };
}

/** What was measured of them, without what was found. */
export function studWorkOf(chosen: StudsChosen | null): {
  readonly replaced: readonly ReplacedStudAsked[];
  readonly retightening: RetorqueAsked | null;
} {
  const bare = <T extends { findings: unknown }>({ findings: _, ...asked }: T) => asked;
  return {
    replaced: (chosen?.replaced ?? []).map(bare),
    retightening: chosen?.retightening ? bare(chosen.retightening) : null,
  };
}
