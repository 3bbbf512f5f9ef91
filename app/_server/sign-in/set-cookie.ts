import 'server-only';

/** A cookie to be set, in the words of Next's own cookie jar. */
export interface SetCookie {
  name: string;
  value: string;
  path: string;
  expires?: Date;
  httpOnly: boolean;
  secure: boolean;
  sameSite: 'lax';
}

/**
 * The cookies that an answer sets, read from its `Set-Cookie` lines (RFC 6265, 5.2). All of ours are for every path and not
 * sent along from elsewhere, except by a link.
 */
export function cookiesOf(headers: Headers): SetCookie[] {
  return headers.getSetCookie().map((line) => {
    const [pair = '', ...attributes] = line.split(';').map((part) => part.trim());
    const named = new Map(attributes.map((one) => [one.split('=')[0]?.toLowerCase() ?? '', valueIn(one)]));
    const expires = named.get('expires');
    return {
      name: pair.slice(0, pair.indexOf('=')),
      value: decodeURIComponent(valueIn(pair)),
      path: named.get('path') ?? '/',
      ...(expires ? { expires: new Date(expires) } : {}),
      httpOnly: named.has('httponly'),
      secure: named.has('secure'),
      sameSite: 'lax',
    };
  });
}

function valueIn(pair: string): string {
  return pair.includes('=') ? pair.slice(pair.indexOf('=') + 1) : '';
}
