// @ts-check
// The oldest Node that the pinned packages run on.
const OLDEST = { major: 20, minor: 19 };

/**
 * @param {string} version for instance `20.20.2`
 * @returns {string | undefined} why Holdfast cannot run on it, or nothing when it can
 */
export function nodeRefusal(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  const isEnough = major > OLDEST.major || (major === OLDEST.major && minor >= OLDEST.minor);
  if (isEnough) return undefined;
  return `Holdfast needs Node ${OLDEST.major}.${OLDEST.minor} or newer, and this is Node ${version}.`;
}
