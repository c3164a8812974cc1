import { ROLE_WORD, type Role } from '../../../shared/words/people.ts';

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
    super(`Only a ${ROLE_WORD[least]} may do this, so nothing was changed. Ask a manager.`);
    this.name = 'NotForThisRole';
  }
}

/** Tried too often; says after how long it may be tried again. */
export class TooManyTries extends Error {
  /** So many at most within so many minutes, and how many of them to wait. */
  constructor({ most, within, wait }: Readonly<Record<'most' | 'within' | 'wait', number>>) {
    super(
      `Too many failed tries: at most ${most} within ${within} minutes. This one was not looked at. Wait ${wait} minute${wait === 1 ? '' : 's'}, then try again.`,
    );
    this.name = 'TooManyTries';
  }
}

/** A write that did not come from a page of this program. */
export class OtherSite extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'OtherSite';
  }
}
