import 'server-only';
import type { z } from 'zod';
import { ok, type Result } from '#core/result';
import { newId } from '#data/new-id';
import { statesBegun } from '#data/states/states';
import { sitePlace } from '#shape/reviews/case-place';
import { now } from '../clock';
import { may } from '../gate/may';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { findStoredSite } from '../reviews/find-stored-site';
import { type NoticeLine, noticeLines } from '../notices/notice-lines';
import { type AskedLine, askedLines } from './asked-lines';
import { type SecondLine, secondLines } from './second-lines';
import { type StateLine, stateLines } from './state-lines';
import { type WatchLine, watchLines } from './watch-lines';

/** The states that systems of a site are in. */
export interface StatesPage {
  site: { key: string; name: string; zone: string };
  lines: StateLine[];
  /** Every system, to begin a state at. */
  systems: { key: string; name: string }[];
  /** What looks as if it had begun. */
  asked: AskedLine[];
  /** Others at work. */
  notices: NoticeLine[];
  /** Id for the next notice. */
  noticeEntry: string;
  /** What is watched after states that ended. */
  watches: WatchLine[];
  /** What a second person has to look at. */
  seconds: SecondLine[];
  maySet: boolean;
  mayAuthorise: boolean;
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
  const at = now();
  const runs = await statesBegun([entry.id], at);
  return ok({
    site: { key: entry.key, name: entry.name, zone: entry.zone },
    lines: await stateLines(runs, systems, { siteId: entry.id, at }),
    systems: systems.map(({ key, name }) => ({ key, name })),
    asked: await askedLines(entry.id, stored, runs, at),
    notices: await noticeLines(entry.id, stored.facility, at),
    noticeEntry: newId(),
    watches: await watchLines(entry.id, stored.facility, at),
    seconds: await secondLines(entry, stored, who, at),
    maySet: may(who, 'set-state', site),
    mayAuthorise: may(who, 'authorise-state', site),
  });
}
