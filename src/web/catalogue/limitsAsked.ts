import { readQuantity } from '../../../shared/quantity/readQuantity.ts';
import type { Family, ShopCriteria } from '../../../shared/words/catalogue.ts';
import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import type { DoubtedLength } from '../../../views/parts/form/doubted.tsx';
import { coversUnder, type LimitName, limitDoubts } from '../../shop/doubts/limitDoubt.ts';
import type { TypedForm } from '../request/typed.ts';

const { minimumWallMm, faceRunoutLimitMm, cleanUpAllowanceMm, typicalCutMm } = CRITERIA;
const ASKED = { minimumWallMm, faceRunoutLimitMm, cleanUpAllowanceMm, typicalCutMm };

/** Limits that can hardly be meant are asked about before they are saved; a fault stands at each box until it is confirmed. */
export function askLimits(
  form: TypedForm,
  standing: ShopCriteria,
  families: readonly Family[],
): readonly DoubtedLength[] {
  const { lengthUnit, decimalSign } = form.writing;
  const typedAt = ({ box, label }: { readonly box: string; readonly label: string }) => {
    const typed = form.text(box);
    const read = readQuantity({ field: label, typed, kind: 'length', unit: lengthUnit, decimalSign });
    return read.ok ? { valueMm: read.value, typed, unit: read.unit, decimalSign } : null;
  };
  const names = Object.keys(ASKED) as LimitName[];
  const typed = Object.fromEntries(names.map((name) => [name, typedAt(ASKED[name])]));
  return limitDoubts(typed, standing, coversUnder(families)).flatMap(({ limit, doubt }) => {
    const { box, label } = ASKED[limit];
    const text = form.text(box);
    if (form.text(`ok.${box}`) === text) return [];
    form.fault(box, `${label}: ${doubt.question} Enter it again, or confirm it below.`);
    return [
      {
        name: box,
        typed: text,
        says: `${label}: ${text} is right, as typed`,
        meant: doubt.meantTyped === null ? [] : [doubt.meantTyped],
      },
    ];
  });
}
