import { type Request, type Response, Router } from 'express';
import { faultsOf } from '../../../shared/schemas/faultsOf.ts';
import { flexplateSeenSchema } from '../../../shared/schemas/gap.ts';
import { FLEXPLATE_SEEN } from '../../../shared/words/fields/gap.ts';
import { FLEXPLATE_LOOKS, type FlexplateSeen } from '../../../shared/words/stud/choices.ts';
import { FlexplatePage } from '../../../views/pages/stud/flexplatePage.tsx';
import { renderPage } from '../../../views/render.ts';
import { flexplatesLike } from '../../shop/studs/flexplates.ts';
import { seenExpected } from '../../shop/studs/studsExpected.ts';
import { askAboutFigures } from '../request/askFigures.ts';
import { boxAt, readBody } from '../request/bodyForm.ts';
import { keepingUnits } from '../request/otherUnit.ts';
import type { PageContext } from '../request/pageContext.ts';
import { handledIn } from '../request/route.ts';
import { type Fields, fieldsOf, TypedForm } from '../request/typed.ts';
import { shelves, studFrame } from './request.ts';
import { noteStack, readThreadField } from './stackForm.ts';

/** Which flexplate is it? By what is seen and measured; it ends in a stack. */
export function flexplateRouter(context: PageContext): Router {
  const router = Router();
  router.get('/stud/flexplate', handledIn(context)(getFlexplate));
  return router;
}

async function getFlexplate(context: PageContext, req: Request, res: Response): Promise<void> {
  const fields = withSkipped(fieldsOf(req.query));
  const frame = await studFrame(req, context, fields);
  const { stacks } = await shelves(context);
  const form = new TypedForm(fields, frame);
  noteStack(form);
  const seen = readSeen(form);
  res.status(form.faults.length > 0 ? 422 : 200).send(
    renderPage(
      FlexplatePage({
        frame: keepingUnits(frame, form),
        fields,
        writing: form.writing,
        doubts: form.doubts,
        seen,
        found: seen && flexplatesLike(seen, stacks),
        faults: form.faults,
      }),
    ),
  );
}

/** "I can't see it" puts what was asked among what is not asked again. */
function withSkipped({ skip, ...fields }: Fields): Fields {
  return skip ? { ...fields, cannot: [fields.cannot, skip].filter(Boolean).join(',') } : fields;
}

/** What was seen; null with the sentences in the form. */
function readSeen(form: TypedForm): FlexplateSeen | null {
  const thread = readThreadField(form, FLEXPLATE_SEEN.thread.box, 'internal');
  const parsed = flexplateSeenSchema.safeParse(readBody(form, FLEXPLATE_SEEN));
  if (!parsed.success) form.addFaults(faultsOf(parsed.error), (path) => boxAt(FLEXPLATE_SEEN, path) ?? path);
  if (form.faults.length === 0) {
    const thread = form.text(FLEXPLATE_SEEN.thread.box);
    askAboutFigures(form, FLEXPLATE_SEEN, seenExpected({ thread }));
  }
  const cannot = FLEXPLATE_LOOKS.filter((look) => form.text('cannot').split(',').includes(look));
  return parsed.success && form.faults.length === 0 ? { ...parsed.data, thread, cannot } : null;
}
