import 'server-only';

/** Two years. */
const HSTS_S = 63_072_000;

/** The page by which rounds are walked: the only one that asks for a camera, and runs what reads a label in its picture. */
export const WALK_PAGE = '/walk';

/** What a page of Holdfast never asks of a device. */
const NEVER_ASKED = ['accelerometer', 'geolocation', 'gyroscope', 'magnetometer', 'microphone', 'payment', 'usb'];

/**
 * What a browser may load and run for a page, as the header says it. A script runs only when it bears the word of this one
 * answer, or was loaded by one that does.
 *
 * @param nonce      the word, drawn for this answer alone
 * @param isSecure   whether people reach Holdfast by https
 * @param sendTo     origins besides our own that a form may lead to: whoever else signs people in
 * @param wasm       whether WebAssembly of ours may run
 */
export function contentPolicy(
  nonce: string,
  isSecure: boolean,
  sendTo: readonly string[] = [],
  wasm: boolean = false,
): string {
  const lines = [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${wasm ? " 'wasm-unsafe-eval'" : ''}`,
    "style-src 'self'",
    "img-src 'self' data:",
    "font-src 'self'",
    "connect-src 'self'",
    // The one script that shows calls while no page is open.
    "worker-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
    ["form-action 'self'", ...sendTo].join(' '),
  ];
  return [...lines, ...(isSecure ? ['upgrade-insecure-requests'] : [])].join('; ');
}

/**
 * The headers that keep every answer to itself, beside the content policy.
 *
 * @param isSecure     whether people reach Holdfast by https
 * @param isPromised   whether browsers are told to come by https alone from here on: who ceased to trust this machine's own
 *   authority could then not get in at all
 * @param camera       whether the page may ask for a camera
 * @returns            by name
 */
export function safeHeaders(isSecure: boolean, { isPromised = isSecure, camera = false } = {}): Record<string, string> {
  return {
    'x-content-type-options': 'nosniff',
    // Addresses hold keys of sites and words that work once: no other site is told them. Our own are, or a form of ours
    // would come without its origin.
    'referrer-policy': 'same-origin',
    'permissions-policy': [`camera=(${camera ? 'self' : ''})`, ...NEVER_ASKED.map((what) => `${what}=()`)].join(', '),
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    ...(isSecure && isPromised ? { 'strict-transport-security': `max-age=${HSTS_S}; includeSubDomains` } : {}),
  };
}

/** Paths whose answers are the same for everybody, and may be kept: what the build made, and the published schema. */
const PUBLIC = /^\/(_next\/static\/|schema\/|icon\.svg$)/;

/** Whether an answer is for the person who asked and nobody else, so that no cache may keep it. @param path of the address */
export function isPrivate(path: string): boolean {
  return !PUBLIC.test(path);
}
