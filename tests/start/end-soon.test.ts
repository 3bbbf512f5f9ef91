import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { Agent, get } from 'node:http';
import { afterEach, describe, expect, test } from 'vitest';
import { ENDS_SOON } from '../../app/_start/children/spawn-child.mjs';

/** Answers at once, `/slow` after half a second; closes when asked to end, and ends when that is done: as the web server does. */
const SERVER = `
  const server = require('node:http').createServer((request, response) => {
    setTimeout(() => response.end('here'), request.url === '/slow' ? 500 : 0);
  });
  server.keepAliveTimeout = 30_000;
  process.once('SIGTERM', () => server.close(() => process.exit(0)));
  server.listen(0, '127.0.0.1', () => console.log(server.address().port));`;

let child: ChildProcess;
const agent = new Agent({ keepAlive: true, maxSockets: 1 });
afterEach(() => {
  child.kill('SIGKILL');
  agent.destroy();
});

async function start(flags: readonly string[]): Promise<number> {
  child = spawn(process.execPath, [...flags, '-e', SERVER], { stdio: ['ignore', 'pipe', 'inherit'] });
  const [port] = await once(child.stdout ?? child, 'data');
  return Number(String(port));
}

/** @returns what the answer says of its connection */
async function ask(port: number, path: string): Promise<string | undefined> {
  const request = get({ port, host: '127.0.0.1', path, agent });
  const [response] = await once(request, 'response');
  response.resume();
  await once(response, 'end');
  return response.headers.connection;
}

describe('a web server that is asked to end', () => {
  test('answers what it was asked, and does not wait for browsers to let go of their connections', async () => {
    const port = await start(ENDS_SOON);
    expect(await ask(port, '/')).toBe('keep-alive');
    const slow = ask(port, '/slow');
    // It has come when the one before it on the same connection was answered, and it is under way.
    await new Promise((done) => setTimeout(done, 100));
    const began = performance.now();
    const ended = once(child, 'exit');
    child.kill('SIGTERM');
    expect(await slow).toBe('keep-alive');
    expect(await ended).toEqual([0, null]);
    // Without it: the 30 s for which a connection is kept.
    expect(performance.now() - began).toBeLessThan(5000);
  });
});
