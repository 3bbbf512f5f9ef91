import 'server-only';
import type { System } from '#core/facility/system';
import { type Proof, proofsOf } from '#core/states/proofs';
import { type Newest, type Proved, provedBy } from '#core/states/proved';
import type { Begun } from '#core/states/state-end';

/** A proof with what the readings say of it. */
export interface ProvedLine {
  proof: Proof;
  proved: Proved;
}

/** What proves the end of a state, with what readings say of each. @param newest   readings of the system by key of the sensor */
export function provedNow(
  system: System,
  state: Begun,
  newest: ReadonlyMap<string, Newest> | undefined,
  { begunAt, at }: { begunAt: Date; at: Date },
): ProvedLine[] {
  const when = { sinceMs: begunAt.getTime(), atMs: at.getTime() };
  return proofsOf(system, state).map((proof) => ({
    proof,
    proved: provedBy(system, proof, newest ?? new Map(), when),
  }));
}
