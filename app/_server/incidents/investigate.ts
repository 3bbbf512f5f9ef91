import 'server-only';
import type { Bodies } from '#core/incidents/incident';
import { standing } from '#core/incidents/story';
import { type Result, refused } from '#core/result';
import { isSafeguard } from '#data/incidents/safeguards-then';
import { type InvestigateRequest, investigateRequest } from '#shape/incidents/investigate-request';
import type { Refusal } from '../gate/refusal';
import type { Who } from '../gate/who';
import { type Changed, changeIncident, type Held } from './change-incident';
import { entryFrom } from './keep-entry';
import { momentOf } from './local-time';
import { namesIn } from './names-in';

export const investigateShape = investigateRequest;

type Given<K extends InvestigateRequest['kind']> = Extract<InvestigateRequest, { kind: K }>;

/** Writes in the investigation: a mark, a loss, what a safeguard did, a cause, an action, its proof, a part of the summary. */
export async function investigate(who: Who, request: InvestigateRequest): Promise<Changed> {
  return await changeIncident(who, 'investigate', request, async (held) => {
    const wrong = await wrongIn(held, request);
    return wrong ? refused(wrong) : await madeFrom(who, held, request);
  });
}

/** What is wrong with what an entry refers to, or says of whom; null when nothing is. */
async function wrongIn({ tx, site, entries }: Held, request: InvestigateRequest): Promise<Refusal | null> {
  if (request.kind === 'safeguard' && !(await isSafeguard(tx, site.id, request.safeguard)))
    return { why: 'not-found', what: 'safeguard' };
  if (request.kind === 'action-done' && !standing(entries, 'action').some(({ id }) => id === request.action))
    return { why: 'not-found', what: 'action' };
  if (request.kind !== 'cause') return null;
  const named = await namesIn(tx, site.id, request.text);
  if (named === null) return null;
  const message = `names “${named}”: a cause is told without names, by what made it possible`;
  return { why: 'invalid', faults: [{ path: 'text', message }] };
}

async function madeFrom(who: Who, held: Held, request: InvestigateRequest) {
  const { site: _, number: __, entry, at, supersedes, reason, kind, ...body } = request;
  const sent = { entry, at, supersedes, reason };
  switch (kind) {
    case 'mark':
      return await markFrom(who, held, request as Given<'mark'>);
    case 'loss':
      return await entryFrom(who, held, { ...sent, kind, body: body as Bodies['loss'] });
    case 'safeguard':
      return await entryFrom(who, held, { ...sent, kind, body: body as Bodies['safeguard'] });
    case 'cause':
      return await entryFrom(who, held, { ...sent, kind, body: body as Bodies['cause'] });
    case 'action':
      return await entryFrom(who, held, { ...sent, kind, body: body as Bodies['action'] });
    case 'action-done':
      return await entryFrom(who, held, { ...sent, kind, body: body as Bodies['action-done'] });
    case 'summary':
      return await entryFrom(who, held, { ...sent, kind, body: body as Bodies['summary'] });
  }
}

/** A mark: only of a fault that began is there an earliest and a latest. */
async function markFrom(who: Who, held: Held, request: Given<'mark'>) {
  const { entry, at, supersedes, reason, mark, latest, source, note } = request;
  const isRange = mark === 'fault-began' && latest !== undefined;
  const last = isRange ? momentOf(held.site.zone, latest, 'latest', held.at) : null;
  if (last && !last.ok) return last satisfies Result<never, Refusal>;
  const body = { mark, source, note, latest: last?.value };
  const made = await entryFrom(who, held, { entry, at, supersedes, reason, kind: 'mark', body });
  if (made.ok && made.value && last && last.value < made.value.atMs)
    return refused({
      why: 'invalid' as const,
      faults: [{ path: 'latest', message: 'must not be before the earliest' }],
    });
  return made;
}
