import 'server-only';
import type { Facility } from '#core/facility/facility';
import type { Shown, ShownLine } from '#core/handover/shown';
import { onNow } from '#core/rota/on-now';
import { listSuppressed } from '#data/alarms/suppressions';
import { listOpenAlarms } from '#data/alarms/told';
import { openCallOuts } from '#data/call-outs/call-outs';
import { openAnimalWatches } from '#data/handover/animal-watches';
import { personIds } from '#data/handover/names';
import { openNotices } from '#data/notices/notices';
import { openSignatures } from '#data/states/signatures';
import { statesInForce } from '#data/states/states';
import type { SiteToday } from '../reviews/find-stored-site';
import { rotaOf } from '../rota/rota-of';
import { roundsStanding } from '../rounds/rounds-standing';
import { watchLines } from '../states/watch-lines';
import {
  aloneSection,
  alarmSection,
  animalSection,
  iso,
  line,
  noticeSection,
  safeguardSections,
  secondSection,
  stateSection,
  suppressedSection,
} from './sections';

/** ms back that missed rounds are told of. */
const DAY_MS = 86_400_000;

/** What stands at a site, for whoever takes it over: as it is at an instant, with people by their ids. */
export async function gatherShown({ entry, stored, today }: SiteToday, at: Date): Promise<Shown> {
  const { facility, systemIds } = stored;
  const { id } = entry;
  const keys = new Map([...systemIds].map(([key, of]) => [of, key]));
  const nameOfKey = (wanted: string) => facility.systems.find(({ key }) => key === wanted)?.name ?? wanted;
  const nameOf = (of: string | null) => (of === null ? null : nameOfKey(keys.get(of) ?? ''));
  const watched = await watchLines(id, facility, at);
  return {
    alone: aloneSection(await openCallOuts(id), at),
    alarms: alarmSection(await listOpenAlarms(id)),
    suppressed: suppressedSection(await listSuppressed([id])),
    states: stateSection(await statesInForce(id, at)),
    watched: watched.map(({ title, system, look, endedAt, until, isLate }) =>
      line(title, { where: system.name, more: look, since: endedAt, until, isAbnormal: isLate }),
    ),
    seconds: secondSection(await openSignatures(id, at), nameOf),
    ...safeguardSections(facility, today),
    animals: animalSection(await openAnimalWatches(id), nameOf, at),
    overdue: await overdueSection(entry, facility, at),
    notices: noticeSection(await openNotices(id, at), nameOfKey),
    on: await onSection(id, facility, at),
  };
}

/** Rounds that are late, or were missed within a day. */
async function overdueSection(entry: SiteToday['entry'], facility: Facility, at: Date): Promise<ShownLine[]> {
  const { walks } = await roundsStanding(entry, facility, at);
  const since = at.getTime() - DAY_MS;
  return walks
    .filter(({ standing, closesAt }) => standing === 'late' || (standing === 'missed' && closesAt >= since))
    .map(({ slot, standing, dueAt }) => line(slot.name, { more: standing, since: iso(dueAt), isAbnormal: true }));
}

/** Who is on, by their ids. */
async function onSection(siteId: string, facility: Facility, at: Date): Promise<ShownLine[]> {
  const ids = await personIds(siteId);
  const rota = await rotaOf(siteId, facility, at.getTime());
  return onNow(rota, at.getTime()).map(({ person, kind, until }) =>
    line(kind === 'on-call' ? 'on call' : 'on site', {
      until: until === null ? null : iso(until),
      who: [ids.get(person) ?? []].flat(),
    }),
  );
}
