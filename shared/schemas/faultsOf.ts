import type * as z from 'zod';
import { quoted } from '../quantity/tidy.ts';
import type { Fault } from '../words/refusal.ts';

/** More than anybody reads; the rest is counted. */
const MOST_FAULTS = 100;
const LONGEST_KEY = 60;

/** What a schema found wrong, one sentence for each field, with dotted paths: `stations.3.faceMm`. */
export function faultsOf(error: z.core.$ZodError): Fault[] {
  const faults = error.issues.flatMap((issue): Fault[] => {
    const path = issue.path.map(String);
    if (issue.code !== 'unrecognized_keys') return [{ path: path.join('.'), message: issue.message }];
    return issue.keys.slice(0, MOST_FAULTS).map((key) => ({
      path: [...path, key.slice(0, LONGEST_KEY)].join('.'),
      message: `${quoted(key)} is no field here; take it out or check its spelling. ${issue.message}`,
    }));
  });
  if (faults.length <= MOST_FAULTS) return faults;
  const more = faults.length - MOST_FAULTS;
  return [
    ...faults.slice(0, MOST_FAULTS),
    { path: '', message: `There are ${more} more faults like these; fix these first.` },
  ];
}
