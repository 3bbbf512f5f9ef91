'use server';

import { headers, cookies } from 'next/headers';
import { redirect } from 'next/navigation';
import { visitOf } from '#server/gate/visit';
import { signOut } from '#server/sign-in/sign-out';

/** Ends the session of this browser. */
export async function signOutAction(): Promise<void> {
  const visit = visitOf(await headers());
  const answer = visit && (await signOut(visit));
  if (answer?.ok) (await cookies()).set(answer.value);
  redirect('/sign-in');
}
