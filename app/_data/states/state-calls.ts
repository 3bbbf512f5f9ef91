import 'server-only';
import type { Channel } from '#core/alarms/channels';
import { database } from '../client';

/** One attempt to tell somebody that a state has outstayed its end. */
export interface StateCall {
  id: string;
  systemId: string;
  runId: string;
  until: Date;
  /** How often it had called before. */
  turn: number;
  accountId: string;
  channel: Channel;
  at: Date;
  result: 'taken' | 'failed' | 'no-way';
  detail: string | null;
}

/** Notes an attempt. */
export async function addStateCall(siteId: string, call: StateCall): Promise<void> {
  await database().stateCall.create({ data: { siteId, ...call } });
}

/** The attempts of one end of one run, the latest last. */
export async function listStateCalls(siteId: string, runId: string, until: Date): Promise<StateCall[]> {
  const rows = await database().stateCall.findMany({
    where: { siteId, runId, until },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  });
  return rows.map(({ siteId: _, channel, result, ...row }) => ({
    ...row,
    channel: channel as Channel,
    result: result as StateCall['result'],
  }));
}
