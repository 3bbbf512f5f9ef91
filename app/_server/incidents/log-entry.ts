import 'server-only';
import type { Bodies } from '#core/incidents/incident';
import { refused } from '#core/result';
import { type LogRequest, logRequest } from '#shape/incidents/log-request';
import type { Who } from '../gate/who';
import { type Changed, changeIncident, type Held } from './change-incident';
import { entryFrom } from './keep-entry';
import { keepFigures } from './keep-figures';

export const logEntryShape = logRequest;

/** Writes in an incident: a first step, a sample, what a meter showed, or a line of the log. */
export async function logEntry(who: Who, request: LogRequest): Promise<Changed> {
  return await changeIncident(who, 'log-incident', request, async (held) => {
    const made = await madeFrom(who, held, request);
    if (!made.ok || made.value?.kind !== 'measurement' || !made.value.body) return made;
    const unknown = await keepFigures(held, made.value.id, made.value.atMs, made.value.body.figures);
    return unknown === null ? made : refused({ why: 'invalid', faults: [unknown] });
  });
}

function madeFrom(who: Who, held: Held, request: LogRequest) {
  const { site: _, number: __, entry, at, supersedes, reason, kind, ...body } = request;
  const sent = { entry, at, supersedes, reason };
  switch (kind) {
    case 'step':
      return entryFrom(who, held, { ...sent, kind, body: body as Bodies['step'] });
    case 'sample':
      return entryFrom(who, held, { ...sent, kind, body: body as Bodies['sample'] });
    case 'measurement':
      return entryFrom(who, held, { ...sent, kind, body: body as Bodies['measurement'] });
    case 'log':
      return entryFrom(who, held, { ...sent, kind, body: body as Bodies['log'] });
  }
}
