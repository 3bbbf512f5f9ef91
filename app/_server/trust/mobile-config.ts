import 'server-only';
import { createHash, type X509Certificate } from 'node:crypto';
import { titleOf } from './own-authority';

const NAME = 'example.holdfast.authority';

/**
 * A configuration profile that brings an authority to iPhones, iPads and Macs: a property list in XML with one payload. It is
 * not signed, as nobody would know the signature; who takes it compares the fingerprint.
 *
 * @returns   the same for the same authority, so that taking it twice leaves one
 */
export function mobileConfig(authority: X509Certificate): string {
  const title = titleOf(authority);
  const said = 'Lets this device reach Holdfast encrypted. It changes nothing else.';
  const payload = dictionary([
    ['PayloadCertificateFileName', text('holdfast.crt')],
    ['PayloadContent', `<data>${authority.raw.toString('base64')}</data>`],
    ['PayloadDescription', text(said)],
    ['PayloadDisplayName', text(title)],
    ['PayloadIdentifier', text(`${NAME}.root`)],
    ['PayloadType', text('com.apple.security.root')],
    ['PayloadUUID', text(uuidOf(authority, 'root'))],
    ['PayloadVersion', '<integer>1</integer>'],
  ]);
  const profile = dictionary([
    ['PayloadContent', `<array>${payload}</array>`],
    ['PayloadDescription', text(said)],
    ['PayloadDisplayName', text(title)],
    ['PayloadIdentifier', text(NAME)],
    ['PayloadRemovalDisallowed', '<false/>'],
    ['PayloadType', text('Configuration')],
    ['PayloadUUID', text(uuidOf(authority, 'profile'))],
    ['PayloadVersion', '<integer>1</integer>'],
  ]);
  return `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE plist PUBLIC "-//Apple//DTD PLIST 1.0//EN" "http://www.apple.com/DTDs/PropertyList-1.0.dtd">
<plist version="1.0">${profile}</plist>
`;
}

function dictionary(entries: readonly (readonly [string, string])[]): string {
  return `<dict>${entries.map(([key, value]) => `<key>${key}</key>${value}`).join('')}</dict>`;
}

function text(value: string): string {
  return `<string>${value.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</string>`;
}

/** Made of the fingerprint (RFC 9562, version 8). */
function uuidOf({ fingerprint256 }: X509Certificate, what: string): string {
  const bytes = createHash('sha256').update(`${what} ${fingerprint256}`).digest().subarray(0, 16);
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x80;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  return bytes.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-');
}
