'use client';

import { useRouter } from 'next/navigation';
import { useEffect } from 'react';

/** ms between two fetches: ages and what is late change though nothing happens. */
const EVERY_MS = 60_000;

/** Fetches the page anew each minute while somebody looks at it. */
export function RefreshOften() {
  const router = useRouter();
  useEffect(() => {
    const timer = setInterval(() => {
      if (document.visibilityState === 'visible') router.refresh();
    }, EVERY_MS);
    return () => clearInterval(timer);
  }, [router]);
  return null;
}
