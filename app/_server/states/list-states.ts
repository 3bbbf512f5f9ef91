import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { statesBegun } from '#data/states/states';
import { sitePlace } from '#shape/reviews/case-place';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';
import { type StateLine, stateLines } from './state-lines';

/** The states that systems of a site are in. */
export interface StatesPage {
  site: { key: string; name: string; zone: string };
  lines: StateLine[];
  /** Every system, to begin a state at. */
  systems: { key: string; name: string }[];
  maySet: boolean;
}

export const listStatesShape = sitePlace;

/** The states that systems of a site are in, those that have outstayed their end first. */
export async function listStates(
  who: Who,
  { site }: z.output<typeof listStatesShape>,
): Promise<Result<StatesPage, Refusal>> {
  const found = await findStoredSite(who, 'see', site);
  if (!found.ok) return found;
  const { entry, stored } = found.value;
  const { systems } = stored.facility;
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    lines: await stateLines(await statesBegun([entry.id], now()), systems),
    systems: systems.map(({ key, name }) => ({ key, name })),
    maySet: may(who, 'set-state', site),
  });
}
