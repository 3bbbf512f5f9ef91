import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, writeFileSync } from 'node:fs';
import { type AddressInfo, connect, createServer, type Server, type Socket } from 'node:net';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { createServer as createTlsServer } from 'node:tls';
import { Aedes, type AedesOptions } from 'aedes';
import { CERTIFICATE, KEY } from './test-certificate';

/** A broker of a test. */
export interface TestBroker {
  port: number;
  close: () => Promise<void>;
}

/** What a broker of MQTT 3.1.1 keeps while it is away: sessions, and what waits in them. */
export type Kept = NonNullable<AedesOptions['persistence']>;

/**
 * Starts a broker in this process (aedes, which speaks MQTT 3.1.1 and refuses 5), reached over TCP.
 *
 * @param password   of the user `probe`; anybody may come in when left out
 */
export async function startAedes({
  port = 0,
  password,
  persistence,
  isTls = false,
}: {
  port?: number;
  password?: string;
  persistence?: Kept;
  isTls?: boolean;
} = {}): Promise<TestBroker & { broker: Aedes }> {
  const broker = await Aedes.createBroker({
    ...(persistence ? { persistence } : {}),
    ...(password === undefined
      ? {}
      : {
          authenticate: (_client, user, given, done) => {
            const isRight = user === 'probe' && given?.toString() === password;
            done(isRight ? null : Object.assign(new Error('no'), { returnCode: 4 as const }), isRight);
          },
        }),
  });
  const sockets = new Set<Socket>();
  const welcome = (socket: Socket) => {
    sockets.add(socket);
    socket.on('close', () => sockets.delete(socket)).on('error', () => undefined);
    broker.handle(socket);
  };
  const server = isTls ? createTlsServer({ key: KEY, cert: CERTIFICATE }, welcome) : createServer(welcome);
  await listening(server, port);
  return {
    broker,
    port: portOf(server),
    close: async () => {
      for (const socket of sockets) socket.destroy();
      server.close();
      await new Promise<void>((resolve) => broker.close(() => resolve()));
    },
  };
}

/** Where Debian puts it, which is on nobody's path but the administrator's. */
const MOSQUITTO = ['/usr/sbin/mosquitto', '/usr/local/sbin/mosquitto', '/usr/bin/mosquitto'].find(existsSync);

/** Why no broker of MQTT 5 can be started here; null when one can. */
export const NO_MOSQUITTO: string | null = MOSQUITTO ? null : 'mosquitto is not installed on this machine';

/** Starts Eclipse Mosquitto, which speaks MQTT 5, with nobody let in but `probe`. @param folder   for its files */
export async function startMosquitto(folder: string, password: string): Promise<TestBroker> {
  const finder = createServer();
  await listening(finder, 0);
  const port = portOf(finder);
  finder.close();
  const passwords = join(folder, 'passwords');
  writeFileSync(passwords, `probe:${password}\n`, { mode: 0o600 });
  execFileSync('mosquitto_passwd', ['-U', passwords], { stdio: 'ignore' });
  const user = process.getuid?.() === 0 ? 'user root\n' : '';
  writeFileSync(join(folder, 'conf'), `${user}listener ${port} 127.0.0.1\npassword_file ${passwords}\n`);
  const child = spawn(MOSQUITTO ?? '', ['-c', join(folder, 'conf')], { stdio: 'ignore' });
  await answers(port, child);
  return {
    port,
    close: async () => {
      child.kill('SIGTERM');
      if (child.exitCode === null) await once(child, 'exit');
    },
  };
}

async function answers(port: number, child: ChildProcess): Promise<void> {
  for (let tried = 0; tried < 100; tried++) {
    if (child.exitCode !== null) throw new Error(`the broker ended with ${child.exitCode}`);
    const socket = connect(port, '127.0.0.1');
    const isUp = await new Promise<boolean>((resolve) => {
      socket.once('connect', () => resolve(true)).once('error', () => resolve(false));
    });
    socket.destroy();
    if (isUp) return;
    await wait(50);
  }
  throw new Error('the broker does not answer');
}

/** A line to a broker that can lose what goes there, while what comes from there still arrives. */
export async function lossyLine(to: number): Promise<TestBroker & { lose: () => void }> {
  let isLosing = false;
  const server = createServer((here) => {
    const there = connect(to, '127.0.0.1');
    here.on('data', (bytes) => {
      if (!isLosing) there.write(bytes);
    });
    there.pipe(here);
    const end = () => {
      here.destroy();
      there.destroy();
    };
    for (const side of [here, there]) side.on('close', end).on('error', end);
  });
  await listening(server, 0);
  return {
    port: portOf(server),
    lose: () => {
      isLosing = true;
    },
    close: async () => void server.close(),
  };
}

async function listening(server: Server, port: number): Promise<void> {
  server.listen(port, '127.0.0.1');
  await once(server, 'listening');
}

function portOf(server: Server): number {
  return (server.address() as AddressInfo).port;
}
