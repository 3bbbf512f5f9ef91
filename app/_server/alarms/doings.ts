import 'server-only';
import { after, RAISED } from '#core/alarms/known';
import { rosterAt } from '#core/alarms/roster';
import { dueAfterMin, USUAL_STEPS } from '#core/alarms/steps';
import { type Roster, type Telling, tellFirst, tellNext } from '#core/alarms/to-tell';
import { addCalls, findTellable, type NewCall } from '#data/alarms/calls';
import {
  addEvents,
  addOccurrences,
  holdOpen,
  keepOpen,
  type NewEvent,
  type NewOccurrence,
  type OpenRow,
} from '#data/alarms/occurrences';
import { newId } from '#data/new-id';
import { news } from '#data/news';
import { appendRecords } from '#data/records/append-records';
import type { RecordEntry } from '#data/records/seal';
import type { Transaction } from '#data/transaction';
import type { DefinedAlarm, DefinedSite } from './defined-alarms';
import { wakeCall } from './wake-call';

/** Why an alarm ended that did not return to normal. */
export type EndedBy = 'definition-changed' | 'retired';

/** What became of the alarms of a site in one turn: gathered first, then kept all at once. */
export class Doings {
  private readonly occurrences: NewOccurrence[] = [];
  private readonly events: NewEvent[] = [];
  private readonly touched = new Set<string>();
  private readonly calls: NewCall[] = [];
  private readonly records: RecordEntry[] = [];
  private roster: Roster | null = null;

  private constructor(
    private readonly tx: Transaction,
    private readonly siteId: string,
    private readonly site: DefinedSite,
    private readonly at: Date,
    private readonly open: Map<string, OpenRow>,
  ) {}

  static async begin(tx: Transaction, siteId: string, site: DefinedSite, at: Date): Promise<Doings> {
    return new Doings(tx, siteId, site, at, await holdOpen(tx, siteId));
  }

  /** An alarm is raised, and whoever is to know is called. @returns id of this time it is raised */
  async raise(
    { id, systemId, definition, kept }: DefinedAlarm,
    beganMs: number,
    value: number | null,
  ): Promise<string> {
    const occurrenceId = newId();
    const [raisedAt, beganAt] = [this.at, new Date(beganMs)];
    this.occurrences.push({ id: occurrenceId, alarmId: id, systemId, beganAt, raisedAt, value, definition: kept });
    const telling = tellFirst(definition.answeredBy, await this.rosterNow());
    const told = { step: telling.step, told: telling.whom.length };
    const detail = definition.answeredBy === 'nobody' ? { answeredBy: 'nobody' } : told;
    this.events.push({ occurrenceId, kind: 'raised', at: this.at, detail });
    const nextStepAt = this.nextStepAt(telling, id, this.at);
    this.set({ occurrenceId, alarmId: id, systemId, raisedAt, ...RAISED, step: telling.step, nextStepAt });
    this.record('alarm-raised', { alarm: id, occurrence: occurrenceId, began: beganAt.toISOString(), value });
    this.call(occurrenceId, telling);
    if (telling.step > 1) this.escalated(occurrenceId, id, telling, telling.whom[0]?.why ?? 'nobody-on');
    return occurrenceId;
  }

  /** What an alarm watches is back to normal, or the alarm is none any more. */
  end(occurrenceId: string, by: { atMs: number; value: number | null } | EndedBy): void {
    const row = this.open.get(occurrenceId);
    const known = row && after(row, 'returned');
    if (!(row && known)) return;
    const isGone = typeof by === 'string';
    const detail = isGone ? { why: by } : { at: new Date(by.atMs).toISOString(), value: by.value };
    this.events.push({ occurrenceId, kind: 'returned', at: this.at, detail });
    // Nobody is called out of bed for an alarm that is defined no more.
    this.set({ ...row, ...known, ...(isGone ? { nextStepAt: null } : {}) });
    this.record('alarm-returned', { alarm: row.alarmId, occurrence: occurrenceId, ...detail });
  }

  /** Calls whoever comes next for what nobody acknowledged in time. */
  async escalateDue(): Promise<void> {
    for (const row of [...this.open.values()]) {
      if (row.acknowledged || row.nextStepAt === null || row.nextStepAt > this.at) continue;
      const telling = tellNext(row.step, await this.rosterNow());
      this.set({ ...row, step: telling.step, nextStepAt: this.nextStepAt(telling, row.alarmId, row.raisedAt) });
      this.call(row.occurrenceId, telling);
      this.escalated(row.occurrenceId, row.alarmId, telling, 'lead');
    }
  }

  /** Keeps all of it, and has it told. */
  async keep(): Promise<void> {
    if (this.events.length === 0) return;
    const { tx, siteId, at } = this;
    await addOccurrences(tx, siteId, this.occurrences);
    await addEvents(tx, siteId, this.events);
    await keepOpen(
      tx,
      siteId,
      [...this.touched].flatMap((id) => this.open.get(id) ?? []),
    );
    for (const call of await addCalls(tx, siteId, this.calls)) await wakeCall(tx, { siteId, id: call });
    await appendRecords(tx, siteId, this.records, at);
    await news(tx, siteId, 'alarms');
  }

  private async rosterNow(): Promise<Roster> {
    const { tx, siteId, site, at } = this;
    this.roster ??= rosterAt(site.facility, await findTellable(tx, siteId), at.getTime());
    return this.roster;
  }

  /** When the step after one is due, of an alarm that was raised at an instant; null when there is none. */
  private nextStepAt({ step, hasNext }: Telling, alarm: string, raisedAt: Date): Date | null {
    const steps = this.site.facility.site.callSteps ?? USUAL_STEPS;
    const own = this.site.alarms.get(alarm)?.definition.escalateAfterMin;
    const min = hasNext ? dueAfterMin(steps, step + 1, own) : null;
    return min === null ? null : new Date(raisedAt.getTime() + min * 60_000);
  }

  private set(row: OpenRow): void {
    this.open.set(row.occurrenceId, row);
    this.touched.add(row.occurrenceId);
  }

  private call(occurrenceId: string, { step, whom }: Telling): void {
    for (const { account, why } of whom)
      this.calls.push({ occurrenceId, step, accountId: account, why, madeAt: this.at });
  }

  private escalated(occurrenceId: string, alarm: string, { step, whom }: Telling, why: string): void {
    const detail = { step, why, told: whom.length };
    this.events.push({ occurrenceId, kind: 'escalated', at: this.at, detail });
    this.record('alarm-escalated', { alarm, occurrence: occurrenceId, ...detail });
  }

  private record(kind: string, body: Record<string, unknown>): void {
    this.records.push({ kind, body });
  }
}
