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
import { lastAuthorised } from '#data/states/watched';
import type { SiteToday } from '../reviews/find-stored-site';
import { rotaOf } from '../rota/rota-of';
import { roundsStanding } from '../rounds/rounds-standing';
import { watchLines } from '../states/watch-lines';
import { findUse } from '../rounds/find-use';
import { usedSection } from './used-section';
import { overdueSection } from './overdue-section';
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

/** What stands at a site, for whoever takes it over: as it is at an instant, with people by their ids. */
export async function gatherShown({ entry, stored, today }: SiteToday, at: Date): Promise<Shown> {
  const { facility, systemIds } = stored;
  const { id } = entry;
  const keys = new Map([...systemIds].map(([key, of]) => [of, key]));
  const nameOfKey = (wanted: string) => facility.systems.find(({ key }) => key === wanted)?.name ?? wanted;
  const nameOf = (of: string | null) => (of === null ? null : nameOfKey(keys.get(of) ?? ''));
  const watched = await watchLines(id, facility, at);
  const states = await statesInForce(id, at);
  const leave = await lastAuthorised(
    id,
    states.map(({ run }) => run),
  );
  return {
    alone: aloneSection(await openCallOuts(id), at),
    alarms: alarmSection(await listOpenAlarms(id)),
    suppressed: suppressedSection(await listSuppressed([id])),
    states: stateSection(states, leave, at),
    watched: watched.map(({ title, system, look, endedAt, until, isLate }) =>
      line(title, { where: system.name, more: look, since: endedAt, until, isAbnormal: isLate }),
    ),
    seconds: secondSection(await openSignatures(id, at), nameOf),
    ...safeguardSections(stored.reviewed, today),
    animals: animalSection(await openAnimalWatches(id), nameOf, at),
    overdue: overdueSection(stored.reviewed, await roundsStanding(entry, facility, at), today, at),
    used: usedSection(await findUse(id, facility, today), nameOfKey),
    notices: noticeSection(await openNotices(id, at), nameOfKey),
    on: await onSection(id, facility, at),
  };
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
