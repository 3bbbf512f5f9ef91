import { instantSaid } from '../words/instant';
import { type SiteView, valueSaid, type WatchedView } from './alarm-view';
import type { Custom } from '#core/units/shown';

/** What keeps an alarm from calling. */
const SUPPRESSION_WORDS: Readonly<Record<string, string>> = {
  shelved: 'shelved',
  'by-design': 'suppressed by design',
  'out-of-service': 'out of service',
};

/** Why that ended. */
const ENDED: Readonly<Record<string, string>> = {
  time: 'its time was up',
  person: 'somebody ended it',
  'state-over': 'the operating state was over',
  retired: 'the alarm was retired',
};

type Detail = Record<string, unknown>;

/** That an alarm calls nobody, and why. */
export function suppressedSaid({ suppression, until }: Detail, { zone }: SiteView): string {
  const by = SUPPRESSION_WORDS[String(suppression)] ?? 'suppressed';
  return `Calls nobody: ${by}${typeof until === 'string' ? ` until ${instantSaid(until, zone)}` : ''}`;
}

/** That what kept an alarm from calling has ended. */
export function unsuppressedSaid({ suppression, why }: Detail): string {
  const by = SUPPRESSION_WORDS[String(suppression)] ?? 'suppressed';
  return `No longer ${by}: ${ENDED[String(why)] ?? 'it ended'}`;
}

/** Why an alarm that somebody acknowledged calls again. */
export function recalledSaid({ why, value }: Detail, watched: WatchedView, units: Custom): string {
  if (why === 'backup-failed') return 'Calls again: the backup in charge fails';
  if (watched.on.kind === 'by-hand')
    return 'Calls again: since it was acknowledged nobody has said that it is right again';
  const seen = typeof value === 'number' ? `, ${valueSaid(watched, value, units)}` : ', and nothing newer was read';
  return `Calls again: since it was acknowledged its value has not turned in time${watched.limits === undefined ? '' : seen}`;
}
