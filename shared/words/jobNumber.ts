const NO_ADDRESS: ReadonlySet<string> = new Set(['new', '.', '..']);

/** Whether a number is no address: a job's page is /jobs/NUMBER, where these mean something else. */
export function isNoAddress(number: string): boolean {
  return NO_ADDRESS.has(number.normalize('NFKC').trim().toLowerCase());
}

export function noAddress(number: string): string {
  return `"${number}" can’t be a job number. Enter another, such as J-104.`;
}
