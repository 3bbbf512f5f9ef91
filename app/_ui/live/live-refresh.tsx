'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';
import style from './live.module.css';
import { watchSite } from './watch-site';

/** What can change at a site while a page shows it. */
export type LiveWhat = 'alarms' | 'readings' | 'rounds' | 'incidents' | 'states' | 'sources';

interface LiveRefreshProps {
  /** Key of the site. */
  site: string;
  what: readonly LiveWhat[];
}

/**
 * Fetches the page anew whenever something of the site changes that it shows, and says whether it is being told of changes.
 * A page nobody looks at hears nothing, and is fetched anew when somebody comes back to it.
 */
export function LiveRefresh({ site, what }: LiveRefreshProps) {
  const router = useRouter();
  const [isLive, setLive] = useState<boolean | null>(null);
  const wanted = what.join(' ');
  useEffect(() => {
    const watch = watchSite(`/api/live/${encodeURIComponent(site)}`, wanted.split(' '), {
      refresh: () => router.refresh(),
      live: setLive,
    });
    return watch.stop;
  }, [site, wanted, router]);
  return (
    <p role="status" className={isLive === false ? style.lost : style.live}>
      {isLive === null ? null : isLive ? (
        'This page brings itself up to date.'
      ) : (
        <>
          <Warning /> Not up to date any more: Holdfast does not answer. It is being tried again.
        </>
      )}
    </p>
  );
}

function Warning() {
  return (
    <svg viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      <path d="M8 1.5 15 14H1Z" fill="none" stroke="currentColor" strokeWidth="1.6" />
      <path d="M8 6v4M8 11.4v1.2" stroke="currentColor" strokeWidth="1.6" />
    </svg>
  );
}
