import 'server-only';
import { type AlarmDefinition, ESCALATE_AFTER_MIN } from '#core/alarms/definition';
import { type Member, type Telling, tellFirst, tellLeads } from '#core/alarms/to-tell';
import { onNow } from '#core/rota/on-now';
import { addCalls, findTellable, type NewCall } from '#data/alarms/calls';
import type { Transaction } from '#data/transaction';
import type { DefinedSite } from './defined-alarms';
import { wakeCall } from './wake-call';

/** Who is told of the alarms of a site in one turn: gathered first, then kept. */
export class Calling {
  private readonly calls: NewCall[] = [];
  private members: Member[] | null = null;

  constructor(
    private readonly tx: Transaction,
    private readonly siteId: string,
    private readonly site: DefinedSite,
    private readonly at: Date,
  ) {}

  /** Who is told when an alarm calls, or calls anew. */
  async first({ answeredBy }: Pick<AlarmDefinition, 'answeredBy'>): Promise<Telling> {
    if (answeredBy === 'nobody') return tellFirst(answeredBy, [], []);
    return tellFirst(answeredBy, onNow(this.site.facility, this.at.getTime()), await this.tellable());
  }

  /** Who is told when nobody acknowledged. */
  async next(): Promise<Telling> {
    return tellLeads(await this.tellable());
  }

  /** When the step after one is due; null when there is none. */
  nextStepAt({ hasNext }: Telling, { escalateAfterMin }: Pick<AlarmDefinition, 'escalateAfterMin'>): Date | null {
    return hasNext ? new Date(this.at.getTime() + (escalateAfterMin ?? ESCALATE_AFTER_MIN) * 60_000) : null;
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

  private async tellable(): Promise<Member[]> {
    this.members ??= await findTellable(this.tx, this.siteId);
    return this.members;
  }
}
