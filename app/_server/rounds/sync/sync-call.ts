import 'server-only';
import type { ItemAnswer } from '#core/rounds/outbox';
import { findRound } from '#data/rounds/round-row';
import type { SiteEntry } from '#data/sites';
import type { SentItem } from '#shape/rounds/sync';
import { callForHelp } from '../../alarms/call-for-help';
import { refusalWords } from '../../gate/refusal-words';
import type { Who } from '../../gate/who';

/**
 * Calls for help that was asked for where there was no signal. However late it comes it is called: whoever was there has heard of
 * nobody, and only a person knows that it is right again.
 */
export async function syncCall(
  who: Who,
  site: Pick<SiteEntry, 'id' | 'key'>,
  { id, walk, system, what, saw, where }: Extract<SentItem, { kind: 'call' }>,
  seenAt: Date,
): Promise<ItemAnswer> {
  const round = (await findRound(site.id, walk.round))?.id;
  const called = await callForHelp(who, { site: site.key, call: id, system, what, saw, where, round }, seenAt);
  if (!called.ok) return { id, outcome: 'refused', said: `Nobody was called. ${refusalWords(called.reason)}` };
  const { told, isRepeat } = called.value;
  const said =
    told.length === 0
      ? 'It is an alarm now, and nobody could be told: go to a telephone.'
      : `It is an alarm now. Being told: ${told.join(', ')}.`;
  return { id, outcome: isRepeat ? 'repeat' : 'stored', said };
}
