'use client';

import { useEffect, useState } from 'react';
import { Page } from '../frame/page';
import { walker } from './device';
import { keptSites } from './store';
import type { Ready } from './use-offline';
import style from './walk.module.css';
import { hashOf } from './where';

/** The sites whose rounds are kept here for whoever walks with this browser. */
export function SiteChoice({ ready }: { ready: Ready }) {
  const [sites, setSites] = useState<{ key: string; name: string }[] | null>(null);
  useEffect(() => {
    void keptSites(walker()).then(setSites, () => setSites([]));
  }, []);
  return (
    <Page title="Rounds">
      {sites?.length ? (
        <ul className={style.plainList}>
          {sites.map(({ key, name }) => (
            <li key={key}>
              <a className={style.go} href={hashOf({ at: 'site', site: key })}>
                {name}
              </a>
            </li>
          ))}
        </ul>
      ) : (
        <p>
          {sites === null
            ? 'Looking for what is kept here…'
            : 'No rounds are kept here. Where there is a signal, open the rounds of a site and choose to walk them without one.'}
        </p>
      )}
      <p>
        <a className={style.go} href="/">
          All of Holdfast
        </a>
        {ready === 'ready' ? ' (needs a signal)' : null}
      </p>
    </Page>
  );
}
