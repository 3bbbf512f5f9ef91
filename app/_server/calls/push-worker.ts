import 'server-only';

/**
 * What a browser runs when a call comes and no page is open: it shows the call, and opens its page when pressed. It keeps
 * nothing, and acknowledges nothing. A call about the same alarm replaces the one before, and sounds again.
 */
export const PUSH_WORKER = `
self.addEventListener('push', (event) => {
  let told = {};
  try { told = event.data.json(); } catch { told = {}; }
  const { title = 'Alarm', body = 'Open Holdfast.', url = '/', tag = 'call' } = told;
  event.waitUntil(self.registration.showNotification(title, {
    body, tag, renotify: true, requireInteraction: true, data: { url }, vibrate: [400, 200, 400, 200, 400],
  }));
});
self.addEventListener('notificationclick', (event) => {
  event.notification.close();
  const url = new URL(event.notification.data.url, self.location.origin);
  // Only pages of this Holdfast are opened, whatever a message says.
  const own = new URL(url.pathname + url.search, self.location.origin).href;
  event.waitUntil(self.clients.openWindow(own));
});
`;
