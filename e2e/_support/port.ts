import { execFileSync } from 'node:child_process';

const ASK = `const s = require('node:net').createServer();
s.listen(0, '127.0.0.1', () => { process.stdout.write(String(s.address().port)); s.close(); });`;

/**
 * @returns   a port that was free when first asked, the same for every process of one run
 */
export function freePort(): number {
  return portFor('HOLDFAST_E2E_PORT');
}

/**
 * @returns   the port on which the mail server of a test is to listen, to which Holdfast sends its mail
 */
export function mailPort(): number {
  return portFor('HOLDFAST_E2E_MAIL_PORT');
}

function portFor(name: string): number {
  // The configuration is read before anything may be awaited, hence a process of its own that asks the system.
  process.env[name] ??= execFileSync(process.execPath, ['-e', ASK], { encoding: 'utf8' });
  return Number(process.env[name]);
}
