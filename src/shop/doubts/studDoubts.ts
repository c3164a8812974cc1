import type { CatalogueStack } from '../../../shared/words/catalogue.ts';
import { JOINT } from '../../../shared/words/fields/joint.ts';
import { CATALOGUE_STACK, LAYER, NUT, STACK, STUD } from '../../../shared/words/fields/stud.ts';
import { REPLACED_STUD, RETORQUE } from '../../../shared/words/fields/studWork.ts';
import type { DoubtedFigure } from '../../../shared/words/finding.ts';
import type { ReplacedStudAsked, RetorqueAsked } from '../../../shared/words/job.ts';
import type { Joint, Stud, StudCheckInput } from '../../../shared/words/stud/stud.ts';
import {
  aboutStack,
  entryStackExpected,
  gapTypedExpected,
  jointExpected,
  layerExpected,
  nutExpected,
  replacedExpected,
  retorqueExpected,
  stackExpected,
  studExpected,
} from '../studs/studsExpected.ts';
import { figuresDoubted } from './figuresDoubted.ts';

type Asked = Pick<StudCheckInput, 'stack' | 'nut' | 'pullForwardMm' | 'joint'>;

/**
 * What was sent of a stud’s question in plain numbers and looks like a slip, but for what `confirmed` names: of whom
 * nobody can be asked "35 N·m? Did you mean 35 lb·ft?", it is told beside the answer.
 */
export function studDoubts(
  asked: Asked,
  studs: readonly { readonly path: string; readonly stud: Stud }[],
  confirmed: readonly string[],
): readonly DoubtedFigure[] {
  const { stack, nut, pullForwardMm, joint } = asked;
  const thread = nut?.thread?.designation ?? studs[0]?.stud.thread.designation ?? '';
  const all = [
    ...studs.flatMap(({ path, stud }) =>
      figuresDoubted(STUD, stud, studExpected({ thread: stud.thread.designation }), path),
    ),
    ...stack.layers.flatMap((layer, i) =>
      figuresDoubted(LAYER, layer, layerExpected(layer, { thread }), `stack.layers.${i}`),
    ),
    ...figuresDoubted(STACK, stack, stackExpected(), 'stack'),
    ...(nut ? figuresDoubted(NUT, nut, nutExpected({ thread }), 'nut') : []),
    ...figuresDoubted(CATALOGUE_STACK, { pullForwardMm }, entryStackExpected({ thread }), ''),
    ...(joint ? figuresDoubted(JOINT, joint, jointExpected({ thread }), 'joint') : []),
  ];
  return all.filter(({ path }) => !confirmed.includes(path));
}

/** The studs of a job as JSON sends them: what looks like a slip of joint, gap, replaced studs and re-torque. */
export function studsDoubted(
  studs: {
    readonly joint: Joint | null;
    readonly pullForwardMm: number | null;
    readonly replaced: readonly ReplacedStudAsked[] | null;
    readonly retightening: RetorqueAsked | null;
  },
  stack: CatalogueStack | null,
): readonly DoubtedFigure[] {
  const about = aboutStack(stack);
  const gap = { pullForwardMm: gapTypedExpected(stack?.pullForwardMm ?? null) };
  return [
    ...figuresDoubted(JOINT, studs.joint ?? {}, jointExpected(about), 'studs.joint'),
    ...figuresDoubted({ pullForwardMm: CATALOGUE_STACK.pullForwardMm }, studs, gap, 'studs'),
    ...(studs.replaced ?? []).flatMap((one, i) =>
      figuresDoubted(REPLACED_STUD, one, replacedExpected(), `studs.replaced.${i}`),
    ),
    ...figuresDoubted(RETORQUE, studs.retightening ?? {}, retorqueExpected(about), 'studs.retightening'),
  ];
}
