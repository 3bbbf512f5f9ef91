// @ts-check
// Ports of this machine's own address.
import { createServer } from 'node:net';

/** @returns {Promise<number>} a port nobody listens on */
export async function freePort() {
  const port = await listen(0);
  if (port === undefined) throw new Error('The system gave no free port.');
  return port;
}

/**
 * @param {number} port to try
 * @returns {Promise<boolean>} whether nobody listens on it
 */
export async function isFree(port) {
  return (await listen(port)) !== undefined;
}

/**
 * @param {number} port to try; 0 for any
 * @returns {Promise<number | undefined>} the port that could be listened on for a moment
 */
function listen(port) {
  return new Promise((resolve) => {
    const server = createServer();
    server.once('error', () => resolve(undefined));
    server.listen({ port, host: '127.0.0.1' }, () => {
      const address = server.address();
      server.close(() => resolve(typeof address === 'object' ? address?.port : undefined));
    });
  });
}
