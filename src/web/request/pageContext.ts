import { parse } from 'cookie';
import type { NextFunction, Request, Response } from 'express';
import type { ShopCriteria } from '../../../shared/words/catalogue.ts';
import { dayIn } from '../../../shared/words/day.ts';
import type { LengthUnit } from '../../../shared/words/print.ts';
import { PAUSE_MS } from '../../../shared/words/sittings.ts';
import type { Frame } from '../../../views/frame.ts';
import type { ZoneHeld } from '../../../views/parts/form/zoneField.tsx';
import { hasBegun } from '../../records/begun.ts';
import type { Shop } from '../../records/database/database.ts';
import { hasPeople } from '../../records/people/people.ts';
import { currentCriteria } from '../../records/shopCriteria.ts';
import type { BackupSettings, Settings } from '../../settings.ts';
import { atTheMachine } from './atTheMachine.ts';
import type { FirstCode } from './firstCode.ts';
import { isInvented } from './invented.ts';
import { addressAsked } from './ownAddress.ts';
import { personOf } from './whoSignedIn.ts';

/** What every page of the program works with. */
export interface PageContext {
  readonly shop: Shop;
  readonly settings: Settings;
  /** When the daily backup is made; left out where nobody makes one. */
  readonly backups?: BackupSettings;
  readonly now: () => Date;
  /** Lets the first keeper in, where people sign in and nobody has an account yet. */
  readonly firstCode?: FirstCode;
}

/** The day it is in the shop. */
export function todayIn({ now, settings }: PageContext): string {
  return dayIn(settings.timeZone, now());
}

/** Which zone holds, and by whose choice. */
export function zoneHeld(
  { timeZone, timeZoneSet }: Settings,
  limits: Pick<ShopCriteria, 'timeZone'>,
): ZoneHeld {
  const by = timeZoneSet ? 'setting' : limits.timeZone != null ? 'shop' : 'computer';
  return { holds: timeZone, by };
}

const YEAR_MS = 365 * 24 * 3600 * 1000;
/** Initials are asked for once a sitting: they are forgotten after this long without a page. */
const SITTING_MS = PAUSE_MS;

/** What this person chose on this tablet: the unit, the initials signed under changes, the order of measuring. */
export function preferencesOf(req: Request): {
  unit: LengthUnit | null;
  initials: string;
  measuring: string;
} {
  const cookies = parse(req.headers.cookie ?? '');
  const unit = cookies.unit === 'in' || cookies.unit === 'mm' ? cookies.unit : null;
  const initials = /^[\p{L}\p{N}.-]{1,8}$/u.test(cookies.initials ?? '') ? (cookies.initials ?? '') : '';
  return { unit, initials, measuring: cookies.measuring ?? '' };
}

export function rememberPreference(
  res: Response,
  name: 'unit' | 'initials' | 'measuring',
  value: string,
): void {
  const maxAge = name === 'initials' ? SITTING_MS : YEAR_MS;
  res.cookie(name, value, { maxAge, sameSite: 'lax', httpOnly: true, path: '/' });
}

/** Every page of a sitting puts its end off: whoever works on is not asked again. */
export function sittingGoesOn(req: Request, res: Response, next: NextFunction): void {
  const { initials } = preferencesOf(req);
  if (initials !== '') rememberPreference(res, 'initials', initials);
  next();
}

/** The frame round every page: whose shop, which unit, who stands here. */
export async function frameOf(req: Request, context: PageContext): Promise<Frame> {
  const { unit, initials } = preferencesOf(req);
  const criteria = await currentCriteria(context.shop.db);
  const person = personOf(req);
  const alone = atTheMachine(context.settings, req) && !(await hasPeople(context.shop.db));
  if (context.settings.accounts && person === null && !alone) return strangersFrame(req);
  const demo = await isInvented(context.shop.db, addressAsked(req));
  return {
    shopName: criteria.body.shopName,
    demo,
    demoKept: demo && (await hasBegun(context.shop.db)),
    lengthUnit: unit ?? criteria.body.lengthUnit,
    decimalSign: criteria.body.decimalSign,
    timeZone: context.settings.timeZone,
    initials: person?.initials ?? initials,
    person,
    address: addressAsked(req),
  };
}

/** What is told to somebody who has not signed in, or when the records are away: nothing of the shop. */
export function strangersFrame(req: Request): Frame {
  return {
    shopName: '',
    demo: false,
    lengthUnit: 'mm',
    decimalSign: 'point',
    timeZone: 'UTC',
    initials: '',
    signedOut: true,
    address: addressAsked(req),
  };
}
