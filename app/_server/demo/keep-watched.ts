import 'server-only';
import { noticeWords } from '#core/notices/kinds';
import { addAnimalWatch } from '#data/handover/animal-watches';
import { addNotice } from '#data/notices/notices';
import { idFor } from '../../../seed/past/seeded-id';
import { onShift } from '../../../seed/past/on-shift';
import { type Telling, tell } from './told';

const HOUR_MS = 3_600_000;
/** What is under watch in the demonstration, and since when before now. */
const WATCHED = { what: 'the smallest of the group', why: 'left its food twice: count, and look at its breathing' };
const SINCE_MS = 20 * HOUR_MS;

/** Keeps the animals that somebody put under watch yesterday, and notice of work by others tomorrow. */
export async function keepWatched(telling: Telling): Promise<void> {
  const { tx, siteId, past, idOf, accountOf } = telling;
  const { facility, untilMs } = past;
  const system = facility.systems.find(({ stock }) => stock.length > 0);
  if (!system) return;
  const systemId = idOf('system', null, system.key);
  const sinceMs = untilMs - SINCE_MS;
  const id = idFor(sinceMs, facility.site.key, 'watched');
  const by = accountOf(onShift(facility, sinceMs, id));
  const at = new Date(sinceMs);
  const until = new Date(untilMs + 52 * HOUR_MS);
  await addAnimalWatch(tx, siteId, { id, systemId, ...WATCHED, until, at, by });
  const body = { by, system: systemId, watch: id, ...WATCHED, until: until.toISOString() };
  tell(telling, sinceMs, 'animals-watched', body);
  const notice = {
    ...{
      id: idFor(sinceMs, facility.site.key, 'notice'),
      kind: 'painting',
      what: 'the corridor beside the plant room',
    },
    ...{ systems: [], todo: noticeWords('painting').todo, at, by },
    from: new Date(untilMs + 14 * HOUR_MS),
    until: new Date(untilMs + 22 * HOUR_MS),
  };
  await addNotice(tx, siteId, notice);
  const { what, todo, from, until: ends } = notice;
  const times = { from: from.toISOString(), until: ends.toISOString() };
  tell(telling, sinceMs, 'notice-added', {
    by,
    notice: notice.id,
    work: notice.kind,
    what,
    systems: [],
    todo,
    ...times,
  });
}
