import 'server-only';
import { ok, refused } from '#core/result';
import { findEnd } from '#data/states/change-state';
import type { OpenState } from '#data/states/states';
import type { Result } from '#core/result';
import type { Refusal } from '../gate/refusal';
import { type HeldSystem, type QuickerThan, stateSaid } from './change-states';

/** The state that is to be changed; or who has ended it meanwhile, or that there is none. @param run its id */
export async function heldRun(
  { tx, place, open }: HeldSystem,
  run: string,
): Promise<Result<OpenState, Refusal | QuickerThan>> {
  const found = open.find((one) => one.run === run);
  if (found) return ok(found);
  const end = await findEnd(tx, place.entry.id, run);
  if (end?.systemId !== place.systemId) return refused({ why: 'not-found', what: 'state' });
  return refused({ why: 'quicker', did: `ended ${stateSaid(end.state)}`, by: end.by, at: end.at });
}
