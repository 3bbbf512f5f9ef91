import type { Page, Worker } from '@playwright/test';

/** What the script of a browser did with a call. */
interface Done {
  title: string;
  options: { body?: string; tag?: string; requireInteraction?: boolean; data?: { url: string } };
}

/** The global scope of the script, with what is noted in it. */
type Scope = typeof globalThis & { shown: Done[]; opened: string[] };

/**
 * Has a browser take calls by the script that Holdfast gives it, and a message delivered to it as its push service would, by the
 * DevTools protocol: no push service is asked. A headless browser shows no notification to anybody, so what the script would have
 * shown and opened is noted where it asks for it.
 *
 * @param message   as Holdfast seals it, opened
 * @returns         what was shown, and the address that was opened when it was pressed
 */
export async function deliverCall(
  page: Page,
  message: { title: string; body: string; url: string; tag: string },
): Promise<{ shown: Done; opened: string }> {
  const devtools = await page.context().newCDPSession(page);
  const registered = new Promise<string>((resolve) => {
    devtools.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      const found = registrations.find(({ isDeleted }) => !isDeleted);
      if (found) resolve(found.registrationId);
    });
  });
  await devtools.send('ServiceWorker.enable');
  const begun = page.context().waitForEvent('serviceworker');
  await page.evaluate(async () => {
    await navigator.serviceWorker.register('/push-worker.js', { scope: '/' });
    await navigator.serviceWorker.ready;
  });
  const script = await begun;
  await noteWhatIsAsked(script);
  const origin = new URL(page.url()).origin;
  const registrationId = await registered;
  await devtools.send('ServiceWorker.deliverPushMessage', { origin, registrationId, data: JSON.stringify(message) });
  const shown = await shownBy(script);
  const opened = await pressed(script);
  await devtools.detach();
  return { shown, opened };
}

async function noteWhatIsAsked(script: Worker): Promise<void> {
  await script.evaluate(() => {
    const scope = globalThis as unknown as Scope & { registration: object; clients: object };
    Object.assign(scope, { shown: [], opened: [] });
    const showNotification = async (title: string, options: Done['options']) =>
      void scope.shown.push({ title, options });
    const openWindow = async (url: string) => void scope.opened.push(url);
    Object.defineProperty(scope.registration, 'showNotification', { value: showNotification });
    Object.defineProperty(scope.clients, 'openWindow', { value: openWindow });
  });
}

async function shownBy(script: Worker): Promise<Done> {
  for (let tried = 0; tried < 100; tried++) {
    const [first] = await script.evaluate(() => (globalThis as unknown as Scope).shown);
    if (first) return first;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('The script showed nothing.');
}

/** Presses what was shown. */
async function pressed(script: Worker): Promise<string> {
  return await script.evaluate(async () => {
    const scope = globalThis as unknown as Scope;
    const press = new Event('notificationclick');
    const notification = { data: scope.shown[0]?.options.data, close: () => undefined };
    let work: Promise<unknown> = Promise.resolve();
    Object.assign(press, { notification, waitUntil: (one: Promise<unknown>) => (work = one) });
    scope.dispatchEvent(press);
    await work;
    return scope.opened[0] ?? '';
  });
}
