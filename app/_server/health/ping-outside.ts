import 'server-only';
import { judgingNow } from '#data/alarms/judging';
import { notePath } from '#data/calls/paths';
import { now } from '../clock';
import { env } from '../env';
import { isCalling, isJudging } from './judged';

/** ms the other side has to answer. */
const PATIENCE_MS = 10_000;

/**
 * Asks an address outside, so that whoever is there notices when this stops: alarms are being judged and calls get out, or it is
 * not asked. Whoever runs the machine named it, and a redirect, which somebody else could write, is not followed.
 */
export async function pingOutside(): Promise<void> {
  const { HOLDFAST_PING_URL: url } = env();
  if (url === undefined) return;
  const at = now();
  const judging = await judgingNow();
  if (!isJudging(judging, at)) return await notePath('outside', false, 'not asked: alarms are not being judged', at);
  if (!isCalling(judging, at)) return await notePath('outside', false, 'not asked: calls do not get out', at);
  try {
    const answer = await fetch(url, { redirect: 'manual', signal: AbortSignal.timeout(PATIENCE_MS) });
    await answer.body?.cancel();
    await notePath('outside', answer.ok, answer.ok ? null : `status ${answer.status}`, at);
  } catch (error) {
    await notePath('outside', false, error instanceof Error ? error.message.slice(0, 200) : 'no answer', at);
  }
}
