import type { Role } from '../../../shared/words/people.ts';

/** Asked for a page or a record that is not there; the sentence says where to look. */
export class NoSuchPage extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'NoSuchPage';
  }
}

/** Somebody asked for what their role does not do. */
export class NotForThisRole extends Error {
  constructor(least: Role) {
    super(
      `This needs the role ${least}, and your account has not got it. Ask a keeper, and nothing was changed.`,
    );
    this.name = 'NotForThisRole';
  }
}

/** Tried too often; says after how long it may be tried again. */
export class TooManyTries extends Error {
  constructor(minutes: number) {
    super(
      `There were too many tries that failed. Wait ${minutes} minute${minutes === 1 ? '' : 's'}, and try again.`,
    );
    this.name = 'TooManyTries';
  }
}
