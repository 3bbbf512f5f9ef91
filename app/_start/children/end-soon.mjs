// @ts-check
// Loaded into the web process before anything else. A server that is asked to end waits until its last connection is closed,
// and browsers keep theirs open, and use them again, long after an answer: they are closed as soon as nothing is answered on
// them, and whoever still asks is told not to keep theirs.
import { subscribe } from 'node:diagnostics_channel';

const GLANCE_MS = 50;

/** @type {Set<import('node:http').Server>} */
const servers = new Set();
let isEnding = false;

subscribe('http.server.request.start', (message) => {
  const { response, server } =
    /** @type {{ response: import('node:http').ServerResponse, server: import('node:http').Server }} */ (message);
  servers.add(server);
  if (isEnding) response.setHeader('connection', 'close');
});

for (const signal of /** @type {const} */ (['SIGTERM', 'SIGINT'])) {
  process.once(signal, () => {
    isEnding = true;
    setInterval(() => {
      for (const server of servers) server.closeIdleConnections();
    }, GLANCE_MS).unref();
  });
}
