import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import Provider, { type Configuration } from 'oidc-provider';
import { vi } from 'vitest';

/** Somebody whom the issuer knows. */
export interface Known {
  sub: string;
  email?: string;
  email_verified?: boolean;
}

/** An issuer of OpenID Connect of its own, over HTTP on this machine. */
export interface TestIssuer {
  address: string;
  clientId: string;
  clientSecret: string;
  /** Whoever signs in there next. */
  person: Known;
  close: () => Promise<void>;
}

/**
 * Starts the issuer: the certified implementation `oidc-provider`, which asks for PKCE, and whose sign-in page lets the one
 * person in who is set.
 *
 * @param redirectUri   where it sends people back to
 */
export async function testIssuer(redirectUri: string): Promise<TestIssuer> {
  const server: Server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const issuer: TestIssuer = {
    address,
    clientId: 'holdfast',
    clientSecret: 'a secret of the test alone, and long',
    person: { sub: 'nobody' },
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
  // It warns of the version of Node and of its own keys for development.
  const quiet = [vi.spyOn(console, 'warn'), vi.spyOn(console, 'info')].map((spy) =>
    spy.mockImplementation(() => undefined),
  );
  const provider = new Provider(address, configuration(issuer, redirectUri));
  const answer = provider.callback();
  server.on('request', (request, response) => {
    // There is nobody to ask: whoever is set has signed in.
    if (request.url?.startsWith('/interaction/'))
      void provider.interactionFinished(request, response, { login: { accountId: issuer.person.sub } });
    else void answer(request, response);
  });
  for (const spy of quiet) spy.mockRestore();
  return issuer;
}

function configuration(issuer: TestIssuer, redirectUri: string): Configuration {
  return {
    clients: [
      {
        client_id: issuer.clientId,
        client_secret: issuer.clientSecret,
        redirect_uris: [redirectUri],
        grant_types: ['authorization_code'],
        response_types: ['code'],
      },
    ],
    pkce: { required: () => true },
    features: { devInteractions: { enabled: false } },
    claims: { openid: ['sub'], email: ['email', 'email_verified'] },
    findAccount: (_context, sub) => ({ accountId: sub, claims: () => ({ ...issuer.person, sub }) }),
    // And has agreed.
    loadExistingGrant: async (context) => {
      const { client, provider, session } = context.oidc;
      const grant = new provider.Grant({ accountId: session?.accountId, clientId: client?.clientId });
      grant.addOIDCScope('openid email');
      await grant.save();
      return grant;
    },
  };
}

/**
 * A browser at the issuer, from the address it is sent to until it is sent back.
 *
 * @returns   the address it is sent back to
 */
export async function throughIssuer(issuer: TestIssuer, location: string): Promise<URL> {
  const cookies = new Map<string, string>();
  let at = new URL(location);
  while (at.origin === issuer.address) {
    const cookie = [...cookies].map((pair) => pair.join('=')).join('; ');
    const response = await fetch(at, { redirect: 'manual', headers: { cookie } });
    for (const line of response.headers.getSetCookie()) {
      const [name = '', value = ''] = (line.split(';')[0] ?? '').split('=');
      cookies.set(name, value);
    }
    const next = response.headers.get('location');
    if (next === null) throw new Error(`The issuer answered ${response.status}: ${await response.text()}`);
    at = new URL(next, at);
  }
  return at;
}
