import 'server-only';
import { changesOf } from '#core/alarms/life/changes';
import { type StateNow, suppressedBy } from '#core/alarms/life/suppression';
import type { NewEvent } from '#data/alarms/occurrences';
import {
  beginSuppression,
  type EndedWhy,
  endSuppression,
  type NewSuppression,
  type SuppressedRow,
} from '#data/alarms/suppressions';
import type { Transaction } from '#data/transaction';
import type { DefinedSite } from './defined-alarms';
import type { Times } from './times';

/** What the record calls the beginning and the end of each. */
const RECORDED = {
  shelved: ['alarm-shelved', 'alarm-unshelved'],
  'by-design': ['alarm-suppressed-by-design', 'alarm-no-longer-by-design'],
  'out-of-service': ['alarm-out-of-service', 'alarm-back-in-service'],
} as const;

/** What the suppression of an alarm that ended leaves to do: times it was raised that have to call now. */
export type Resumed = { occurrenceId: string; event: NewEvent }[];

/** What is shelved, suppressed by design and out of service at a site in one turn. What is begun and ended is kept at once. */
export class Suppressing {
  constructor(
    private readonly tx: Transaction,
    private readonly siteId: string,
    private readonly times: Times,
    private readonly at: Date,
    private rows: SuppressedRow[],
  ) {}

  /** What an alarm is suppressed by now. */
  of(alarmId: string): SuppressedRow[] {
    return this.rows.filter((row) => row.alarmId === alarmId);
  }

  /** Begins it: what is up of the alarm calls nobody from now on. */
  async begin(begun: NewSuppression): Promise<void> {
    const { alarmId, kind, until, at: _, ...said } = begun;
    const wasFree = this.of(alarmId).length === 0;
    const row = await beginSuppression(this.tx, this.siteId, begun);
    this.rows.push(row);
    const { detail = {}, owner, ...rest } = said;
    // The account an entry is about stands under that word, so that it is told by name.
    const account = owner === undefined ? {} : { account: owner };
    this.times.record(RECORDED[kind][0], {
      alarm: alarmId,
      until: until.toISOString(),
      ...rest,
      ...account,
      ...detail,
    });
    if (!wasFree) return;
    for (const { id } of changesOf('suppressed', this.times.ofAlarm(alarmId), false))
      this.times.change(id, 'suppressed', this.detailOf(row), { step: 0, nextStepAt: null, turnBy: null });
  }

  /** Ends it. @returns what has to call now, where nothing else suppresses the alarm */
  async end(row: SuppressedRow, why: EndedWhy, by?: string, note?: string): Promise<Resumed> {
    const { alarmId, kind } = row;
    const said = { ...(by === undefined ? {} : { by }), ...(note === undefined ? {} : { note }) };
    await endSuppression(this.tx, this.siteId, row, { at: this.at, why, ...said });
    this.rows = this.rows.filter((one) => one !== row);
    this.times.record(RECORDED[kind][1], { alarm: alarmId, why, ...said });
    if (this.of(alarmId).length > 0) return [];
    const detail = { suppression: kind, why };
    return changesOf('unsuppressed', this.times.ofAlarm(alarmId), true).flatMap(({ id }) => {
      const event = this.times.change(id, 'unsuppressed', detail);
      return event && this.times.get(id)?.acknowledged === false ? [{ occurrenceId: id, event }] : [];
    });
  }

  /**
   * Ends what is over, and begins and ends what the operating states of the systems suppress by design.
   *
   * @param states   those in force, by the id of the system
   * @returns        what has to call now
   */
  async pass(site: DefinedSite, states: ReadonlyMap<string, readonly StateNow[]>): Promise<Resumed> {
    const resumed: Resumed = [];
    for (const row of [...this.rows]) {
      const defined = site.alarms.get(row.alarmId);
      const isOver = row.until <= this.at;
      const why = !defined ? 'retired' : isOver ? 'time' : null;
      if (why !== null) resumed.push(...(await this.end(row, why)));
    }
    for (const { id, systemId, system, definition } of site.alarms.values()) {
      const own = this.of(id).find(({ kind }) => kind === 'by-design');
      if (!own && definition.suppressedIn === undefined) continue;
      const now = suppressedBy(system, definition, states.get(systemId) ?? [], this.at.getTime());
      if (now && !own) {
        const detail = { state: now.state, run: now.run };
        await this.begin({ alarmId: id, kind: 'by-design', at: this.at, until: new Date(now.untilMs), detail });
      } else if (own && !now) resumed.push(...(await this.end(own, 'state-over')));
    }
    return resumed;
  }

  /** What the life of an alarm says of what it is suppressed by. */
  detailOf({ kind, until }: SuppressedRow): Record<string, unknown> {
    return { suppression: kind, until: until.toISOString() };
  }
}
