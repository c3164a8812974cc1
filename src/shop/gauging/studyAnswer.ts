import {
  type KeptStudy,
  type StudyAnswer,
  standingReadings,
} from '../../../shared/words/gauges/gaugeStudies.ts';
import { gaugeStudy } from '../../calc/measure/gaugeStudy.ts';
import { pooledRepeatability } from '../../calc/measure/pooledRepeatability.ts';

/** What a study says: all of it when it is complete, and what its whole rounds say when it was stopped early. */
export function studyAnswer(study: KeptStudy): StudyAnswer {
  const { plan, order } = study;
  const standing = standingReadings(study);
  const byStation: number[][][] = Array.from({ length: plan.covers * plan.stations }, () =>
    plan.people.map(() => []),
  );
  for (const [place, { station, person }] of order.entries()) {
    const reading = standing[place];
    if (reading) byStation[station]![person]!.push(reading.valueMm);
  }
  const cells = byStation.flat();
  const rounds = Math.min(...cells.map((cell) => cell.length));
  const taken = cells.reduce((sum, cell) => sum + cell.length, 0);
  const repeats = rounds < 2 ? pooledRepeatability(cells.filter((cell) => cell.length > 0)) : null;
  return {
    rounds,
    leftOver: taken - rounds * cells.length,
    variance:
      rounds < 2 ? null : gaugeStudy(byStation.map((one) => one.map((cell) => cell.slice(0, rounds)))),
    repeatsOnly: repeats && {
      repeatability: repeats.answer,
      degreesOfFreedom: repeats.degreesOfFreedom,
    },
    takenAgain: takenAgain(study),
  };
}

/** Readings that came after every place had been read once: by then the figures could be seen. */
function takenAgain({ order, readings }: KeptStudy): number {
  const read = new Set<number>();
  let again = 0;
  for (const { place, withdrawn } of readings) {
    if (read.size === order.length && withdrawn === null) again++;
    read.add(place);
  }
  return again;
}
