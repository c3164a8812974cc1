import type { FieldLine, Telling } from '../../../shared/quantity/fieldLines.ts';
import type { LatheSettings } from '../../../shared/words/catalogue.ts';
import type { BalanceWanted } from '../../../shared/words/cover.ts';
import { lengthsOf } from '../request/fieldLines.ts';
import type { Fields, TypedForm } from '../request/typed.ts';

const LATHE = [
  ['leastRpm', "The lathe's least speed", 'number'],
  ['mostRpm', "The lathe's most speed", 'number'],
  ['cuttingSpeedMPerMin', 'Cutting speed', 'number'],
  ['noseRadiusMm', 'Nose radius', 'length'],
  ['roughingLimitMm', 'Deepest roughing pass', 'length'],
  ['finishingCutMm', 'Finishing pass', 'length'],
  ['roughingFeedMm', 'Roughing feed', 'length'],
  ['finishingFeedMm', 'Finishing feed', 'length'],
] as const satisfies readonly (readonly [keyof LatheSettings, string, 'number' | 'length'])[];

const BALANCE = [
  ['gradeMmPerS', 'Balance quality grade G'],
  ['massKg', 'Mass balanced'],
  ['speedRpm', 'Service speed'],
] as const satisfies readonly (readonly [keyof BalanceWanted, string])[];

/** All of it or none: half a lathe plans no pass. */
export function readLathe(form: TypedForm): LatheSettings | null {
  if (!LATHE.some(([name]) => form.has(name))) return null;
  const values = LATHE.map(([name, label, kind]) => {
    const value = kind === 'length' ? form.length(name, label) : form.number(name, label);
    return [name, form.has(name) ? value : form.needed(value, name, label)];
  });
  return Object.fromEntries(values) as unknown as LatheSettings;
}

export function readBalance(form: TypedForm): BalanceWanted | null {
  if (!BALANCE.some(([name]) => form.has(name))) return null;
  const values = BALANCE.map(([name, label]) => {
    const value = form.number(name, label);
    return [name, form.has(name) ? value : form.needed(value, name, label)];
  });
  return Object.fromEntries(values) as unknown as BalanceWanted;
}

export function latheAsTyped(
  lathe: LatheSettings | null,
  length: (mm: number | null) => string,
  number: (value: number) => string,
): Fields {
  if (lathe === null) return {};
  return Object.fromEntries(
    LATHE.map(([name, , kind]) => [name, kind === 'length' ? length(lathe[name]) : number(lathe[name])]),
  );
}

export function balanceAsTyped(balance: BalanceWanted | null, number: (value: number) => string): Fields {
  return balance === null ? {} : Object.fromEntries(BALANCE.map(([name]) => [name, number(balance[name])]));
}

/** What was set of lathe and balance, in words; nothing where nothing was. */
export function latheLines(
  lathe: LatheSettings | null,
  balance: BalanceWanted | null,
  telling: Telling,
): FieldLine[] {
  const unit: Readonly<Record<string, string>> = {
    leastRpm: ' rpm',
    mostRpm: ' rpm',
    cuttingSpeedMPerMin: ' m/min',
    gradeMmPerS: ' mm/s',
    massKg: ' kg',
    speedRpm: ' rpm',
  };
  return [
    ...LATHE.map(([name, label, kind]) => ({
      label,
      value:
        lathe === null
          ? 'not said'
          : kind === 'length'
            ? lengthsOf(lathe, 'lathe.', telling)(name)
            : `${lathe[name]}${unit[name]}`,
    })),
    ...BALANCE.map(([name, label]) => ({
      label,
      value: balance === null ? 'not said' : `${balance[name]}${unit[name]}`,
    })),
  ];
}
