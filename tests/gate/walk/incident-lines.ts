import { randomUUID } from 'node:crypto';
import { LOCAL_PERSON } from '#server/gate/who';
import { openIncident } from '#server/incidents/open-incident';
import { openRequest } from '#shape/incidents/place';
import type { Given, Line, WalkSite } from './line';

const INCIDENTS = 'app/(house)/sites/[site]/incidents';
const ONE = `${INCIDENTS}/[number]`;

/** Opens an incident at a site. @returns its number */
async function opened(site: WalkSite): Promise<string> {
  const request = openRequest.parse({ site: site.key, entry: randomUUID(), title: 'Walked', system: 'tank-1' });
  const answer = await openIncident(LOCAL_PERSON, request);
  if (!answer.ok) throw new Error(JSON.stringify(answer.reason));
  return String(answer.value.number);
}

const page = async (site: WalkSite): Promise<Given> => ({ params: { number: await opened(site) } });
const form = (more: Record<string, string>) => {
  return async (site: WalkSite): Promise<Given> => ({
    form: { number: await opened(site), entry: randomUUID(), ...more },
  });
};

/** Entries about the incidents of a site. */
export const INCIDENT_LINES: Readonly<Record<string, Line>> = {
  [`${INCIDENTS}/page.tsx`]: { verb: 'read-record' },
  [`${INCIDENTS}/new/page.tsx`]: { verb: 'log-incident', given: () => ({ search: { system: 'tank-1' } }) },
  [`${ONE}/page.tsx`]: { verb: 'read-record', given: page },
  [`${ONE}/timeline/page.tsx`]: { verb: 'read-record', given: page },
  [`${ONE}/investigation/page.tsx`]: { verb: 'read-record', given: page },
  [`${ONE}/print/page.tsx`]: { verb: 'read-record', given: page },
  [`${INCIDENTS}/actions.ts openIncidentAction`]: {
    verb: 'log-incident',
    given: () => ({ form: { entry: randomUUID(), title: 'Walked' } }),
  },
  [`${INCIDENTS}/actions.ts logEntryAction`]: {
    verb: 'log-incident',
    given: form({ kind: 'step', step: 'people-safe' }),
  },
  [`${INCIDENTS}/actions.ts withdrawEntryAction`]: {
    verb: 'log-incident',
    given: form({ supersedes: randomUUID(), reason: 'to see' }),
    comes: 'not-found',
  },
  [`${INCIDENTS}/actions.ts investigateAction`]: {
    verb: 'investigate',
    given: form({ kind: 'summary', part: 'lucky', text: 'Somebody was there.' }),
  },
  [`${INCIDENTS}/actions.ts signIncidentAction`]: {
    verb: 'investigate',
    given: form({ as: 'lead', sha256: '0'.repeat(64) }),
    comes: 'conflict',
  },
};
