'use client';

import { useSyncExternalStore } from 'react';

const nothing = () => () => undefined;

/** Says which zone the times are of, and the one of the reader's device where that is another. */
export function ZoneNote({ zone }: { zone: string }) {
  const own = useSyncExternalStore(
    nothing,
    () => Intl.DateTimeFormat().resolvedOptions().timeZone,
    () => zone,
  );
  return (
    <>
      Times are those of {zone}.{own === zone ? '' : ` Your device is set to ${own}: its clock may show another time.`}
    </>
  );
}
