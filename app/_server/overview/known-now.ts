import 'server-only';
import type { Facility } from '#core/facility/facility';
import { hoursTonight } from '#core/review/tonight';
import { lastRead, openAlarms } from '#data/overview/system-facts';
import type { SiteEntry } from '#data/sites';
import { statesBegun } from '#data/states/states';
import { dayIn } from '../local-day';
import { type RoundsOfAll, roundsOfAll, roundsStanding } from '../rounds/rounds-standing';
import type { KnownNow } from './system-now';

/** What is known of all sites at once; of one site it is narrowed down without a further question. */
export type KnownOfAll = Pick<KnownNow, 'at' | 'alarms' | 'reads' | 'states'> & { walked: RoundsOfAll };

/** Open alarms, newest readings and states of all these sites: and their rounds: five questions, however many sites and systems there are. */
export async function knownOfAll(siteIds: readonly string[], at: Date): Promise<KnownOfAll> {
  const [alarms, reads, states, walked] = await Promise.all([
    openAlarms(siteIds),
    lastRead(siteIds, at),
    statesBegun(siteIds, at),
    roundsOfAll(siteIds, at),
  ]);
  return {
    at,
    alarms: new Map(alarms.map((one) => [one.systemId, one])),
    reads: new Map(reads.map((one) => [one.systemId, one])),
    states,
    walked,
  };
}

/** The same with how the rounds of one site stand, and the hours of its night. */
export async function knownOfSite(
  { walked, ...all }: KnownOfAll,
  site: SiteEntry,
  facility: Facility,
): Promise<KnownNow> {
  const { bySystem } = await roundsStanding(site, facility, all.at, walked);
  return {
    ...all,
    today: dayIn(site.zone, all.at),
    hours: hoursTonight(site.zone, all.at.getTime()),
    rounds: bySystem,
    states: all.states.filter(({ siteId }) => siteId === site.id),
  };
}
