import 'server-only';
import { nameIdFor } from '#data/facility/names';
import { addTest, findTest } from '#data/safeguards/ledger';
import type { RecordEntry } from '#data/records/seal';
import { setCountedTests } from '#data/safeguards/safeguard-row';
import type { TestRequest } from '#shape/safeguards/requests';
import type { Who } from '../gate/who';
import type { Held } from './change-safeguard';

/** Keeps a test in the ledger of a safeguard and has it counted. @returns what the record gains */
export async function keepTest(
  { tx, siteId, safeguard, at }: Held,
  who: Who,
  test: Omit<TestRequest, 'site' | 'system' | 'safeguard'>,
): Promise<RecordEntry[]> {
  const { entry: id, on, result, steps, expected, seen, looked } = test;
  // What a slow line made somebody send twice is kept once.
  if (await findTest(tx, siteId, id)) return [];
  const said = { on, result, steps, expected, seen };
  const byId = await nameIdFor(tx, siteId, looked);
  await addTest(tx, siteId, { id, safeguardId: safeguard.id, byId, ...said }, at, who.id);
  await setCountedTests(tx, siteId, safeguard.id, [...safeguard.tests, id]);
  const body = { by: who.id, safeguard: safeguard.id, test: id, looked: byId, ...said };
  return [{ kind: 'safeguard-tested', body }];
}
