import 'server-only';
import { hasHandsIn } from '#core/states/state-end';
import type { SiteEntry } from '#data/sites';
import type { StateRun } from '#data/states/states';
import { wholeAddress } from '../calls/address';
import type { Message } from '../calls/message';
import { timeIn } from '../local-day';

const MINUTES = 16;

/** What somebody is told of a state that has outstayed its end. The link only opens a page. */
export function endMessage({
  to,
  site,
  run: { run, system, state, until },
}: {
  to: string;
  site: Pick<SiteEntry, 'key' | 'name' | 'zone'>;
  run: StateRun;
}): Message {
  const parts = [site.key, 'states', system.key, state].map(encodeURIComponent);
  const url = wholeAddress(`/sites/${parts.join('/')}`);
  const spoken = state.replaceAll('-', ' ');
  const was = timeIn(site.zone, until).slice(0, MINUTES);
  const short = `${system.name}: the ${spoken} was to end ${was}, and nobody has ended it.`;
  const text = [
    `${site.name}. ${short}`,
    '',
    hasHandsIn(state) ? 'It never ends by itself: hands may be in the water. Look first.' : 'Go there and look.',
    'See that everything runs again, and end it, or put its end off with a reason:',
    url,
    '',
    'Opening the page changes nothing. It calls again until then.',
    '',
  ].join('\n');
  const data = {
    call: 'state-end',
    run,
    state,
    until: until.toISOString(),
    to: { name: to },
    site: { key: site.key, name: site.name },
    system: { key: system.key, name: system.name },
  };
  return { subject: `${system.name}: ${spoken} not ended`, text, short, url, about: run, data, type: 'state.call' };
}
