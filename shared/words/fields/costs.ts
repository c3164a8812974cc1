import type { Costs } from '../trends/costs.ts';
import type { Fields } from './field.ts';

const MONEY = { kind: 'number', unit: '$', least: 0, most: 100_000, optional: true } as const;
const CHANCE = { kind: 'share', least: 0, most: 1, optional: true } as const;

/** What each way costs the shop. */
export const COSTS = {
  facing: {
    head: 'What it costs here',
    label: 'Facing a cover',
    subject: 'What facing costs',
    help: 'Work and machine, inspection and studs included',
    ...MONEY,
  },
  ring: {
    label: 'A stiffening ring besides',
    subject: 'What a ring costs',
    help: 'Ring and welding, on top of facing',
    ...MONEY,
  },
  newCover: { label: 'A new cover', subject: 'What a new cover costs', help: 'Fitted', ...MONEY },
  comeback: {
    label: 'A comeback',
    subject: 'What a comeback costs',
    help: 'Removing, opening, replacing, refitting',
    ...MONEY,
  },
  facedBack: {
    head: 'How often it comes back, as the shop judges it',
    label: 'A faced cover',
    subject: 'How often a faced cover comes back',
    ...CHANCE,
  },
  ringedBack: {
    label: 'A faced cover with a ring',
    subject: 'How often a ringed cover comes back',
    ...CHANCE,
  },
  newBack: { label: 'A new cover, fitted', subject: 'How often a new cover comes back', ...CHANCE },
} as const satisfies Fields<Costs>;
