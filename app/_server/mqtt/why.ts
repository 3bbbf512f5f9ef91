import 'server-only';

/** Why there is no connection, as a sentence that somebody can do something about. */
export interface Why {
  said: string;
  /** Whether the broker may only not know the version of MQTT that was tried. */
  mayBeVersion: boolean;
}

/** Reason codes of CONNACK that MQTT 3.1.1 (3.2.2.3) and 5 (3.2.2.2) give. */
const REFUSED: Readonly<Record<number, string>> = {
  2: 'The broker does not take the name Holdfast gives itself there.',
  3: 'The broker says that it is not available.',
  4: 'The broker does not take this user and password.',
  5: 'The broker does not let this user in.',
  133: 'The broker does not take the name Holdfast gives itself there.',
  134: 'The broker does not take this user and password.',
  135: 'The broker does not let this user in.',
  136: 'The broker says that it is not available.',
  137: 'The broker says that it is busy.',
  138: 'The broker has banned this user.',
  141: 'The broker heard nothing of Holdfast for too long.',
  142: 'Somebody else connected under the name that Holdfast has there: is a second Holdfast at work?',
  149: 'A message was larger than is taken.',
  159: 'The broker says that Holdfast connects too often.',
};
/** Codes by which a broker says that it does not speak the version. */
const VERSION_CODES = [1, 132];

/** Codes of errors of the network, of the resolver and of TLS. */
const BROKEN: Readonly<Record<string, string>> = {
  ECONNREFUSED: 'Nobody answers at that address and port.',
  ENOTFOUND: 'There is no machine of that name.',
  EAI_AGAIN: 'The name of the machine cannot be looked up at the moment.',
  ETIMEDOUT: 'The machine does not answer.',
  EHOSTUNREACH: 'There is no way to that machine.',
  ENETUNREACH: 'There is no way to that machine.',
  DEPTH_ZERO_SELF_SIGNED_CERT: 'The broker’s certificate is signed by itself: give the certificate that signs it.',
  SELF_SIGNED_CERT_IN_CHAIN: 'Nobody known signs the broker’s certificate: give the certificate that does.',
  UNABLE_TO_VERIFY_LEAF_SIGNATURE: 'Nobody known signs the broker’s certificate: give the certificate that does.',
  UNABLE_TO_GET_ISSUER_CERT_LOCALLY: 'Nobody known signs the broker’s certificate: give the certificate that does.',
  CERT_HAS_EXPIRED: 'The broker’s certificate has expired.',
  ERR_TLS_CERT_ALTNAME_INVALID: 'The broker’s certificate is of another name than that of the address.',
  EPROTO: 'The broker does not speak TLS there, or no version of it that is taken.',
};

/** Why an attempt failed, or a connection ended. @param wasTaken   whether the broker had taken the connection */
export function whyOf(error: unknown, wasTaken: boolean): Why {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (typeof code === 'number' && REFUSED[code] !== undefined) return { said: REFUSED[code], mayBeVersion: false };
  if (typeof code === 'number' && VERSION_CODES.includes(code))
    return { said: 'The broker speaks neither MQTT 5 nor 3.1.1.', mayBeVersion: true };
  if (typeof code === 'string' && BROKEN[code] !== undefined) return { said: BROKEN[code], mayBeVersion: false };
  if (wasTaken) return { said: 'The connection to the broker broke.', mayBeVersion: false };
  return { said: 'The machine took the connection and does not speak MQTT there.', mayBeVersion: true };
}
