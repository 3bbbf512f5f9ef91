import 'server-only';
import type { Entry } from '#core/incidents/incident';
import { entryDigest } from '#data/incidents/entries';
import type { RecordEntry } from '#data/records/seal';

/** An entry as the record tells it: what it says is held by its digest, so that no text of it stands there twice. */
export function recordOf(number: number, entry: Entry): RecordEntry {
  const { by, id, kind, supersedes, reason, body } = entry;
  const said = { by, incident: number, entry: id, sha256: entryDigest(entry) };
  if (kind === 'signature' && body)
    return { kind: 'incident-signed', body: { ...said, as: body.as, over: body.sha256 } };
  const corrects = supersedes === null ? {} : { supersedes, reason };
  const what = body === null ? 'withdrawal' : kind;
  return { kind: 'incident-written', body: { ...said, what, ...corrects } };
}
