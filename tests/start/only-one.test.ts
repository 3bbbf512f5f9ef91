import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { bornAt } from '../../app/_start/born.mjs';
import { claim } from '../../app/_start/only-one.mjs';
import { temporaryFolder } from '../_support/temporary-folder';

const data = temporaryFolder();
const path = join(data, 'running.json');
const address = 'http://127.0.0.1:3200';
let release: () => void;

beforeEach(() => {
  release = () => undefined;
});
afterEach(() => release());

describe('a data folder', () => {
  test('is claimed by one Holdfast, and a second one is told where the first answers', () => {
    ({ release } = claim(data, address));
    expect(() => claim(data, 'http://127.0.0.1:9')).toThrow(`already running at ${address} (process ${process.pid}`);
  });

  test('is free again once it is released', () => {
    claim(data, address).release();
    expect(existsSync(path)).toBe(false);
    const second = claim(data, address);
    release = second.release;
    expect(second.tookOver).toBe(false);
  });

  test('is taken over from a Holdfast that was killed', async () => {
    const killed = spawn(process.execPath, ['-e', 'setInterval(() => {}, 1000)']);
    const held = { pid: killed.pid, born: bornAt(killed.pid ?? 0), address };
    writeFileSync(path, JSON.stringify(held));
    expect(() => claim(data, address)).toThrow('already running');
    killed.kill('SIGKILL');
    await once(killed, 'exit');
    const second = claim(data, address);
    release = second.release;
    expect(second.tookOver).toBe(true);
    expect(JSON.parse(readFileSync(path, 'utf8')).pid).toBe(process.pid);
  });

  test('is not held by another program that happens to have the number of a killed Holdfast', () => {
    writeFileSync(path, JSON.stringify({ pid: process.pid, born: 'long before', address }));
    ({ release } = claim(data, address));
    expect(JSON.parse(readFileSync(path, 'utf8')).born).toBe(bornAt(process.pid));
  });

  test('is not held by a claim that nobody can read', () => {
    writeFileSync(path, '{"pid":');
    ({ release } = claim(data, address));
    expect(JSON.parse(readFileSync(path, 'utf8')).address).toBe(address);
  });
});
