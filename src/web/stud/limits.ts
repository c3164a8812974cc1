import {
  type FieldLine,
  lengthInWords,
  type Telling,
  withTyped,
} from '../../../shared/quantity/fieldLines.ts';
import type { ShopCriteria, StudSettingLimits } from '../../../shared/words/catalogue.ts';
import { lengthsOf } from '../request/fieldLines.ts';
import type { Fields, TypedForm } from '../request/typed.ts';

const NOTHING_ASKED: StudSettingLimits = { leanAt25Mm: null, offMm: null, proofNm: null };

/** What the shop asks of a stud set anew; null where it asks nothing. */
export function readStudSetting(form: TypedForm): StudSettingLimits | null {
  const limits = {
    leanAt25Mm: form.length('studLean', 'The lean allowed at 25 mm'),
    offMm: form.length('studOff', 'The distance allowed out of place'),
    proofNm: form.torque('studProof', 'The proof torque'),
  };
  return Object.values(limits).every((value) => value === null) ? null : limits;
}

/** The shims there are, thinnest first, each once. */
export function readShims(form: TypedForm): number[] {
  return [...new Set(form.lengths('shims', 'A shim there is'))].sort((a, b) => a - b);
}

export function studLimitsAsTyped(
  { studSetting, shimsMm }: ShopCriteria,
  length: (mm: number | null) => string,
  number: (value: number) => string,
): Fields {
  return {
    studLean: length(studSetting?.leanAt25Mm ?? null),
    studOff: length(studSetting?.offMm ?? null),
    studProof: studSetting?.proofNm == null ? '' : number(studSetting.proofNm),
    shims: shimsAsTyped(shimsMm ?? [], length),
  };
}

export function shimsAsTyped(shimsMm: readonly number[], length: (mm: number) => string): string {
  return shimsMm.map(length).join('; ');
}

export function studLimitLines({ studSetting, shimsMm = [] }: ShopCriteria, telling: Telling): FieldLine[] {
  const length = lengthsOf(studSetting ?? NOTHING_ASKED, 'studSetting.', telling);
  const shims = shimsMm.map((mm, i) => withTyped(lengthInWords(mm, telling), `shimsMm.${i}`, telling));
  const proof = studSetting?.proofNm ?? null;
  return [
    { label: 'Stud set anew, lean at 25 mm', value: length('leanAt25Mm', 'none') },
    { label: 'Stud set anew, out of place', value: length('offMm', 'none') },
    {
      label: 'Stud set anew, proof torque',
      value: proof === null ? 'none' : withTyped(`${proof} N·m`, 'studSetting.proofNm', telling),
    },
    { label: 'Shims there are', value: shims.join('; ') || 'none' },
  ];
}
