import 'server-only';
import { checksOf } from '#core/rounds/sheet';
import { countRound } from '#core/rounds/count';
import { addPastRounds, type PastSignatureRow } from '#data/demo/past-rounds';
import { type SensorHistory, storeHistory } from '#data/readings/store-history';
import { idFor } from '../../../seed/past/seeded-id';
import type { PastRound } from '../../../seed/past/rounds';
import { type Telling, tell } from './told';

/** Keeps the rounds that were walked, their entries, who signed them and who looked again. */
export async function keepRounds(telling: Telling): Promise<void> {
  const { tx, siteId, past, accountOf } = telling;
  const rows = past.rounds.map((round) => rowOf(telling, round));
  const entries = past.rounds.flatMap(({ id, entries: all }) =>
    all.map(({ atMs, recordedMs, by, ...entry }) => ({
      ...entry,
      roundId: id,
      at: new Date(atMs),
      recordedAt: new Date(recordedMs),
      by: accountOf(by),
    })),
  );
  const signatures = past.rounds.flatMap((round) => signaturesOf(telling, round));
  await addPastRounds(tx, siteId, rows, entries, signatures);
  await storeHistory(tx, siteId, readingsOf(telling));
  for (const round of past.rounds) tellRound(telling, round);
}

function rowOf({ past, idOf, accountOf }: Telling, { id, walk, begunMs, by, sheet }: PastRound) {
  const { key: slot, name } = walk.slot;
  const keys = new Set(sheet.places.flatMap(({ system }) => system?.key ?? []));
  const sensors = Object.fromEntries(
    past.facility.systems
      .filter(({ key }) => keys.has(key))
      .flatMap(({ key, sensors: all }) => all.map((one) => [`${key}/${one.key}`, idOf('sensor', key, one.key)])),
  );
  const slotId = idOf('round_slot', null, slot);
  const [dueAt, begunAt] = [new Date(walk.dueAt), new Date(begunMs)];
  return { id, slotId, name, dueAt, begunAt, begunBy: accountOf(by), sheet: { ...sheet, sensors } };
}

function signaturesOf({ accountOf }: Telling, { id, by, signedMs, secondLook }: PastRound): PastSignatureRow[] {
  const one = (kind: PastSignatureRow['kind'], atMs: number, person: string) => ({
    id: idFor(atMs, id, kind),
    roundId: id,
    kind,
    at: new Date(atMs),
    by: accountOf(person),
  });
  return [
    ...(signedMs === null ? [] : [one('signed', signedMs, by)]),
    ...(secondLook ? [one('second-look', secondLook.atMs, secondLook.by)] : []),
  ];
}

/** Numbers become readings by hand, each with the entry it came by; a corrected one supersedes. */
function readingsOf({ past, idOf }: Telling): SensorHistory[] {
  const found = new Map<string, ReturnType<typeof emptyHistory>>();
  for (const { sheet, entries } of past.rounds) {
    const checks = new Map(checksOf(sheet).map((check) => [check.key, check]));
    for (const { id, check, atMs, value, supersedes } of entries) {
      const about = checks.get(check)?.about;
      if (value?.kind !== 'number' || !about) continue;
      const sensorId = idOf('sensor', about.system, about.key);
      const history = found.get(sensorId) ?? emptyHistory(sensorId);
      found.set(sensorId, history);
      if (value.quality !== 'good')
        history.odd.set(history.atMs.length, { quality: value.quality, reason: value.reason ?? '' });
      history.atMs.push(atMs);
      history.values.push(value.value);
      history.cameBy.push(id);
      history.revisions.push(supersedes === null ? 0 : 1);
    }
  }
  return [...found.values()];
}

function emptyHistory(sensorId: string) {
  const odd: Map<number, { quality: 'suspect' | 'bad'; reason: string }> = new Map();
  const numbers = (): number[] => [];
  const words: string[] = [];
  return {
    sensorId,
    origin: 'hand' as const,
    atMs: numbers(),
    values: numbers(),
    revisions: numbers(),
    cameBy: words,
    odd,
  };
}

function tellRound(telling: Telling, { id, walk, begunMs, by, signedMs, secondLook, sheet, entries }: PastRound): void {
  const { idOf, accountOf } = telling;
  const said = { round: id, slot: idOf('round_slot', null, walk.slot.key) };
  const who = accountOf(by);
  const due = new Date(walk.dueAt).toISOString();
  tell(telling, begunMs, 'round-begun', { by: who, ...said, due, besides: false });
  for (const { id: entry, check: line, recordedMs, supersedes, reason } of entries)
    if (supersedes !== null)
      tell(telling, recordedMs, 'round-corrected', { by: who, ...said, line, entry, supersedes, reason });
  const { lines, abnormal, notDone, corrected } = countRound(checksOf(sheet), entries);
  if (signedMs !== null)
    tell(telling, signedMs, 'round-signed', { by: who, ...said, lines, abnormal, notDone, corrected });
  if (secondLook)
    tell(telling, secondLook.atMs, 'round-looked-at', { by: accountOf(secondLook.by), ...said, soleKeeper: false });
}
