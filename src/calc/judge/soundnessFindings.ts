import type { CoverCheckInput } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { listInWords } from '../../../shared/words/print.ts';

const NO_NUMBER = { value: null, limit: null, unit: '', answer: null } as const;

/** What was looked for before anything was measured: cracks, and faults the shop calls final. */
export function soundnessFindings({ crackTest, inspectionFailures }: CoverCheckInput): readonly Finding[] {
  return [crack(crackTest), inspection(inspectionFailures)];
}

function crack(test: CoverCheckInput['crackTest']): Finding {
  const base = {
    id: 'crack',
    title: 'Cracks',
    ...NO_NUMBER,
    source: 'a crack is never overruled by a number',
  };
  if (test === 'found') {
    return {
      ...base,
      status: 'fail',
      sentence:
        'A crack was found, and no number overrules a crack. Only a new inspection by a second person that finds none lifts it.',
    };
  }
  if (test === 'none-found') return { ...base, status: 'pass', sentence: 'The crack test found none.' };
  return {
    ...base,
    status: 'not-checked',
    sentence: 'No crack test is recorded. Test it with dye or magnetic particles before it is used.',
  };
}

function inspection(failures: CoverCheckInput['inspectionFailures']): Finding {
  const base = { id: 'inspection', title: 'Inspection', ...NO_NUMBER, source: 'the shop’s inspection' };
  const final = failures.filter((failure) => failure.final).map(({ item }) => item);
  const mendable = failures.filter((failure) => !failure.final).map(({ item }) => item);
  if (final.length > 0) {
    return {
      ...base,
      status: 'fail',
      sentence: `The inspection found a fault that the shop says nothing can mend: ${listInWords(final)}.`,
    };
  }
  if (mendable.length > 0) {
    return {
      ...base,
      status: 'caution',
      sentence: `The inspection found a fault to mend before the cover is used: ${listInWords(mendable)}.`,
    };
  }
  return { ...base, status: 'pass', sentence: 'No fault of the inspection is recorded.' };
}
