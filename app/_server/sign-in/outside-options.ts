import 'server-only';
import type { NextAuthOptions } from 'next-auth';
import type { OAuthConfig, UserinfoEndpointHandler } from 'next-auth/providers/oauth';
import { z } from 'zod';
import { emailKey, noteFailure } from '#data/accounts/accounts';
import { findOutsideAccount } from '#data/accounts/outside-identities';
import { now } from '../clock';
import { env } from '../env';
import type { Visit } from '../gate/visit';
import { sessionOptions } from './session-options';

/** What we read of an issuer's word for somebody (OpenID Connect Core 1.0, 5.1). */
const Claims = z.object({
  iss: z.string(),
  sub: z.string(),
  email: z.email().optional().catch(undefined),
  email_verified: z.boolean().optional().catch(undefined),
});

type Claims = z.output<typeof Claims>;

/** The outside issuer that people may sign in by, if one was named. */
export function outsideIssuer(): { name: string } | null {
  const { HOLDFAST_OIDC_ISSUER: issuer, HOLDFAST_OIDC_CLIENT_ID: clientId, HOLDFAST_OIDC_NAME: name } = env();
  if (issuer === undefined || clientId === undefined) return null;
  return { name: name ?? new URL(issuer).hostname };
}

/** Signing in by the issuer: by code, with PKCE, state and nonce; and whose account it leads to. */
export function outsideOptions(visit: Visit): NextAuthOptions {
  const options = sessionOptions(visit);
  let accountId: string | null = null;
  return {
    ...options,
    providers: [issuer()],
    callbacks: {
      ...options.callbacks,
      signIn: async ({ profile }) => {
        const claims = Claims.safeParse(profile);
        accountId = claims.success ? await accountOf(claims.data) : null;
        if (accountId === null) await noteFailure({ accountId: null, way: 'outside' }, now());
        return accountId !== null;
      },
      jwt: ({ token, account }) => (account && accountId !== null ? { sub: accountId, way: 'outside' } : token),
    },
  };
}

/** Nobody gets an account by this, and an address counts only when the issuer says that it is theirs. */
async function accountOf({ iss, sub, email, email_verified }: Claims): Promise<string | null> {
  const vouched = email !== undefined && email_verified === true ? emailKey(email) : null;
  return await findOutsideAccount({ issuer: iss, subject: sub, email: vouched }, now());
}

function issuer(): OAuthConfig<Claims> {
  const { HOLDFAST_OIDC_ISSUER, HOLDFAST_OIDC_CLIENT_ID, HOLDFAST_OIDC_CLIENT_SECRET } = env();
  return {
    id: 'outside',
    name: 'outside',
    type: 'oauth',
    wellKnown: `${HOLDFAST_OIDC_ISSUER?.replace(/\/$/, '')}/.well-known/openid-configuration`,
    clientId: HOLDFAST_OIDC_CLIENT_ID,
    clientSecret: HOLDFAST_OIDC_CLIENT_SECRET,
    authorization: { params: { scope: 'openid email' } },
    idToken: true,
    checks: ['pkce', 'state', 'nonce'],
    userinfo: { request: wordOf },
    profile: ({ sub }) => ({ id: sub }),
  };
}

/** Many issuers give the address only when asked once more; what they signed goes before it. */
const wordOf: UserinfoEndpointHandler['request'] = async ({ client, tokens }) => {
  // next-auth hands on what its client made, and calls it by a narrower type.
  const set = tokens as Exclude<Parameters<typeof client.userinfo>[0], string>;
  const asks = typeof client.issuer.metadata.userinfo_endpoint === 'string';
  return { ...(asks ? await client.userinfo(set) : {}), ...set.claims() };
};
