import 'server-only';
import { callsWhen, workedSaid } from '#core/alarms/design/words';
import type { ToTell } from '#core/alarms/to-tell';
import { readingSaid } from '#core/readings/figures';
import type { OccurrenceTold } from '#data/alarms/told';
import { wholeAddress } from '../calls/address';
import type { Message } from '../calls/message';
import { timeIn } from '../local-day';

/** Somebody who is told. */
interface Told {
  /** Their name. */
  to: string;
  why: ToTell['why'];
  step: number;
  /** Names of others who are told. */
  others: readonly string[];
  /** Name of whoever called for help; null where readings did. */
  caller: string | null;
}

/**
 * What somebody is told of an alarm. The link only opens its page: mail programs follow links by themselves, so nothing is
 * ever acknowledged by one.
 */
export function callText(told: OccurrenceTold, { to, why, step, others, caller }: Told): Message {
  const { site, system, definition, raisedAt, beganAt, returnedAt } = told;
  const { name } = definition;
  const url = addressOf(told);
  const said = caller === null ? [watchedSaid(told)] : helpSaid(told, caller);
  const when = (at: Date) => `${timeIn(site.zone, at)} (${site.zone})`;
  const lines = [
    `${name}, ${system.name}, ${site.name}`,
    '',
    ...said,
    `Since: ${when(beganAt)}`,
    `Raised: ${when(raisedAt)}`,
    ...(told.calledBy.detail.late === true ? [LATE] : []),
    ...(returnedAt ? [`Back to normal: ${when(returnedAt)}. Nobody has acknowledged it yet.`] : []),
    '',
    WHY[why],
    others.length === 0 ? 'Nobody else is told.' : `Also told: ${others.join(', ')}.`,
    '',
    'Look at it, and acknowledge it on its page:',
    url,
    '',
    'Opening the page acknowledges nothing. Holdfast watches and calls; it switches nothing.',
    '',
  ];
  const what = `${name}, ${system.name}`;
  return {
    subject: `${returnedAt ? 'Alarm, back to normal' : 'Alarm'}: ${what}`,
    text: lines.join('\n'),
    short: `${returnedAt ? 'Alarm, back to normal and not acknowledged' : 'Alarm'} at ${site.name}: ${what}. ${said[0] ?? ''}`,
    url,
    about: told.id,
    type: 'alarm.call',
    data: {
      call: returnedAt ? 'alarm-back-to-normal' : 'alarm',
      alarm: { id: told.id, name, raisedAt: raisedAt.toISOString(), returnedAt: returnedAt?.toISOString() ?? null },
      system: { key: system.key, name: system.name },
      site: { key: site.key, name: site.name },
      to: { name: to, why, step },
    },
  };
}

const LATE = 'What raised it came late, and nothing that came since says that it is over.';

const WHY: Readonly<Record<ToTell['why'], string>> = {
  'on-site': 'You are told because you are on site by the rota.',
  'on-call': 'You are told because you are on call by the rota.',
  named: 'You are told because this alarm names you.',
  lead: 'You are told because nobody has acknowledged it.',
  'nobody-on': 'You are told because nobody is on by the rota.',
  'no-account': 'You are told because none of those who should answer has an account here.',
};

/** Who called for help, and what they saw. */
function helpSaid({ definition: { on } }: OccurrenceTold, caller: string): string[] {
  if (on.kind !== 'by-hand') return [];
  return [
    `${caller} called for help.`,
    ...(on.where === undefined ? [] : [`Where: ${on.where}`]),
    ...(on.saw === undefined ? [] : [`Seen: ${on.saw}`]),
  ];
}

/** What is watched, its value and the limit, in the units of the facility file. */
function watchedSaid({ value, definition: { on, quantity, limits } }: OccurrenceTold): string {
  const calls = callsWhen(on, { quantity, limits, custom: 'metric' });
  if (on.kind === 'silent' || on.kind === 'silent-sensor') return `Called ${calls}.`;
  const plain = (n: number) => (quantity === undefined ? String(n) : readingSaid(quantity, 'metric', n));
  const said = (n: number) => workedSaid(on, quantity, n, 'metric') ?? plain(n);
  const seen = value === null ? 'Value: not known' : `Value: ${said(value)}`;
  return quantity === 'leak' ? seen : `${seen}, called ${calls}${on.kind === 'watts' ? ', its watts range' : ''}`;
}

function addressOf({ site, id }: OccurrenceTold): string {
  return wholeAddress(`/sites/${encodeURIComponent(site.key)}/alarms/${id}`);
}
