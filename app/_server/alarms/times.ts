import 'server-only';
import { after, type Known, raised } from '#core/alarms/known';
import type { OpenTime } from '#core/alarms/life/changes';
import { type AlarmChange, CALLING_CHANGES } from '#core/alarms/life/machine';
import {
  addEvents,
  addOccurrences,
  type EventKind,
  keepOpen,
  type NewEvent,
  type NewOccurrence,
  type OpenRow,
  UNTOLD,
} from '#data/alarms/occurrences';
import { newId } from '#data/new-id';
import { appendRecords } from '#data/records/append-records';
import type { RecordEntry } from '#data/records/seal';
import type { Transaction } from '#data/transaction';
import type { CallableAlarm } from './defined-alarms';

/** The times that alarms of a site were raised, and what becomes of them in one turn: gathered first, then kept all at once. */
export class Times {
  private readonly occurrences: NewOccurrence[] = [];
  private readonly events: NewEvent[] = [];
  private readonly touched = new Set<string>();
  private readonly records: RecordEntry[] = [];

  constructor(
    private readonly open: Map<string, OpenRow>,
    private readonly at: Date,
  ) {}

  /** What of a site still wants something, or of one of its alarms. */
  all(alarmId?: string): OpenRow[] {
    return [...this.open.values()].filter((row) => alarmId === undefined || row.alarmId === alarmId);
  }

  /** What of an alarm still wants something, the oldest first, as the rules of its life take it. */
  ofAlarm(alarmId: string): OpenTime[] {
    const rows = this.all(alarmId).sort((a, b) => (a.occurrenceId < b.occurrenceId ? -1 : 1));
    return rows.map((row) => ({ ...row, id: row.occurrenceId }));
  }

  get(id: string): OpenRow | undefined {
    return this.open.get(id);
  }

  /** An alarm is raised. What was said of it may still be filled in. @param by account of whoever raised it by hand */
  begin(
    { id: alarmId, systemId, definition, kept }: CallableAlarm,
    beganMs: number,
    value: number | null,
    by?: string,
  ): { occurrence: NewOccurrence; event: NewEvent } {
    const [id, beganAt] = [newId(), new Date(beganMs)];
    const occurrence = { id, alarmId, systemId, beganAt, raisedAt: this.at, value, definition: kept, causeId: null };
    this.occurrences.push(occurrence);
    const known = raised(definition.latched ?? false);
    this.put({ occurrenceId: id, alarmId, systemId, raisedAt: this.at, ...known, ...UNTOLD });
    const event = this.say(id, 'raised', {});
    if (by !== undefined) event.by = by;
    const who = by === undefined ? { value } : { by };
    this.record('alarm-raised', { alarm: alarmId, occurrence: id, began: beganAt.toISOString(), ...who });
    return { occurrence, event };
  }

  /**
   * Something becomes of a time that an alarm was raised.
   *
   * @param more   what else stands in its row afterwards
   * @returns      the event; null when it cannot become so
   */
  change(
    id: string,
    change: AlarmChange,
    detail: Record<string, unknown> = {},
    more: Partial<OpenRow> = {},
  ): NewEvent | null {
    const row = this.open.get(id);
    const known: Known | null | undefined = row && after(row, change);
    if (!(row && known)) return null;
    const anew = CALLING_CHANGES.includes(change)
      ? { again: row.again + 1, step: 0, nextStepAt: null, turnBy: null, valueThen: null }
      : {};
    this.put({ ...row, ...known, ...anew, ...more });
    this.record(`alarm-${change}`, { alarm: row.alarmId, occurrence: id, ...detail });
    return this.say(id, change, detail);
  }

  /** The clock was set back: who is called next, and what is looked at again, is so when it would have been. */
  setBack(byMs: number): void {
    const moved = (at: Date | null) => at && new Date(at.getTime() - byMs);
    for (const row of this.all()) this.put({ ...row, nextStepAt: moved(row.nextStepAt), turnBy: moved(row.turnBy) });
  }

  /** Adds an event to the life of an alarm. */
  say(occurrenceId: string, kind: EventKind, detail: Record<string, unknown>): NewEvent {
    const event: NewEvent = { occurrenceId, kind, at: this.at, detail };
    this.events.push(event);
    return event;
  }

  put(row: OpenRow): void {
    this.open.set(row.occurrenceId, row);
    this.touched.add(row.occurrenceId);
  }

  record(kind: string, body: Record<string, unknown>): void {
    this.records.push({ kind, body });
  }

  /** Keeps all of it. @returns whether there was anything */
  async keep(tx: Transaction, siteId: string): Promise<boolean> {
    if (this.touched.size === 0 && this.records.length === 0) return false;
    await addOccurrences(tx, siteId, this.occurrences);
    await addEvents(tx, siteId, this.events);
    const rows = [...this.touched].flatMap((id) => this.open.get(id) ?? []);
    await keepOpen(tx, siteId, rows);
    await appendRecords(tx, siteId, this.records, this.at);
    return true;
  }
}
