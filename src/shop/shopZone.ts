import type { Db } from '../records/database/database.ts';
import { currentCriteria } from '../records/shopCriteria.ts';

/** The zone of the settings, and whether somebody set it: otherwise it is the computer's. */
export interface ZoneSettings {
  readonly timeZone: string;
  readonly timeZoneSet?: boolean;
}

/** Which zone the shop goes by: TIME_ZONE where it is set, else the shop's own, else the computer's. */
export async function shopZone(db: Db, { timeZone, timeZoneSet = false }: ZoneSettings): Promise<string> {
  if (timeZoneSet) return timeZone;
  return (await currentCriteria(db)).body.timeZone ?? timeZone;
}

/** Settings whose zone is always the one the shop goes by, as it was when `look` was last asked. */
export function withShopZone<S extends ZoneSettings>(
  db: Db,
  settings: S,
): { readonly settings: S; look(): Promise<void> } {
  let zone = settings.timeZone;
  const followed = {
    ...settings,
    get timeZone() {
      return zone;
    },
  };
  return {
    settings: followed,
    look: async () => {
      zone = await shopZone(db, settings);
    },
  };
}
