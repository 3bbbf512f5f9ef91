'use server';

import { act } from '#server/gate/act';
import { investigate, investigateShape } from '#server/incidents/investigate';
import { logEntry, logEntryShape } from '#server/incidents/log-entry';
import { openIncident, openIncidentShape } from '#server/incidents/open-incident';
import { signIncident, signIncidentShape } from '#server/incidents/sign-incident';
import { withdrawEntry, withdrawEntryShape } from '#server/incidents/withdraw-entry';

/** Pages that show something else once an incident has changed. */
const shown = ({ site, number }: { site: string; number: number }) => {
  const at = `/sites/${site}/incidents`;
  const own = ['', '/timeline', '/investigation', '/print'].map((end) => `${at}/${number}${end}`);
  return [`/sites/${site}`, at, ...own];
};

export const openIncidentAction = act(openIncidentShape, openIncident, shown);

export const logEntryAction = act(logEntryShape, logEntry, shown);

export const withdrawEntryAction = act(withdrawEntryShape, withdrawEntry, shown);

export const investigateAction = act(investigateShape, investigate, shown);

export const signIncidentAction = act(signIncidentShape, signIncident, shown);
