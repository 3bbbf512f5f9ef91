import { ok, type Result, refused } from '../result';

/** How the payload of a topic is read. */
export const PAYLOADS = ['number', 'field', 'senml', 'sparkplug'] as const;
export type Payload = (typeof PAYLOADS)[number];

/** Levels that a template names, each once and as a whole level. */
const PLACES = ['system', 'sensor'] as const;
const NAMED = /^\{(system|sensor)\}$/;
/** Characters of a topic here; MQTT allows 65 535 bytes. */
const LONGEST = 200;

/** A topic of the kind that is subscribed to, ready to be held against one that came. */
export interface TopicTemplate {
  /** What the broker is asked for (MQTT 3.1.1 and 5, 4.7). */
  filter: string;
  /**
   * What the sensor is called that a topic is of: `system/sensor` where the template names them, else the topic itself.
   *
   * @returns   null for a topic that is none of these
   */
  nameOf: (topic: string) => string | null;
}

/**
 * Reads a topic filter, in which `{system}` and `{sensor}` may stand for a level each.
 *
 * @param written   such as `plant/{system}/{sensor}/value`, `plant/+/ph` or `plant/tank-1/ph`
 * @returns         what to subscribe to; or what is wrong, as a sentence's end (MQTT 5, 4.7.1)
 */
export function topicTemplate(written: string): Result<TopicTemplate, string> {
  const levels = written.split('/');
  const why = faultOf(written, levels);
  if (why !== null) return refused(why);
  const filter = levels.map((level) => (NAMED.test(level) ? '+' : level)).join('/');
  const at = Object.fromEntries(PLACES.map((place) => [place, levels.indexOf(`{${place}}`)] as const));
  const [system = -1, sensor = -1] = [at.system, at.sensor];
  const nameOf = (topic: string): string | null => {
    const said = topic.split('/');
    if (!matches(levels, said) || isReserved(topic, filter)) return null;
    return system < 0 ? topic : `${said[system] ?? ''}/${said[sensor] ?? ''}`;
  };
  return ok({ filter, nameOf });
}

function faultOf(written: string, levels: readonly string[]): string | null {
  if (written === '' || written.length > LONGEST) return `must have 1 to ${LONGEST} characters`;
  if (/[\p{Cc}\p{Cs}]/u.test(written)) return 'must be one line of text';
  if (levels.some((level, i) => level.includes('#') && (level !== '#' || i < levels.length - 1)))
    return 'may have # only as its last level, and alone in it';
  if (levels.some((level) => level.includes('+') && level !== '+')) return 'may have + only as a whole level';
  if (levels.some((level) => /[{}]/.test(level) && !NAMED.test(level)))
    return 'may have {system} and {sensor}, each as a whole level, and no other { or }';
  const counts = PLACES.map((place) => levels.filter((level) => level === `{${place}}`).length);
  if (counts.some((count) => count > 1)) return 'must not name {system} or {sensor} twice';
  return counts[0] === counts[1] ? null : 'must name {system} and {sensor}, or neither';
}

function matches(levels: readonly string[], said: readonly string[]): boolean {
  for (const [i, level] of levels.entries()) {
    if (level === '#') return true;
    // `a/#` is also of `a` itself, which the next level tells.
    if (i >= said.length) return false;
    if (level !== '+' && !NAMED.test(level) && level !== said[i]) return false;
    if (i === said.length - 1 && levels.length === i + 2 && levels[i + 1] === '#') return true;
  }
  return levels.length === said.length;
}

/** Topics of the broker itself are no match of a filter that begins with a wildcard (4.7.2). */
function isReserved(topic: string, filter: string): boolean {
  return topic.startsWith('$') && (filter.startsWith('+') || filter.startsWith('#'));
}
