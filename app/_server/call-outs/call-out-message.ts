import 'server-only';
import { accountNames } from '#data/accounts/names';
import { findCallOut } from '#data/call-outs/call-outs';
import { findSiteById } from '#data/sites';
import { wholeAddress } from '../calls/address';
import type { Message } from '../calls/message';
import { momentSaid } from '../moment-said';
import { standingOf } from './standing';
import { now } from '../clock';

/**
 * What somebody is told who is to look for one who went in alone and is not back.
 *
 * @param told   whom: their name, and the step at which they are called
 * @throws       when it is not there, which the database does not admit
 */
export async function callOutMessage(told: {
  siteId: string;
  callOutId: string;
  to: string;
  step: number;
}): Promise<Message> {
  const [site, callOut] = await Promise.all([findSiteById(told.siteId), findCallOut(told.siteId, told.callOutId)]);
  if (!(site && callOut)) throw new Error(`Call-out ${told.callOutId} is not there`);
  const who = (await accountNames([callOut.accountId])).get(callOut.accountId) ?? 'Somebody';
  const at = now();
  const until = momentSaid(site.zone, new Date(standingOf(callOut, at).untilMs), at);
  const url = wholeAddress(`/sites/${encodeURIComponent(site.key)}/call-outs`);
  const short = `${who} went in alone at ${site.name} and is not back. Place: ${callOut.place}. Expected at ${until}. Call them now; go only with somebody.`;
  const text = [
    `${who} went in alone at ${site.name} and has not said that they are back.`,
    '',
    `Place: ${callOut.place}`,
    `Expected back: ${until}`,
    '',
    'Call them now. If they do not answer, get help and go with somebody, never alone. Before you enter, think of what may have',
    'happened to them: water on the floor near mains power, gas, a fall. If in doubt, stay out and call the emergency services.',
    '',
    'Say on this page that you look after it, or that they are back and safe:',
    url,
    '',
    'Opening the page says neither. Holdfast calls on until a person does.',
    '',
  ].join('\n');
  const data = {
    call: 'call-out',
    callOut: callOut.id,
    to: { name: told.to },
    step: told.step,
    site: { key: site.key, name: site.name },
    place: callOut.place,
  };
  return {
    subject: `Not back: ${who}, ${site.name}`,
    text,
    short,
    url,
    about: callOut.id,
    data,
    type: 'call-out.overdue',
  };
}
