import 'server-only';
import { ok, type Result, refused } from '#core/result';
import type { BrokerPlace } from '#data/brokers/brokers';
import type { Refusal } from '../gate/refusal';
import { seal } from '../machine/seal';
import { BROKER_PASSWORD } from '../mqtt/stay-connected';

/** A broker as it was typed. */
export interface TypedBroker {
  address: string;
  username?: string | undefined;
  password?: string | undefined;
  authority?: string | undefined;
  rebirth?: 'yes' | undefined;
}

/** A broker as it is kept: its password sealed, and left out where none was typed. */
export function brokerPlace({
  address,
  username,
  password,
  authority,
  rebirth,
}: TypedBroker): Result<Omit<BrokerPlace, 'passwordSealed'> & Partial<BrokerPlace>, Refusal> {
  const place = {
    address,
    username: username ?? null,
    authority: authority ?? null,
    asksRebirth: rebirth === 'yes',
    // Whoever is nobody there has no password either.
    ...(username === undefined && password === undefined ? { passwordSealed: null } : {}),
  };
  if (password === undefined) return ok(place);
  const sealed = seal(password, BROKER_PASSWORD);
  if (sealed.ok) return ok({ ...place, passwordSealed: sealed.value });
  const message = 'cannot be kept: this machine was started without HOLDFAST_SECRET';
  return refused({ why: 'invalid', faults: [{ path: 'password', message }] });
}
