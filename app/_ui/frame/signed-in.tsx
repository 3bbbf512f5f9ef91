import Link from 'next/link';
import style from './signed-in.module.css';

/**
 * Who is signed in, and the way out.
 * @param signOut server action
 */
export function SignedIn({ name, signOut }: { name: string; signOut: () => Promise<void> }) {
  return (
    <form action={signOut} className={style.signedIn}>
      <Link href="/account">{name}</Link>
      <button type="submit">Sign out</button>
    </form>
  );
}
