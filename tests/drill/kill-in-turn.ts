import { setTimeout as wait } from 'node:timers/promises';

/** A process that is killed, and comes back by itself. */
export interface Victim {
  name: string;
  /** Its number; nothing while it is gone. */
  pid: () => number | undefined;
}

/** ms between two looks. */
const GLANCE_MS = 10;
/** ms a process may take to be back, recovery and growing pauses included. */
const PATIENCE_MS = 120_000;

/**
 * Kills processes without warning, one after another, each once the one before is back and writing goes on.
 *
 * @param victims   in the order they are killed in
 * @param kills     how many kills there are in all
 * @param goOn      is settled when writing goes on after a kill
 * @returns         kills by name
 * @throws          when one does not come back
 */
export async function killInTurn(
  victims: readonly Victim[],
  kills: number,
  goOn: () => Promise<void>,
): Promise<Record<string, number>> {
  const counts: Record<string, number> = {};
  for (let done = 0; done < kills; done++) {
    const victim = victims[done % victims.length];
    if (!victim) throw new Error('there is nobody to kill');
    const pid = await killOne(victim);
    counts[victim.name] = (counts[victim.name] ?? 0) + 1;
    await until(() => ![pid, undefined].includes(victim.pid()), `${victim.name} did not come back`);
    await goOn();
  }
  return counts;
}

/** Kills a process. One that ends just now because of the kill before comes back first. @returns its number */
async function killOne(victim: Victim): Promise<number> {
  let killed: number | undefined;
  await until(() => {
    killed = victim.pid();
    return killed !== undefined && wasKilled(killed);
  }, `${victim.name} is not there to be killed`);
  return killed ?? 0;
}

/** @returns whether there was a process of this number to be killed */
function wasKilled(pid: number): boolean {
  try {
    return process.kill(pid, 'SIGKILL');
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ESRCH') return false;
    throw error;
  }
}

/**
 * @param isSo    looked at every moment
 * @param words   of the error, should it not become so
 */
export async function until(isSo: () => boolean, words: string): Promise<void> {
  for (let waitedMs = 0; !isSo(); waitedMs += GLANCE_MS) {
    if (waitedMs > PATIENCE_MS) throw new Error(words);
    await wait(GLANCE_MS);
  }
}
