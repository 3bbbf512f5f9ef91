import 'server-only';
import type { Origin } from '../gate/origin';

/** Where passkeys are good: the name that they are bound to, and the origin that has to be vouched for. */
export interface PasskeyPlace {
  rpID: string;
  expectedOrigin: string;
}

const NUMBERS = /^[\d.]+$|^\[/;

/**
 * The place of a passkey that is used at this origin.
 *
 * @returns   null at an address of numbers: a browser binds passkeys to names alone (Web Authentication Level 3, 5.1.2)
 */
export function passkeyPlace({ name, url }: Origin): PasskeyPlace | null {
  return NUMBERS.test(name) ? null : { rpID: name, expectedOrigin: url };
}
