import 'server-only';
import { X509Certificate } from 'node:crypto';
import { join } from 'node:path';
import { now } from '../clock';
import { frontEnv } from '../env';
import { logError, logInfo } from '../log';
import { givenPair } from './given-pair';
import type { Pair } from './issue';
import { localPair } from './local-authority';
import { machineNames } from './machine-names';
import { openFront } from './open-front';
import { withinRanges } from './private-ranges';

/** ms between two looks whether there is another certificate to show, or another name to be called by. */
const LOOK_MS = 60_000;
/** ms whoever is being answered has once the process is asked to end. */
const GRACE_MS = 1000;

const settings = frontEnv();
const { HOLDFAST_ADDRESS: address, HOLDFAST_TLS_CERT: certificate, HOLDFAST_TLS_KEY: key } = settings;
const others = new Set<string>();
let said = '';

/** The certificate to show now: the given one as it lies there, or one of this machine's own authority. */
async function pairNow(): Promise<Pair> {
  const names = machineNames(address);
  if (certificate !== undefined && key !== undefined) {
    const pair = givenPair({ certificate, key });
    const { subjectAltName = '' } = new X509Certificate(pair.certificate);
    const given = [...subjectAltName.matchAll(/(?:DNS|IP Address):([^,*]+)/g)].map(([, name = '']) => name);
    for (const name of [...names.names, ...names.addresses, ...given]) others.add(name.toLowerCase());
    return pair;
  }
  for (const name of [...names.names, ...names.addresses]) others.add(name);
  const { pair, beyond } = await localPair(join(settings.HOLDFAST_DATA, 'tls'), names, now());
  if (beyond.join() !== said) {
    said = beyond.join();
    logError('authority of this machine may not speak for a name', said, {
      mend: 'stop, remove tls/ in the data folder',
    });
  }
  return pair;
}

async function main(): Promise<void> {
  let shown = await pairNow();
  const called = { own: new URL(address), others, isTrustTold: certificate === undefined };
  const isProxy = withinRanges(settings.HOLDFAST_PROXIES);
  const { server, show } = openFront({ inside: { port: settings.HOLDFAST_WEB_PORT }, called, isProxy }, shown);
  const look = async () => {
    const next = await pairNow();
    if (next.certificate === shown.certificate) return;
    shown = next;
    show(next);
    logInfo('another certificate is shown', { until: new X509Certificate(next.certificate).validTo });
  };
  // What is renewed badly is said, and the one there was goes on being shown.
  setInterval(() => void look().catch((error: unknown) => logError('certificate not renewed', error)), LOOK_MS);
  server.on('error', (error) => {
    logError('front could not listen', error);
    process.exit(1);
  });
  server.listen(settings.HOLDFAST_TLS_PORT, () => logInfo('front is up', { address }));
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.once(signal, () => {
      server.close();
      setTimeout(() => process.exit(0), GRACE_MS);
    });
  }
}

main().catch((error: unknown) => {
  logError('front broke', error);
  process.exit(1);
});
