/** The pages that are measured, of the demo shop. */
export const PAGES = {
  job: '/jobs/1001',
  'quick page': '/cover?family=1125-4-plain&crack=none-found&w.0=4.9mm&w.1=4.93mm&w.2=4.91mm&w.3=4.88mm',
  'stud page': '/stud?stack=one-piece-four-3-8-24',
  sheet: '/jobs/1001/sheet',
} as const;
