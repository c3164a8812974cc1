import type { StudyPlan } from '../gauges/gaugeStudies.ts';
import type { Fields } from './field.ts';

/** What a manager says when setting up a study of a gauge; the people are typed in one box. */
export const GAUGE_STUDY = {
  covers: {
    label: 'Covers',
    help: 'Number them 1, 2, 3 …; ten is usual',
    kind: 'count',
    least: 2,
    most: 20,
  },
  stations: {
    label: 'Stations on each cover',
    help: 'Evenly spaced from stud 1; mark each with a pen',
    kind: 'count',
    least: 1,
    most: 4,
  },
  rounds: {
    label: 'Rounds',
    help: 'How often each person reads each station',
    kind: 'count',
    least: 2,
    most: 10,
  },
  people: { label: 'People', kind: 'made', box: 'people' },
} as const satisfies Fields<StudyPlan>;
