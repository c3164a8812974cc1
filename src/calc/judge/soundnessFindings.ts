import type { CoverCheckInput } from '../../../shared/words/cover.ts';
import type { Finding } from '../../../shared/words/finding.ts';
import { listInWords } from '../../../shared/words/print.ts';

const NO_NUMBER = { value: null, limit: null, unit: '', answer: null } as const;

/** What was looked for before anything was measured: cracks, and faults the shop calls final. */
export function soundnessFindings(input: CoverCheckInput): readonly Finding[] {
  return [crack(input.crackTest), inspection(input)];
}

function crack(test: CoverCheckInput['crackTest']): Finding {
  const base = {
    id: 'crack',
    title: 'Crack test',
    ...NO_NUMBER,
    source: 'no figure overrules a crack',
  };
  if (test === 'found') {
    return {
      ...base,
      status: 'fail',
      sentence: 'A crack was found. Only a new, clean crack test by a second person changes that.',
    };
  }
  if (test === 'none-found') {
    return { ...base, status: 'pass', sentence: 'The crack test found no crack.' };
  }
  return {
    ...base,
    status: 'not-checked',
    sentence: 'No crack test is recorded. Do one with dye or magnetic particles before the cover is used.',
  };
}

/** An item nobody looked at is no pass: it is not checked, and named. */
function inspection({ inspectionFailures, notInspected = [] }: CoverCheckInput): Finding {
  const base = { id: 'inspection', title: 'Inspection', ...NO_NUMBER, source: 'the shop’s inspection' };
  const final = inspectionFailures.filter((failure) => failure.final).map(({ item }) => item);
  const mendable = inspectionFailures.filter((failure) => !failure.final).map(({ item }) => item);
  if (final.length > 0) {
    const sentence = `The inspection found a fault beyond repair: ${listInWords(final)}.`;
    return { ...base, status: 'fail', sentence };
  }
  if (mendable.length > 0) {
    const sentence = `The inspection found a fault to repair before the cover is used: ${listInWords(mendable)}.`;
    return { ...base, status: 'caution', sentence };
  }
  if (notInspected.length > 0) {
    const sentence = `Not inspected yet: ${listInWords(notInspected)}. Inspect before the cover is used.`;
    return { ...base, status: 'not-checked', sentence };
  }
  return { ...base, status: 'pass', sentence: 'The inspection found no fault.' };
}
