import 'server-only';
import { changesOf, NEW } from '#core/alarms/life/changes';
import { isCalling } from '#core/alarms/known';
import type { Turn } from '#core/alarms/is-true';
import type { Telling } from '#core/alarms/to-tell';
import type { Priority } from '#core/alarms/design/priority';
import type { StateNow } from '#core/alarms/life/suppression';
import { type NewEvent, type NewOccurrence, holdOpen, type OpenRow } from '#data/alarms/occurrences';
import { openByHand } from '#data/alarms/by-hand';
import { proposedPriorities } from '#data/alarms/proposed';
import { holdSuppressed, type NewSuppression, type SuppressedRow } from '#data/alarms/suppressions';
import { news } from '#data/news';
import type { Transaction } from '#data/transaction';
import { Calling } from './calling';
import { backupsFailing, foldedUnder } from './cascade';
import type { CallableAlarm, DefinedAlarm, DefinedSite } from './defined-alarms';
import { Suppressing } from './suppressing';
import { Times } from './times';

/** Why an alarm ended that did not return to normal. */
export type EndedBy = 'definition-changed' | 'retired';

/** What calls somebody in this turn: it was raised, or calls anew. */
export interface Fresh {
  id: string;
  /** Null: it is defined no more. */
  alarm: CallableAlarm | null;
  beganMs: number;
  event: NewEvent;
  /** Of one that is raised in this turn. */
  occurrence: NewOccurrence | null;
}

/**
 * ms for which an alarm that was raised by a reading that came late is not called for: what came after it may be under way, and
 * say that it is over. Common practice, no source.
 */
const HELD_BACK_MS = 60_000;

/** When somebody is called for what came late: never for what is over by now. */
function heldBackUntil(row: OpenRow, at: Date): Date | null {
  return isStanding(row) ? new Date(at.getTime() + HELD_BACK_MS) : null;
}

/** Whether there is still something to see to: what is back to normal by itself waits to be acknowledged. */
function isStanding({ active, latched }: OpenRow): boolean {
  return active || latched;
}

/** What becomes of the alarms of a site in one turn: gathered first, then kept all at once. */
export class Doings {
  private readonly fresh: Fresh[] = [];
  private hasSuppressed = false;

  private constructor(
    private readonly tx: Transaction,
    private readonly siteId: string,
    private readonly site: DefinedSite,
    private readonly at: Date,
    readonly times: Times,
    private readonly calling: Calling,
    private readonly suppressing: Suppressing,
    /** Alarms that people raised and that want something still, by their ids: no description has them. */
    private readonly byHand: Map<string, CallableAlarm>,
  ) {}

  static async begin(tx: Transaction, siteId: string, site: DefinedSite, at: Date): Promise<Doings> {
    const times = new Times(await holdOpen(tx, siteId), at);
    const suppressing = new Suppressing(tx, siteId, times, at, await holdSuppressed(tx, siteId));
    const isAnyByHand = times.all().some(({ alarmId }) => !site.alarms.has(alarmId));
    const byHand = isAnyByHand ? await openByHand(tx, siteId) : new Map<string, CallableAlarm>();
    return new Doings(tx, siteId, site, at, times, new Calling(tx, siteId, site, at), suppressing, byHand);
  }

  /** Somebody calls for help. @returns id of the time it is raised */
  raiseByHand(alarm: CallableAlarm, beganMs: number, by: string): string {
    this.byHand.set(alarm.id, alarm);
    const { occurrence, event } = this.times.begin(alarm, beganMs, null, by);
    const { on } = alarm.kept;
    if (on.kind === 'by-hand' && on.saw !== undefined) event.note = on.saw;
    this.fresh.push({ id: occurrence.id, alarm, beganMs, event, occurrence });
    return occurrence.id;
  }

  private alarmOf(id: string | undefined): CallableAlarm | null {
    return this.site.alarms.get(id ?? '') ?? this.byHand.get(id ?? '') ?? null;
  }

  /** What an alarm watches holds. @returns id of the time it is raised */
  raise(alarm: DefinedAlarm, { atMs: beganMs, value, isLate }: Omit<Turn, 'kind'>): string {
    const { times } = this;
    const late = isLate === true ? { late: true } : {};
    const [by] = this.suppressing.of(alarm.id);
    for (const { id, changes } of changesOf('condition-true', times.ofAlarm(alarm.id), by !== undefined)) {
      if (id !== NEW) {
        const event = times.change(id, 'raised-again', { began: new Date(beganMs).toISOString(), value, ...late });
        if (event && !by) this.fresh.push({ id, alarm, beganMs, event, occurrence: null });
        return id;
      }
      const { occurrence, event } = times.begin(alarm, beganMs, value);
      event.detail = { ...event.detail, ...late };
      if (by && changes.includes('suppressed'))
        times.change(occurrence.id, 'suppressed', this.suppressing.detailOf(by));
      else this.fresh.push({ id: occurrence.id, alarm, beganMs, event, occurrence });
      return occurrence.id;
    }
    throw new Error(`Alarm ${alarm.id} holds already`);
  }

  /** What an alarm watches is back to normal, or the alarm is none any more. */
  end(occurrenceId: string, by: { atMs: number; value: number | null } | EndedBy): void {
    const isGone = typeof by === 'string';
    const detail = isGone ? { why: by } : { at: new Date(by.atMs).toISOString(), value: by.value };
    // Nobody is called out of bed for an alarm that is defined no more.
    this.times.change(occurrenceId, 'returned', detail, { turnBy: null, ...(isGone ? { nextStepAt: null } : {}) });
  }

  /** Ends what no longer suppresses, and begins what operating states do. @param states those in force, by system */
  async passSuppressed(states: ReadonlyMap<string, readonly StateNow[]>): Promise<void> {
    this.resume(await this.suppressing.pass(this.site, states));
  }

  /** What keeps an alarm from calling now. */
  suppressedBy(alarmId: string): SuppressedRow[] {
    return this.suppressing.of(alarmId);
  }

  /** An alarm is shelved, or taken out of service. */
  async suppress(begun: NewSuppression): Promise<void> {
    this.hasSuppressed = true;
    await this.suppressing.begin(begun);
  }

  /** Somebody ends that. */
  async unsuppress(row: SuppressedRow, by: string, note?: string): Promise<void> {
    this.hasSuppressed = true;
    this.resume(await this.suppressing.end(row, 'person', by, note));
  }

  /** Alarms whose second clock has run out, by their ids. */
  clocksDue(): string[] {
    return this.times.all().flatMap(({ alarmId, turnBy }) => (turnBy !== null && turnBy <= this.at ? [alarmId] : []));
  }

  /** An alarm that was acknowledged calls again. */
  recall(row: OpenRow, detail: Record<string, unknown>): void {
    const event = this.times.change(row.occurrenceId, 'recalled', detail);
    if (event) this.callAnew(row.occurrenceId, event);
  }

  /** Folds what an alarm of before explains, calls whoever is to know of the rest, and whoever comes next where nobody answered. */
  async tell(): Promise<void> {
    const proposed = await this.proposed();
    const backups = backupsFailing(this.site, this.times.all(), this.fresh);
    for (const { row, by } of backups)
      this.recall(row, { why: 'backup-failed', alarm: by.alarm?.id, occurrence: by.id });
    const folded = foldedUnder(this.site, this.times.all(), this.fresh, proposed);
    for (const one of this.fresh) {
      const cause = folded.get(one.id);
      const row = this.times.get(one.id);
      if (!row) continue;
      if (cause && one.occurrence) one.occurrence.causeId = cause.id;
      // That the backup fails is said by both: by what it stands in for, and by itself.
      if (cause?.leavesCalling && !backups.some(({ by }) => by === one)) {
        this.times.put({ ...row, causeId: cause.id });
        one.event.detail = { ...one.event.detail, folded: cause.id };
      } else await this.callFor(cause ? { ...row, causeId: cause.id } : row, one);
    }
    await this.unfold();
    await this.escalateDue();
  }

  /** What the reviews propose for whatever is raised in this turn, and what it may be folded under; kept with what is raised. */
  private async proposed(): Promise<ReadonlyMap<string, Priority>> {
    const raised = this.fresh.flatMap(({ occurrence }) => occurrence ?? []);
    if (raised.length === 0) return new Map();
    const alarms = new Set(this.times.all().map(({ alarmId }) => alarmId));
    const proposed = await proposedPriorities(this.tx, this.siteId, [...alarms]);
    for (const one of raised) {
      const level = proposed.get(one.alarmId);
      if (level) one.definition = { ...one.definition, proposed: level };
    }
    return proposed;
  }

  /** Keeps all of it, and has it told. */
  async keep(): Promise<void> {
    const { tx, siteId } = this;
    const isSome = await this.times.keep(tx, siteId);
    if (!isSome && !this.hasSuppressed) return;
    await this.calling.keep();
    await news(tx, siteId, 'alarms');
  }

  private resume(resumed: readonly { occurrenceId: string; event: NewEvent }[]): void {
    for (const { occurrenceId, event } of resumed) this.callAnew(occurrenceId, event);
  }

  private callAnew(id: string, event: NewEvent): void {
    const alarm = this.alarmOf(this.times.get(id)?.alarmId);
    this.fresh.push({ id, alarm, beganMs: this.at.getTime(), event, occurrence: null });
  }

  private async callFor(row: OpenRow, { alarm, event }: Fresh): Promise<void> {
    if (!alarm) return this.times.put(row);
    const isNobody = alarm.definition.answeredBy === 'nobody';
    if (event.detail?.late === true && !isNobody)
      return this.times.put({ ...row, nextStepAt: heldBackUntil(row, this.at) });
    const telling = await this.callFirst(row, alarm, event.kind === 'raised' ? event.by : undefined);
    event.detail = {
      ...event.detail,
      ...(isNobody ? { answeredBy: 'nobody' } : { step: telling.step, told: telling.whom.length }),
    };
    if (telling.step > 1) this.escalated(row, telling, telling.whom[0]?.why ?? 'nobody-on');
  }

  /** Calls whoever is called first, but for whoever called for help. */
  private async callFirst(row: OpenRow, { definition }: CallableAlarm, by?: string): Promise<Telling> {
    const telling = await this.calling.first(definition, by);
    this.times.put({ ...row, step: telling.step, nextStepAt: this.calling.nextStepAt(telling, definition) });
    this.calling.call(row, telling);
    return telling;
  }

  /** What is folded calls by itself once what it is folded under no longer calls, and it still holds. */
  private async unfold(): Promise<void> {
    for (const row of this.times.all()) {
      if (row.causeId === null || row.step > 0 || !row.active || !isCalling(row)) continue;
      const cause = this.times.get(row.causeId);
      if (cause?.active && !cause.suppressed) continue;
      const alarm = this.alarmOf(row.alarmId);
      const event = this.times.say(row.occurrenceId, 'unfolded', {});
      this.times.record('alarm-unfolded', { alarm: row.alarmId, occurrence: row.occurrenceId });
      await this.callFor(row, { id: row.occurrenceId, alarm, beganMs: 0, event, occurrence: null });
    }
  }

  /**
   * Calls whoever comes next for what nobody acknowledged in time. What is back to normal by itself is not repeated for: it
   * waits to be acknowledged.
   */
  private async escalateDue(): Promise<void> {
    for (const row of this.times.all()) {
      if (!isCalling(row) || row.nextStepAt === null || row.nextStepAt > this.at) continue;
      if (row.step === 0) {
        await this.callHeldBack(row);
        continue;
      }
      const telling = await this.calling.next(row.step);
      if (this.calling.isRepeat(telling.step) && !isStanding(row)) {
        this.times.put({ ...row, nextStepAt: null });
        continue;
      }
      const nextStepAt = this.calling.stepAfter(telling, this.alarmOf(row.alarmId)?.definition, row);
      this.times.put({ ...row, step: telling.step, nextStepAt });
      this.calling.call(row, telling);
      this.escalated(row, telling, 'lead');
    }
  }

  /** Of what came late nothing that came since says that it is over: whoever is to know is called now. */
  private async callHeldBack(row: OpenRow): Promise<void> {
    const alarm = this.site.alarms.get(row.alarmId);
    if (!(alarm && isStanding(row))) return this.times.put({ ...row, nextStepAt: null });
    this.escalated(row, await this.callFirst(row, alarm), 'late');
  }

  private escalated({ occurrenceId, alarmId }: OpenRow, { step, whom }: Telling, why: string): void {
    const detail = { step, why, told: whom.length, ...(this.calling.isRepeat(step) ? { repeated: true } : {}) };
    this.times.say(occurrenceId, 'escalated', detail);
    this.times.record('alarm-escalated', { alarm: alarmId, occurrence: occurrenceId, ...detail });
  }
}
