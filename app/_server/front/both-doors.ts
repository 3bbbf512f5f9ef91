import 'server-only';
import type { Server as Plain } from 'node:http';
import type { Server as Secure } from 'node:https';
import { createServer, type Server } from 'node:net';

/** First byte of whoever begins with a TLS handshake (RFC 8446, 5.1: content type 22). */
const HANDSHAKE = 22;
/** ms after which whoever says nothing is let go. */
const PATIENCE_MS = 15_000;

/**
 * One port for both: who speaks TLS is answered encrypted, and who types the address without `https` is told where to go.
 *
 * @returns   the server to listen with
 */
export function bothDoors(secure: Secure, plain: Plain): Server {
  return createServer((socket) => {
    socket.on('error', () => socket.destroy());
    socket.setTimeout(PATIENCE_MS, () => socket.destroy());
    socket.once('data', (first) => {
      socket.setTimeout(0);
      socket.removeAllListeners('timeout');
      socket.pause();
      socket.unshift(first);
      (first[0] === HANDSHAKE ? secure : plain).emit('connection', socket);
      process.nextTick(() => socket.resume());
    });
  });
}
