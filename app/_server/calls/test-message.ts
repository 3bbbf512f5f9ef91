import 'server-only';
import type { Channel } from '#core/alarms/channels';
import type { SiteEntry } from '#data/sites';
import { wholeAddress } from './address';
import type { Message } from './message';

interface TestTold {
  /** Name of whoever is called. */
  to: string;
  site: Pick<SiteEntry, 'key' | 'name'>;
  testId: string;
  channel: Channel;
}

/** What somebody is told by a test call. The link only opens a page; the button on it says that it came. */
export function testMessage({ to, site, testId, channel }: TestTold): Message {
  const url = wholeAddress(`/sites/${encodeURIComponent(site.key)}/alarms/calls?by=${channel}`);
  const short = `Test call from ${site.name}. Nothing is wrong. Open the page and press the button.`;
  const text = [
    `Test call from ${site.name}. Nothing is wrong.`,
    '',
    'It shows whether an alarm would reach you. Open this page and press "I got it":',
    url,
    '',
    'Opening the page answers nothing. Without the answer the review counts on no call to you.',
    '',
  ].join('\n');
  const data = { call: 'test', test: testId, to: { name: to }, site: { key: site.key, name: site.name } };
  return { subject: `Test call: ${site.name}`, text, short, url, about: testId, data, type: 'alarm.test' };
}
