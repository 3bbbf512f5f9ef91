import 'server-only';
import { ok, type Result, refused } from '#core/result';
import { gatewaysOf } from '#data/readings/gateways';
import type { Refusal } from '../gate/refusal';

/** The id of a living gateway of a site by its key; null where none was named. */
export async function gatewayNamed(siteId: string, key: string | undefined): Promise<Result<string | null, Refusal>> {
  if (key === undefined) return ok(null);
  const gateway = (await gatewaysOf(siteId)).find((one) => one.isLiving && one.key === key);
  if (gateway) return ok(gateway.id);
  return refused({ why: 'invalid', faults: [{ path: 'gateway', message: 'is no gateway of this site' }] });
}
