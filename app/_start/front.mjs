// @ts-check
// What other machines come by: encrypted, on a port of its own, before the pages, which listen to this machine alone.
import { X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { hostname, networkInterfaces } from 'node:os';
import { Failure } from './failure.mjs';

const USUAL_PORT = 3443;
/** Of https, which no address names. */
const HTTPS_PORT = 443;

/**
 * @typedef {object} Front
 * @property {number} port that other machines come by
 * @property {string} address where people reach Holdfast
 * @property {boolean} isLocal whether its certificate is by an authority of this machine's own
 */

/** @typedef {{ hostname: string, addresses: string[] }} Machine */

/**
 * @param {boolean} isWanted whether encryption was asked for on the command line
 * @param {NodeJS.ProcessEnv} environment where an empty string means that nothing was said
 * @param {Machine} [machine] this one unless said otherwise
 * @returns {Front | undefined} nothing when Holdfast is for this machine alone, or a proxy encrypts before it
 * @throws {Failure} when what was said does not go together
 */
export function frontOf(isWanted, environment, machine = thisMachine()) {
  const { HOLDFAST_TLS: said, HOLDFAST_TLS_CERT: certificate, HOLDFAST_TLS_KEY: key } = environment;
  if (said && said !== 'local') throw new Failure(`HOLDFAST_TLS may be "local" or nothing, not "${said}".`);
  if (!certificate !== !key)
    throw new Failure('HOLDFAST_TLS_CERT and HOLDFAST_TLS_KEY belong together: name both files.');
  if (!certificate && !said && !isWanted) return undefined;
  const told = environment.HOLDFAST_ADDRESS ? asHttps(environment.HOLDFAST_ADDRESS) : undefined;
  const port = portOf(environment.HOLDFAST_TLS_PORT || told?.port || String(USUAL_PORT));
  const name = certificate && !told ? nameIn(certificate) : undefined;
  const at = port === HTTPS_PORT ? '' : `:${port}`;
  const address = told?.origin ?? `https://${name ?? nameFor(machine)}${at}`;
  return { port, address, isLocal: !certificate };
}

/** @returns {Machine} by what other machines may call this one */
function thisMachine() {
  const all = Object.values(networkInterfaces()).flatMap((some) => some ?? []);
  const far = all.filter(({ family, internal }) => family === 'IPv4' && !internal);
  return { hostname: hostname(), addresses: far.map(({ address }) => address) };
}

/**
 * An address of the network works on every phone; names do only where somebody keeps them.
 *
 * @param {Machine} machine
 * @returns {string} name or address
 */
function nameFor({ hostname: name, addresses }) {
  const own = addresses.find((one) => /^(10|192\.168|172\.(1[6-9]|2\d|3[01]))\./.test(one));
  return own ?? name.toLowerCase();
}

/**
 * @param {string} said in HOLDFAST_ADDRESS
 * @returns {URL} the same
 */
function asHttps(said) {
  const address = URL.canParse(said) ? new URL(said) : undefined;
  if (address?.protocol === 'https:') return address;
  throw new Failure(`HOLDFAST_ADDRESS begins with https:// where Holdfast encrypts, and is "${said}".`);
}

/**
 * @param {string} said a port in figures
 * @returns {number} 1 to 65535
 */
function portOf(said) {
  const port = Number(said);
  if (Number.isInteger(port) && port >= 1 && port <= 65_535) return port;
  throw new Failure(`HOLDFAST_TLS_PORT is a whole number from 1 to 65535, not "${said}".`);
}

/**
 * @param {string} file with a certificate
 * @returns {string} the first name it holds for
 */
function nameIn(file) {
  const said = read(file).subjectAltName ?? '';
  const name = /(?:DNS|IP Address):([^,*]+)(?:,|$)/.exec(said)?.[1];
  if (name) return name;
  throw new Failure(
    `The certificate in ${file} names no single machine: say in HOLDFAST_ADDRESS by what address people come.`,
  );
}

/** @param {string} file */
function read(file) {
  try {
    return new X509Certificate(readFileSync(file));
  } catch {
    throw new Failure(`HOLDFAST_TLS_CERT names ${file}, which cannot be read as a certificate (PEM).`);
  }
}
