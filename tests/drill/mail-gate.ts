import { once } from 'node:events';
import { type AddressInfo, connect, createServer, type Socket } from 'node:net';
import { type MailServer, startMailServer } from '../_support/mail-server';

/** A mail server that can be away: nobody reaches it then, and whoever is speaking to it is cut off. */
export interface MailGate extends Pick<MailServer, 'taken' | 'close'> {
  /** Where it is reached. */
  url: string;
  setAway: (isAway: boolean) => void;
}

/** Starts a mail server with a gate before it, on free ports of this machine. */
export async function startMailGate(): Promise<MailGate> {
  const mail = await startMailServer();
  const sockets = new Set<Socket>();
  let isAway = false;
  const gate = createServer((socket) => {
    sockets.add(socket.on('error', () => undefined).on('close', () => sockets.delete(socket)));
    if (isAway) return void socket.destroy();
    const onward = connect(Number(new URL(mail.url).port), '127.0.0.1').on('error', () => socket.destroy());
    socket.pipe(onward).pipe(socket);
  }).listen(0, '127.0.0.1');
  await once(gate, 'listening');
  const cut = () => {
    for (const socket of sockets) socket.destroy();
  };
  return {
    url: `smtp://127.0.0.1:${(gate.address() as AddressInfo).port}`,
    taken: mail.taken,
    setAway: (away) => {
      isAway = away;
      if (away) cut();
    },
    close: async () => {
      gate.close();
      cut();
      await mail.close();
    },
  };
}
