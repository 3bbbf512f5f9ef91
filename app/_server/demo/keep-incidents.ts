import 'server-only';
import type { Bodies, Entry } from '#core/incidents/incident';
import { addEntry, digestOf } from '#data/incidents/entries';
import { addIncident } from '#data/incidents/incidents';
import { type SensorHistory, storeHistory } from '#data/readings/store-history';
import type { PastIncident, PastIncidentEntry } from '../../../seed/past/incidents';
import { idFor } from '../../../seed/past/seeded-id';
import { recordOf } from '../incidents/record-of';
import { occurrenceId } from './keep-alarms';
import { type Telling, tell } from './told';

/** Keeps the incidents that a site has behind it, with what was written in them and who signed. */
export async function keepIncidents(telling: Telling): Promise<void> {
  for (const incident of telling.past.incidents) await keepIncident(telling, incident);
}

async function keepIncident(telling: Telling, past: PastIncident): Promise<void> {
  const { tx, siteId, idOf, accountOf } = telling;
  const { id, title, openedMs } = past;
  const systemId = idOf('system', null, past.system);
  const alarm = occurrenceId(telling, past.life);
  const openedBy = accountOf(past.openedBy);
  const row = { id, title, systemId, occurrenceId: alarm, openedAt: new Date(openedMs), openedBy };
  const { number } = await addIncident(tx, siteId, row);
  tell(telling, openedMs, 'incident-opened', { by: openedBy, incident: number, id, system: systemId, alarm, title });
  const entries = past.entries.map((entry) => entryOf(telling, entry));
  const all = [...entries, ...signaturesOf(telling, past, { number, title, entries })];
  for (const entry of all) {
    await addEntry(tx, siteId, id, entry);
    const { kind, body } = recordOf(number, entry);
    tell(telling, entry.recordedMs, kind, body);
  }
  await storeHistory(tx, siteId, entries.flatMap(readingsOf));
}

function entryOf(telling: Telling, { id, kind, atMs, recordedMs, by, body }: PastIncidentEntry): Entry {
  const told = { ...withIds(telling, kind, body) };
  const read = { id, kind, atMs, recordedMs, by: telling.accountOf(by), supersedes: null, reason: null };
  return { ...read, body: told } as Entry;
}

/** Puts ids in the place of what a story calls by `system/key`. */
function withIds({ idOf }: Telling, kind: Entry['kind'], body: Bodies[Entry['kind']]): Bodies[Entry['kind']] {
  const id = (table: string, name: string) => {
    const [system = '', key = ''] = name.split('/');
    return idOf(table, system, key);
  };
  if (kind === 'safeguard' && 'safeguard' in body) return { ...body, safeguard: id('safeguard', body.safeguard) };
  if (kind !== 'measurement' || !('figures' in body)) return body;
  const figures = body.figures.map((one) =>
    one.sensor === undefined ? one : { ...one, sensor: id('sensor', one.sensor) },
  );
  return { ...body, figures };
}

function signaturesOf(
  { accountOf }: Telling,
  { id: incident, signatures }: PastIncident,
  { number, title, entries }: { number: number; title: string; entries: readonly Entry[] },
): Entry[] {
  const sha256 = digestOf({ number, title }, entries);
  const covers = entries.map(({ id }) => id);
  return signatures.map(({ by, as, atMs }): Entry => {
    const id = idFor(atMs, incident, 'signature', as);
    const body = { as, covers, sha256 };
    return { id, kind: 'signature', atMs, recordedMs: atMs, by: accountOf(by), body, supersedes: null, reason: null };
  });
}

/** Figures of a meter become readings by hand. */
function readingsOf(entry: Entry): SensorHistory[] {
  if (entry.kind !== 'measurement' || !entry.body) return [];
  return entry.body.figures.flatMap(({ sensor, value }) =>
    sensor === undefined
      ? []
      : [
          {
            sensorId: sensor,
            origin: 'hand' as const,
            atMs: [entry.atMs],
            values: [value],
            odd: new Map(),
            cameBy: [entry.id],
          },
        ],
  );
}
