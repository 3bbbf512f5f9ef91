// @ts-check

/** The migrated database that is copied. */
export const TEMPLATE = 'holdfast_template';

/**
 * The account of the processes on a server that is thrown away: it shares the password that was drawn for the owner.
 *
 * @param {string} url address as the owner
 * @returns {string} the same database with the rights of the processes
 */
export function asProcess(url) {
  const address = new URL(url);
  address.username = 'holdfast_process';
  return address.href;
}
