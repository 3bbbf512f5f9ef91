import Link from '../frame/link';
import type { Done } from './answers';

/** What an import did, and where to go on. */
export function DoneNote({ done }: { done: Done }) {
  const { site, isNew, systems, changes } = done;
  return (
    <>
      <h2>
        {isNew
          ? `${site.name} is imported`
          : changes === 0
            ? 'Nothing was changed'
            : `${site.name} is brought up to the file`}
      </h2>
      <p>
        {systems} {systems === 1 ? 'system' : 'systems'}
        {isNew ? '' : `, ${changes} ${changes === 1 ? 'difference' : 'differences'}`}. Their reviews are being worked
        out. <Link href="/">See the systems</Link>
      </p>
    </>
  );
}
