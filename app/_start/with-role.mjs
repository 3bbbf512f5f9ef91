// @ts-check

/**
 * Lets the sessions of an address take on the role that may not break the record.
 *
 * @param {string} url address of a database
 * @param {string} role name of the role
 * @returns {string} the address with the role in its options
 */
export function withRole(url, role) {
  const address = new URL(url);
  const asked = address.searchParams.get('options');
  address.searchParams.set('options', `${asked ? `${asked} ` : ''}-c role=${role}`);
  return address.href;
}
