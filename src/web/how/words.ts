import { unitShown, type Writing } from '../../../shared/quantity/fieldText.ts';
import { CRITERIA } from '../../../shared/words/fields/criteria.ts';
import { FAMILY } from '../../../shared/words/fields/family.ts';
import { type AnyFields, entriesOf, inUnit } from '../../../shared/words/fields/field.ts';
import { GAP } from '../../../shared/words/fields/gap.ts';
import { GAUGE } from '../../../shared/words/fields/gauge.ts';
import { LOOKED, RECEIVED } from '../../../shared/words/fields/job.ts';
import { JOINT } from '../../../shared/words/fields/joint.ts';
import { KNOCK_ON } from '../../../shared/words/fields/knockOn.ts';
import { SETUP } from '../../../shared/words/fields/setup.ts';
import { CATALOGUE_STACK, CATALOGUE_STUD, LAYER } from '../../../shared/words/fields/stud.ts';
import { REPLACED_STUD, RETORQUE } from '../../../shared/words/fields/studWork.ts';
import { TERMS, type Term } from '../../../shared/words/terms.ts';
import type { WordsProps } from '../../../views/pages/wordsPage.tsx';

const FORMS: readonly (readonly [string, AnyFields])[] = [
  ['Receiving a cover', RECEIVED],
  ['Inspection', LOOKED],
  ['Gauge and chucking', SETUP],
  ['Other dimensions affected', KNOCK_ON],
  ['Cover type', FAMILY],
  ['Stud', CATALOGUE_STUD],
  ['Flexplate stack', { ...CATALOGUE_STACK, layer: { label: 'Layer', kind: 'part', fields: LAYER } }],
  ['Pull-forward gap and shims', GAP],
  ['Joint', JOINT],
  ['Replaced stud', REPLACED_STUD],
  ['Re-torque', RETORQUE],
  ['Gauge', GAUGE],
  ['Shop limits', CRITERIA],
];

/** The glossary: words for things, by the alphabet, and the boxes of every form in their order. */
export function glossary(writing: Writing): Pick<WordsProps, 'terms' | 'forms'> {
  const terms: readonly Term[] = Object.values(TERMS);
  return {
    terms: [...terms].sort((a, b) => a.word.localeCompare(b.word, 'en')),
    forms: FORMS.map(([name, fields]) => ({ name, fields: boxesOf(fields, writing) })),
  };
}

function boxesOf(fields: AnyFields, writing: Writing): WordsProps['forms'][number]['fields'] {
  return entriesOf(fields).flatMap(([, field]) => {
    if (field.kind === 'part') return boxesOf(field.fields, writing);
    if (field.kind === 'made' && !field.help) return [];
    return [
      {
        label: field.label,
        unit: unitShown(field, writing) ?? '',
        help: inUnit(field.help ?? '', writing.lengthUnit),
      },
    ];
  });
}
