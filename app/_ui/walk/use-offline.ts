'use client';

import { useEffect, useState } from 'react';

/** Whether this page opens without a signal. */
export type Ready = 'asking' | 'ready' | 'not-secure' | 'no';

const WORKER = '/push-worker.js';

/**
 * Has the browser keep this page and its parts, so that it opens without a signal, and asks it not to throw away what is kept
 * when room gets short.
 */
export function useOffline(): Ready {
  const [ready, setReady] = useState<Ready>('asking');
  useEffect(() => {
    if (!window.isSecureContext) return setReady('not-secure');
    if (!('serviceWorker' in navigator)) return setReady('no');
    let isOver = false;
    const tell = (to: Ready) => isOver || setReady(to);
    keepPage().then(
      () => tell('ready'),
      () => tell('no'),
    );
    // Best effort: a browser that refuses says so by what it later throws away, which is told where an entry is saved.
    void navigator.storage?.persist?.().catch(() => false);
    return () => {
      isOver = true;
    };
  }, []);
  return ready;
}

async function keepPage(): Promise<void> {
  await navigator.serviceWorker.register(WORKER, { scope: '/' });
  // What reads labels is loaded later otherwise, when there may be no signal.
  await import('./qr-reader').then(async ({ warmReader }) => await warmReader()).catch(() => undefined);
  const { active } = await navigator.serviceWorker.ready;
  // What was loaded before the worker was there has not passed through it.
  const parts = performance
    .getEntriesByType('resource')
    .map(({ name }) => new URL(name))
    .filter(({ origin, pathname }) => origin === location.origin && pathname.startsWith('/_next/static/'))
    .map(({ pathname, search }) => pathname + search);
  await new Promise<void>((resolve, reject) => {
    const channel = new MessageChannel();
    channel.port1.onmessage = ({ data }) => (data === 'kept' ? resolve() : reject(new Error(String(data))));
    if (!active) return reject(new Error('no worker'));
    active.postMessage({ keep: parts }, [channel.port2]);
  });
}
