import { execFileSync } from 'node:child_process';
import { X509Certificate } from 'node:crypto';
import { once } from 'node:events';
import { readFileSync, statSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { connect, createServer } from 'node:tls';
import { describe, expect, test } from 'vitest';
import { issueServer, makeAuthority, type Pair } from '#server/front/issue';
import { authorityFile } from '#server/front/authority-file';
import { localPair } from '#server/front/local-authority';
import { machineNames } from '#server/front/machine-names';
import { temporaryFolder } from '../../_support/temporary-folder';

const DAY_MS = 86_400_000;
const NOW = new Date();
const later = (days: number) => new Date(NOW.getTime() + days * DAY_MS);
const names = machineNames('https://tankhouse.local:3443', {
  hostname: 'Tankhouse',
  addresses: ['192.168.7.20', '203.0.113.9', 'fd00::20', 'fe80::1'],
});
const authority = makeAuthority(names.names, 'Holdfast on tankhouse', NOW);

/** What a client says that trusts an authority and nothing else, and asks for a name. */
async function shake(pair: Pair, ca: string, servername: string): Promise<string> {
  const server = createServer({ cert: pair.certificate, key: pair.key }, (socket) => socket.end('here'));
  server.on('tlsClientError', () => undefined);
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  try {
    const socket = connect({ port, host: '127.0.0.1', ca, servername });
    await once(socket, 'secureConnect');
    socket.destroy();
    return 'trusted';
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    return `${code}: ${message}`;
  } finally {
    server.close();
  }
}

describe('the names of a machine', () => {
  test('are its own, the one announced in its network, and its private addresses alone', () => {
    expect(names).toEqual({
      names: ['localhost', 'tankhouse', 'tankhouse.local'],
      addresses: ['127.0.0.1', '192.168.7.20', '::1', 'fd00::20'],
    });
    expect(machineNames('https://10.1.2.3', { hostname: 'a.example', addresses: [] }).names).toEqual([
      'a.example',
      'a.local',
      'localhost',
    ]);
  });
});

describe('a certificate of the local authority', () => {
  test('is trusted by whoever trusts the authority, for its names and no other', async () => {
    const root = await authority;
    const pair = await issueServer(root, names, NOW);
    expect(await shake(pair, root.certificate, 'tankhouse.local')).toBe('trusted');
    expect(await shake(pair, root.certificate, 'localhost')).toBe('trusted');
    expect(await shake(pair, root.certificate, 'other.local')).toMatch(/^ERR_TLS_CERT_ALTNAME_INVALID/);
    const stranger = await makeAuthority(names.names, 'Holdfast on tankhouse', NOW);
    expect(await shake(pair, stranger.certificate, 'tankhouse.local')).not.toBe('trusted');
    const old = await issueServer(root, names, later(-200));
    expect(await shake(old, root.certificate, 'tankhouse.local')).toMatch(/^CERT_HAS_EXPIRED/);
  });

  // RFC 5280, 4.2.1.10.
  test('for a name or address beyond what the authority may speak for is refused, though it is signed', async () => {
    const root = await authority;
    const bank = await issueServer(root, { names: ['bank.example'], addresses: [] }, NOW);
    expect(await shake(bank, root.certificate, 'bank.example')).toMatch(/permitted subtree violation/);
    // Of the internet (RFC 5737).
    const outside = await issueServer(root, { names: ['localhost'], addresses: ['203.0.113.9'] }, NOW);
    expect(await shake(outside, root.certificate, 'localhost')).toMatch(/permitted subtree violation/);
  });

  test('lasts no longer than browsers bear, and says for what it is good', async () => {
    const root = await authority;
    const read = new X509Certificate((await issueServer(root, names, NOW)).certificate);
    const days = (new Date(read.validTo).getTime() - new Date(read.validFrom).getTime()) / DAY_MS;
    expect(days).toBeLessThanOrEqual(397);
    expect(read.ca).toBe(false);
    expect(read.keyUsage).toEqual(['1.3.6.1.5.5.7.3.1']);
    for (const address of names.addresses) expect(read.checkIP(address)).toBe(address);
    expect(new X509Certificate(root.certificate).ca).toBe(true);
  });

  test('is read as it was meant by another program', async ({ skip }) => {
    const openssl = (words: string[], input?: string) => execFileSync('openssl', words, { encoding: 'utf8', input });
    try {
      openssl(['version']);
    } catch {
      skip('openssl is not installed, so nobody else read the certificates');
    }
    const folder = temporaryFolder();
    const root = await authority;
    writeFileSync(join(folder, 'root.pem'), root.certificate);
    writeFileSync(join(folder, 'server.pem'), (await issueServer(root, names, NOW)).certificate);
    const check = ['verify', '-x509_strict', '-purpose', 'sslserver', '-CAfile', join(folder, 'root.pem')];
    expect(openssl([...check, '-verify_hostname', 'tankhouse.local', join(folder, 'server.pem')])).toContain('OK');
    expect(openssl([...check, '-verify_ip', '192.168.7.20', join(folder, 'server.pem')])).toContain('OK');
    const text = openssl(['x509', '-noout', '-text'], root.certificate);
    expect(text).toMatch(/X509v3 Name Constraints: critical\s+Permitted:/);
    for (const said of [
      'DNS:tankhouse.local',
      'IP:192.168.0.0/255.255.0.0',
      'IP:172.16.0.0/255.240.0.0',
      'CA:TRUE, pathlen:0',
    ])
      expect(text).toContain(said);
    expect(text).toMatch(/IP:FC00:0:0:0:0:0:0:0\/FE00:0/);
  });
});

describe('what is kept of the authority', () => {
  test('is its key for its owner alone, and the same authority and certificate at the next start', async () => {
    const folder = join(temporaryFolder(), 'tls');
    const { pair, beyond } = await localPair(folder, names, NOW);
    expect(beyond).toEqual([]);
    expect(await localPair(folder, names, later(1))).toEqual({ pair, beyond });
    for (const file of ['authority.json', 'server.json'])
      expect(statSync(join(folder, file)).mode & 0o777, file).toBe(0o600);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
    expect(readFileSync(authorityFile(folder), 'utf8')).not.toContain('PRIVATE');
  });

  test('renews the certificate a month before its end, and when the machine is called otherwise', async () => {
    const folder = temporaryFolder();
    const { pair } = await localPair(folder, names, NOW);
    const root = readFileSync(authorityFile(folder), 'utf8');
    const moved = { ...names, addresses: [...names.addresses, '10.0.0.7'] };
    const elsewhere = (await localPair(folder, moved, NOW)).pair;
    expect(new X509Certificate(elsewhere.certificate).checkIP('10.0.0.7')).toBe('10.0.0.7');
    const renewed = (await localPair(folder, moved, later(61))).pair;
    expect(renewed.key).not.toBe(elsewhere.key);
    expect(new Date(new X509Certificate(renewed.certificate).validTo) > later(150)).toBe(true);
    expect(readFileSync(authorityFile(folder), 'utf8')).toBe(root);
    expect(pair).not.toEqual(renewed);
  });

  test('says a name that it may not speak for, and leaves it out', async () => {
    const folder = temporaryFolder();
    await localPair(folder, names, NOW);
    const { pair, beyond } = await localPair(folder, { ...names, names: [...names.names, 'aqua.example'] }, NOW);
    expect(beyond).toEqual(['aqua.example']);
    expect(await shake(pair, readFileSync(authorityFile(folder), 'utf8'), 'tankhouse.local')).toBe('trusted');
  });

  test('begins anew when it is damaged, or its time is over', async () => {
    const folder = temporaryFolder();
    await localPair(folder, names, NOW);
    const first = readFileSync(authorityFile(folder), 'utf8');
    writeFileSync(join(folder, 'authority.json'), '{"certificate":');
    await localPair(folder, names, NOW);
    const second = readFileSync(authorityFile(folder), 'utf8');
    await localPair(folder, names, later(3700));
    expect(new Set([first, second, readFileSync(authorityFile(folder), 'utf8')]).size).toBe(3);
  });
});
