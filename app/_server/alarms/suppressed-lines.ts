import 'server-only';
import type { SuppressionKind } from '#core/alarms/life/suppression';
import { accountNames } from '#data/accounts/names';
import { listSuppressed } from '#data/alarms/suppressions';

/** An alarm that calls nobody now, as a list shows it. Instants in ISO, UTC. */
export interface SuppressedLine {
  /** What ends it is told by this. */
  run: string;
  alarm: string;
  name: string;
  system: { key: string; name: string };
  kind: SuppressionKind;
  begunAt: string;
  until: string;
  /** Who did it, by name; null for what an operating state does. */
  by: string | null;
  /** Who has it in hand, of one out of service. */
  owner: string | null;
  reason: string | null;
  /** The operating state that suppresses it by design. */
  state: string | null;
  /** The time it was raised that is active now; null while it is not. */
  active: string | null;
}

/** The alarms of a site that call nobody now, what ends first before the rest. */
export async function suppressedLines(siteId: string): Promise<SuppressedLine[]> {
  const rows = await listSuppressed([siteId]);
  const names = await accountNames(rows.flatMap(({ by, owner }) => [by ?? [], owner ?? []].flat()));
  const nameOf = (id: string | null) => (id === null ? null : (names.get(id) ?? id));
  return rows.map(({ runId, alarmId, name, system, kind, begunAt, until, by, owner, reason, state, active }) => ({
    run: runId,
    alarm: alarmId,
    name,
    system: { key: system.key, name: system.name },
    kind,
    begunAt: begunAt.toISOString(),
    until: until.toISOString(),
    by: nameOf(by),
    owner: nameOf(owner),
    reason,
    state,
    active,
  }));
}
