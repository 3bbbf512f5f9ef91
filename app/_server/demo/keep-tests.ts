import 'server-only';
import { instantOf } from '#core/time/zone';
import { nameIdFor } from '#data/facility/names';
import { addTest } from '#data/safeguards/ledger';
import { findSafeguard, setCountedTests } from '#data/safeguards/safeguard-row';
import { testsAfter } from '../../../seed/past/as-of';
import { type Telling, tell } from './told';

/** When on its day a test is written down. */
const WRITTEN_AT = '16:20';

/** Writes the tests of safeguards into their ledgers, each on its day. @param since ISO date up to which they were there */
export async function keepTests(telling: Telling, since: string): Promise<void> {
  const { tx, siteId, past } = telling;
  const { facility } = past;
  for (const { system, safeguard, test } of testsAfter(facility, since)) {
    const atMs = Math.min(instantOf(facility.site.zone, test.on, WRITTEN_AT), past.untilMs);
    const person = facility.people.find(({ name }) => name === test.by);
    const by = person ? telling.accountOf(person.key) : 'local';
    const byId = test.by === undefined ? null : await nameIdFor(tx, siteId, test.by);
    const held = await findSafeguard(tx, siteId, system, safeguard);
    if (!held) throw new Error(`${system ?? facility.site.key} has no safeguard ${safeguard}`);
    const { on, result } = test;
    const id = telling.id(atMs);
    await addTest(tx, siteId, { id, safeguardId: held.id, byId, on, result }, new Date(atMs), by);
    await setCountedTests(tx, siteId, held.id, [...held.tests, id]);
    tell(telling, atMs, 'safeguard-tested', {
      by,
      safeguard: held.id,
      test: id,
      on,
      result,
      ...(byId && { looked: byId }),
    });
  }
}
