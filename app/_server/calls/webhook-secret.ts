import 'server-only';
import { type CallWebhook, sealWebhook, unsealedWebhooks } from '#data/calls/webhooks';
import type { Result } from '#core/result';
import { seal, type SealFault, unseal } from '../machine/seal';
import { NotCalled } from './outbound';

/** What the secret is sealed for. */
const SEALED_FOR = 'webhook secret';

/** Seals what a webhook is signed with. */
export function sealSecret(secret: string): Result<Uint8Array<ArrayBuffer>, SealFault> {
  return seal(secret, SEALED_FOR);
}

/** What a webhook is signed with. @throws NotCalled when it cannot be read here */
export function secretOf({ secret, secretSealed }: Pick<CallWebhook, 'secret' | 'secretSealed'>): string {
  if (secret !== null) return secret;
  const read = secretSealed ? unseal(secretSealed, SEALED_FOR) : null;
  if (read?.ok) return read.value;
  throw new NotCalled('its secret was sealed with another HOLDFAST_SECRET: set the webhook anew');
}

/** Seals what was kept as it was, before secrets were sealed. Without a secret of the machine it stays so. */
export async function sealWebhooks(): Promise<void> {
  for (const { secret, ...webhook } of await unsealedWebhooks()) {
    const sealed = sealSecret(secret);
    if (sealed.ok) await sealWebhook(webhook, sealed.value);
  }
}
