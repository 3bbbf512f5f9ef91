import 'server-only';
import { randomBytes } from 'node:crypto';
import { ROLES, type Role } from '#core/rota/rota';
import { keepDemoPerson } from '#data/accounts/demo';
import { now } from '../clock';
import type { Who } from '../gate/who';
import { hashPassword } from '../sign-in/password';

/** How somebody of the demonstration signs in; said once, and kept nowhere. */
export interface DemoSignIn {
  role: Role;
  email: string;
  password: string;
}

/** All invented, under a name that nobody can have (RFC 2606). */
const PEOPLE: Record<Role, string> = {
  viewer: 'Vesper Quill',
  aquarist: 'Alder Finch',
  lead: 'Linnet Moor',
  manager: 'Merrow Tansy',
  admin: 'Adair Sallow',
};

/** 32 letters and figures that are not taken for each other. */
const LETTERS = 'abcdefghijkmnpqrstuvwxyz23456789';
const GROUPS = 5;
const GROUP = 5;

/**
 * Gives each role of the demonstration somebody who may sign in, or a new password to those who are there.
 *
 * @returns   how they sign in
 */
export async function keepDemoPeople(who: Who): Promise<DemoSignIn[]> {
  const people: DemoSignIn[] = [];
  for (const role of ROLES) {
    const password = madeUpPassword();
    const email = `${role}@demo.example`;
    const passwordHash = await hashPassword(password);
    await keepDemoPerson({ role, name: PEOPLE[role], email, passwordHash }, who.id, now());
    people.push({ role, email, password });
  }
  return people;
}

/** 25 letters, 5 bits each, in groups that can be read out. */
function madeUpPassword(): string {
  const letters = [...randomBytes(GROUPS * GROUP)].map((byte) => LETTERS[byte % LETTERS.length]).join('');
  return Array.from({ length: GROUPS }, (_, at) => letters.slice(at * GROUP, (at + 1) * GROUP)).join('-');
}
