import Link from './link';

/** What to say of a page that is there, and that the role of the person does not open. */
export function NotForYou() {
  return (
    <p>
      Your role at this site does not allow this. Whoever lets people in at the site can change your role.{' '}
      <Link href="/">To the systems</Link>
    </p>
  );
}
