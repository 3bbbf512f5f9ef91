import 'server-only';
import type { AlarmDefinition } from '#core/alarms/definition';
import { rosterAt } from '#core/alarms/roster';
import { dueAfterMin, USUAL_STEPS } from '#core/alarms/steps';
import { type Roster, type Telling, tellFirst, tellNext } from '#core/alarms/to-tell';
import { addCalls, findTellable, type NewCall } from '#data/alarms/calls';
import type { OpenRow } from '#data/alarms/occurrences';
import type { Transaction } from '#data/transaction';
import type { DefinedSite } from './defined-alarms';
import { wakeCall } from './wake-call';

/** Who is told of the alarms of a site in one turn: gathered first, then kept. */
export class Calling {
  private readonly calls: NewCall[] = [];
  private roster: Roster | null = null;

  constructor(
    private readonly tx: Transaction,
    private readonly siteId: string,
    private readonly site: DefinedSite,
    private readonly at: Date,
  ) {}

  /** Who is told when an alarm calls, or calls anew. */
  async first({ answeredBy }: Pick<AlarmDefinition, 'answeredBy'>): Promise<Telling> {
    return tellFirst(answeredBy, await this.rosterNow());
  }

  /** Who is told when nobody acknowledged. */
  async next({ step }: OpenRow): Promise<Telling> {
    return tellNext(step, await this.rosterNow());
  }

  /** When the step after one is due, of an alarm that calls, or called anew, at an instant; null when there is none. */
  nextStepAt({ step, hasNext }: Telling, alarm: string, calledAt: Date): Date | null {
    const min = hasNext ? this.dueAfterMin(step + 1, alarm) : null;
    return min === null ? null : new Date(calledAt.getTime() + min * 60_000);
  }

  /** When an alarm that waits for its next step called, or called anew. */
  calledAt({ step, alarmId, nextStepAt, raisedAt }: OpenRow): Date {
    const min = this.dueAfterMin(step + 1, alarmId);
    return nextStepAt === null || min === null ? raisedAt : new Date(nextStepAt.getTime() - min * 60_000);
  }

  /** Has somebody told. */
  call({ occurrenceId, again }: { occurrenceId: string; again: number }, { step, whom }: Telling): void {
    for (const { account, why } of whom)
      this.calls.push({ occurrenceId, again, step, accountId: account, why, madeAt: this.at });
  }

  /** Keeps who is told. */
  async keep(): Promise<void> {
    const { tx, siteId } = this;
    for (const call of await addCalls(tx, siteId, this.calls)) await wakeCall(tx, { siteId, id: call });
  }

  private dueAfterMin(step: number, alarm: string): number | null {
    const steps = this.site.facility.site.callSteps ?? USUAL_STEPS;
    return dueAfterMin(steps, step, this.site.alarms.get(alarm)?.definition.escalateAfterMin);
  }

  private async rosterNow(): Promise<Roster> {
    const { tx, siteId, site, at } = this;
    this.roster ??= rosterAt(site.facility, await findTellable(tx, siteId), at.getTime());
    return this.roster;
  }
}
