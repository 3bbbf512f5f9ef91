'use client';

import Link from './link';
import { setWalker } from '../walk/device';
import style from './signed-in.module.css';

/**
 * Who is signed in, and the way out.
 * @param signOut server action
 */
export function SignedIn({ name, signOut }: { name: string; signOut: () => Promise<void> }) {
  return (
    <form action={signOut} className={style.signedIn}>
      <Link href="/account">{name}</Link>
      {/* What is kept here to walk rounds out of reach is shown to nobody from now on. */}
      <button type="submit" onClick={() => setWalker(null)}>
        Sign out
      </button>
    </form>
  );
}
