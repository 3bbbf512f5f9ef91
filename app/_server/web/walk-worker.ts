import 'server-only';

/**
 * What a browser runs so that rounds can be walked without a signal: it keeps one page, which is the same for everybody, and the
 * parts that page is made of; nothing else, and no answer that is for somebody. A page is kept together with all its parts or not
 * at all, each make of it in a box of its own; the last but one stays, for a page that is still open.
 */
export const WALK_WORKER = `
const SHELL = '/walk';
const BOX = 'holdfast-walk-';
const PARTS = /\\/_next\\/static\\/[^"'\\\\\\s)<>]+/g;
const PATIENCE_MS = 4000;

async function boxes() {
  const names = (await caches.keys()).filter((name) => name.startsWith(BOX));
  return names.sort((a, b) => Number(a.slice(BOX.length)) - Number(b.slice(BOX.length)));
}
async function fromBoxes(path) {
  for (const name of (await boxes()).reverse()) {
    const found = await (await caches.open(name)).match(path, { ignoreVary: true });
    if (found) return found;
  }
  return undefined;
}
function partsOf(text) {
  return [...new Set((text.match(PARTS) || []).map((part) => part.replaceAll('&amp;', '&')))];
}
async function addPart(box, path) {
  if (await box.match(path, { ignoreVary: true })) return;
  const known = await fromBoxes(path);
  const answer = known || await fetch(path);
  if (!answer.ok) throw new Error(path + ' ' + answer.status);
  const copy = answer.clone();
  if (path.split('?')[0].endsWith('.css')) {
    const text = await answer.clone().text();
    for (const [, to] of text.matchAll(/url\\(["']?([^"')]+)/g))
      if (!to.startsWith('data:')) await addPart(box, new URL(to, new URL(path, self.location.origin)).pathname);
  }
  await box.put(path, copy);
}
async function keepShell(more) {
  const answer = await fetch(SHELL, { cache: 'no-store' });
  if (!answer.ok || answer.redirected) throw new Error('page ' + answer.status);
  const text = await answer.clone().text();
  const parts = [...partsOf(text), ...more];
  const now = await boxes();
  const last = now.at(-1);
  const fits = last && (await Promise.all(partsOf(text).map(async (part) => (await (await caches.open(last)).match(part, { ignoreVary: true })) !== undefined))).every(Boolean);
  const name = fits ? last : BOX + Date.now();
  const box = await caches.open(name);
  try {
    for (const part of parts) await addPart(box, part);
    await box.put(SHELL, answer);
  } catch (error) {
    if (!fits) await caches.delete(name);
    throw error;
  }
  for (const old of (await boxes()).slice(0, -2)) await caches.delete(old);
}
async function shell(event) {
  const kept = await fromBoxes(SHELL);
  try {
    const signal = kept ? AbortSignal.timeout(PATIENCE_MS) : undefined;
    const fresh = await fetch(SHELL, { cache: 'no-store', signal });
    if (!fresh.ok && kept) return kept;
    if (fresh.ok) event.waitUntil(keepShell([]).catch(() => undefined));
    return fresh;
  } catch (error) {
    if (kept) return kept;
    throw error;
  }
}
async function part(event, path) {
  const kept = await fromBoxes(path);
  if (kept) return kept;
  const answer = await fetch(event.request);
  const client = event.clientId ? await self.clients.get(event.clientId) : undefined;
  if (answer.ok && client && new URL(client.url).pathname === SHELL) {
    const [last] = (await boxes()).slice(-1);
    // Taken before the page reads it: what is read can be copied no more.
    const copy = answer.clone();
    if (last) event.waitUntil(caches.open(last).then((box) => box.put(path, copy)).catch(() => undefined));
  }
  return answer;
}
self.addEventListener('install', () => { self.skipWaiting(); });
self.addEventListener('activate', (event) => { event.waitUntil(self.clients.claim()); });
self.addEventListener('message', (event) => {
  if (!event.data || !Array.isArray(event.data.keep)) return;
  const parts = event.data.keep.filter((path) => typeof path === 'string' && path.startsWith('/_next/static/'));
  event.waitUntil(keepShell(parts).then(
    () => event.ports[0] && event.ports[0].postMessage('kept'),
    async (error) => event.ports[0] && event.ports[0].postMessage((await fromBoxes(SHELL)) ? 'kept' : String(error)),
  ));
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin) return;
  if (url.pathname.startsWith('/_next/static/')) return event.respondWith(part(event, url.pathname + url.search));
  if (request.mode !== 'navigate') return;
  if (url.pathname === SHELL) return event.respondWith(shell(event));
  // Any other page needs Holdfast; where it is out of reach, the rounds that are kept here are what there is.
  event.respondWith(fetch(request).catch(async (error) => {
    if (await fromBoxes(SHELL)) return Response.redirect(SHELL, 302);
    throw error;
  }));
});
`;
