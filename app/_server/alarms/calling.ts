import 'server-only';
import type { AlarmDefinition } from '#core/alarms/definition';
import { besides, rosterAt } from '#core/alarms/roster';
import { calledNextMs, dueAfterMin, isRepeat, USUAL_STEPS } from '#core/alarms/steps';
import { type Roster, type Telling, tellFirst, tellNext } from '#core/alarms/to-tell';
import { addCalls, findTellable, type NewCall } from '#data/alarms/calls';
import type { Transaction } from '#data/transaction';
import { rotaOf } from '../rota/rota-of';
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

  /** Who is told when an alarm calls, or calls anew. @param by account of whoever called for help, who is no help to call */
  async first({ answeredBy }: Pick<AlarmDefinition, 'answeredBy'>, by?: string): Promise<Telling> {
    if (answeredBy === 'nobody') return tellFirst(answeredBy, { on: [], members: [] });
    const roster = await this.rosterNow();
    return tellFirst(answeredBy, by === undefined ? roster : besides(roster, by));
  }

  /** Who is told after a step, counted from 1, that nobody acknowledged. */
  async next(step: number): Promise<Telling> {
    return tellNext(step, await this.rosterNow());
  }

  /** When the step after one is due of an alarm that calls now; null when it calls nobody. */
  nextStepAt(telling: Telling, definition: Pick<AlarmDefinition, 'escalateAfterMin' | 'answeredBy'>): Date | null {
    return definition.answeredBy === 'nobody' ? null : this.dueAfter(telling, definition, this.at);
  }

  /** When the step after one is due of an alarm that was at a step before it. */
  stepAfter(
    telling: Telling,
    definition: Pick<AlarmDefinition, 'escalateAfterMin'> | undefined,
    before: { step: number; nextStepAt: Date | null },
  ): Date {
    const { callSteps = USUAL_STEPS } = this.site.facility.site;
    const min = dueAfterMin(callSteps, before.step + 1, definition?.escalateAfterMin) ?? 0;
    const called = new Date((before.nextStepAt ?? this.at).getTime() - min * 60_000);
    return this.dueAfter(telling, definition, called);
  }

  /** Whether a step is the site's last one repeated. */
  isRepeat(step: number): boolean {
    return isRepeat(this.site.facility.site, step);
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

  private dueAfter(
    { step }: Telling,
    definition: Pick<AlarmDefinition, 'escalateAfterMin'> | undefined,
    called: Date,
  ): Date {
    const times = { calledMs: called.getTime(), atMs: this.at.getTime(), secondMin: definition?.escalateAfterMin };
    return new Date(calledNextMs(this.site.facility.site, step, times));
  }

  private async rosterNow(): Promise<Roster> {
    const { tx, siteId, site, at } = this;
    if (this.roster) return this.roster;
    const { exceptions } = await rotaOf(siteId, site.facility, at.getTime(), tx);
    this.roster = rosterAt(site.facility, exceptions, await findTellable(tx, siteId), at.getTime());
    return this.roster;
  }
}
