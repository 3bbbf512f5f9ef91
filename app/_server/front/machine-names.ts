import 'server-only';
import { hostname, networkInterfaces } from 'node:os';
import { isIP } from 'node:net';
import { isPrivateAddress } from './private-ranges';

/** By what other machines of the network may call this one. */
export interface MachineNames {
  /** Names, in small letters. */
  names: string[];
  /** Addresses of its network, never one of the internet. */
  addresses: string[];
}

/** What of a machine its names are made of. */
interface Machine {
  hostname: string;
  addresses: string[];
}

/** This machine, as the system says it. */
function thisMachine(): Machine {
  const all = Object.values(networkInterfaces()).flatMap((some) => some ?? []);
  return { hostname: hostname(), addresses: all.map(({ address }) => address) };
}

/**
 * Every name that may lead to this machine: its own, the same as it is announced within the network (`.local`, RFC 6762), and
 * the one people were told.
 *
 * @param address   where people reach Holdfast
 */
export function machineNames(address: string, machine: Machine = thisMachine()): MachineNames {
  const host = new URL(address).hostname.replace(/^\[|\]$/g, '').toLowerCase();
  const own = machine.hostname.toLowerCase();
  const short = own.split('.')[0] ?? own;
  const isName = (name: string) => /^[a-z0-9-]+(\.[a-z0-9-]+)*$/.test(name) && isIP(name) === 0;
  const names = [host, own, `${short}.local`, 'localhost'].filter(isName);
  const addresses = [...(isIP(host) === 0 ? [] : [host]), ...machine.addresses, '127.0.0.1', '::1'];
  // One that holds for a single wire, such as fe80::1, is told with the name of the wire and fits into no certificate.
  const kept = addresses.filter((one) => isPrivateAddress(one) && !one.startsWith('fe80:'));
  return { names: [...new Set(names)].sort(), addresses: [...new Set(kept)].sort() };
}
