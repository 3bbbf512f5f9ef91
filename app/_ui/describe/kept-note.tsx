'use client';

import Link from '../frame/link';
import { useRouter } from 'next/navigation';
import { useEffect, useRef } from 'react';
import { siteAddress } from '../frame/site-address';
import type { ChangeOf, Kept } from './answers';
import { thingAddress } from './thing-address';

const DONE: Record<ChangeOf['act'], string> = {
  change: 'The change is kept',
  add: 'It is added',
  replace: 'It is replaced',
  move: 'It is moved',
  retire: 'It is retired',
};

/** What was kept, and where to go on. It takes the focus, since the form is gone. */
export function KeptNote({ kept, of }: { kept: Kept; of: ChangeOf }) {
  const top = useRef<HTMLDivElement>(null);
  const router = useRouter();
  const stays = of.act === 'change' || of.act === 'replace';
  useEffect(() => {
    top.current?.focus();
    // The history below gains what was kept; a page whose thing has gone or moved must stay as it is.
    if (stays) router.refresh();
  }, [router, stays]);
  const { thing, changes } = kept;
  const isNothing = changes === 0 && of.act !== 'replace';
  return (
    <div ref={top} tabIndex={-1} role="status">
      <h2>{isNothing ? 'Nothing was changed' : DONE[of.act]}</h2>
      {isNothing ? null : <p>It stands in the record, and the reviews it touches are being worked out.</p>}
      <ul>
        {thing ? (
          <li>
            {/* A whole page: the form must show what is described now. */}
            <a href={thingAddress(of.site, thing.noun, thing.system, thing.key)}>To its page</a>
          </li>
        ) : null}
        {of.system ? (
          <li>
            <Link href={siteAddress(of.site, 'systems', of.system)}>To the system and its review</Link>
          </li>
        ) : null}
        <li>
          <Link href={siteAddress(of.site, 'describe')}>To everything that is described</Link>
        </li>
      </ul>
    </div>
  );
}
