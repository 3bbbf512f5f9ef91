import 'server-only';
import { nameIdFor } from '#data/facility/names';
import { addTest } from '#data/safeguards/ledger';
import { findSafeguard, setCountedTests } from '#data/safeguards/safeguard-row';
import { type Telling, tell } from './told';

/** Writes the tests of safeguards of some days into their ledgers. @param after ISO date; those of `upTo` are among them */
export async function keepTests(telling: Telling, after: string, upTo: string): Promise<void> {
  const { tx, siteId, past, accountOf } = telling;
  for (const { id, atMs, system, safeguard, test, person } of past.tests) {
    const { on, result } = test;
    if (on <= after || on > upTo) continue;
    const by = person === null ? 'local' : accountOf(person);
    const byId = test.by === undefined ? null : await nameIdFor(tx, siteId, test.by);
    const held = await findSafeguard(tx, siteId, system, safeguard);
    if (!held) throw new Error(`${system ?? past.facility.site.key} has no safeguard ${safeguard}`);
    await addTest(tx, siteId, { id, safeguardId: held.id, byId, on, result }, new Date(atMs), by);
    await setCountedTests(tx, siteId, held.id, [...held.tests, id]);
    const looked = byId === null ? {} : { looked: byId };
    tell(telling, atMs, 'safeguard-tested', { by, safeguard: held.id, test: id, on, result, ...looked });
  }
}
