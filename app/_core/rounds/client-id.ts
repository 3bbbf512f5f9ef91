/** Bytes of chance in an id. */
export const CHANCE_BYTES = 10;

/**
 * A UUIDv7 (RFC 9562, section 5.7) for something that is made on a telephone, where nobody can be asked for an id.
 *
 * @param atMs     ms since 1970
 * @param chance   ten bytes that nobody can guess
 * @throws RangeError when there are fewer
 */
export function clientId(atMs: number, chance: Uint8Array): string {
  if (chance.length < CHANCE_BYTES) throw new RangeError(`An id takes ${CHANCE_BYTES} bytes of chance`);
  const time = Math.floor(atMs).toString(16).padStart(12, '0').slice(-12);
  const byte = (at: number) => chance[at] ?? 0;
  const hex = (value: number) => value.toString(16).padStart(2, '0');
  const version = `${hex(0x70 | (byte(0) & 0x0f))}${hex(byte(1))}`;
  const variant = `${hex(0x80 | (byte(2) & 0x3f))}${hex(byte(3))}`;
  const rest = Array.from({ length: 6 }, (_, at) => hex(byte(at + 4))).join('');
  return `${time.slice(0, 8)}-${time.slice(8)}-${version}-${variant}-${rest}`;
}
