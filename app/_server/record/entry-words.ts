import 'server-only';
import { ALARM_LIFE_WORDS } from './alarm-life-words';
import { ALARM_WORDS } from './alarm-words';
import { CALL_OUT_WORDS } from './call-out-words';
import { CALL_WORDS } from './call-words';
import { HANDOVER_WORDS } from './handover-words';
import { INCIDENT_WORDS } from './incident-words';
import { ROTA_WORDS } from './rota-words';
import { ROUND_WORDS } from './round-words';
import { SOURCE_WORDS } from './source-words';
import { STATE_WORDS } from './state-words';

/** What an entry of the record holds, to be put into words. Fields that an older entry lacks are told as a dash. */
export interface Said {
  /** A plain value as text. */
  text: (field: string) => string;
  /** What a thing or a person is called, by the id in the field. */
  name: (field: string) => string;
  has: (field: string) => boolean;
}

/** How the entries of one kind are told. */
export interface Words {
  /** The kind, as it stands in a list. */
  title: string;
  /** The entry as a sentence without a subject: who did it stands beside it. */
  tell: (said: Said) => string;
}

/** What was done to a description. */
const ACTS: Readonly<Record<string, string>> = {
  change: 'Changed the description',
  add: 'Added',
  replace: 'Replaced',
  move: 'Moved',
  retire: 'Retired',
};

/** What a calendar reads. */
const FEED_SCOPES: Readonly<Record<string, string>> = {
  mine: 'their own shifts',
  everybody: 'the whole rota',
  rounds: 'when rounds are due',
};

/** A role as people call it. */
function roleSaid(role: string): string {
  return role === 'admin' ? 'administrator' : role;
}

/** Every kind of entry that has words of its own. */
const WORDS: Readonly<Record<string, Words>> = {
  ...ALARM_WORDS,
  ...ALARM_LIFE_WORDS,
  ...CALL_OUT_WORDS,
  ...CALL_WORDS,
  ...HANDOVER_WORDS,
  ...INCIDENT_WORDS,
  ...ROTA_WORDS,
  ...ROUND_WORDS,
  ...SOURCE_WORDS,
  ...STATE_WORDS,
  'file-taken-in': {
    title: 'logger file taken in',
    tell: ({ text }) =>
      `Took in the file ${text('file')}: ${counted(text('stored'), 'reading')} stored, ${text('repeats')} there already, ${text('conflicts')} in conflict, ${text('refused')} refused`,
  },
  'facility-imported': {
    title: 'facility begun or imported',
    tell: ({ text }) =>
      text('revision') === '1'
        ? 'Began the description of the site'
        : `Imported a facility file: ${counted(text('changes'), 'difference')}, revision ${text('revision')} of the site`,
  },
  'demonstration-loaded': {
    title: 'demonstration loaded',
    tell: () =>
      'Loaded the demonstration. All before this is invented; from here on its gateways repeat what they told on a day before',
  },
  'description-changed': {
    title: 'description changed',
    tell: ({ text, name, has }) =>
      `${ACTS[text('act')] ?? 'Changed'} (${text('noun')}): ${text('changes') || (has('thing') ? name('thing') : '–')}${has('why') ? `. Why: ${text('why')}` : ''}${has('on') ? ` (${text('on')})` : ''}`,
  },
  'plan-in-force': {
    title: 'plan put in force',
    tell: ({ text, name }) => `Put version ${text('version')} of the plan of ${name('equipment')} in force`,
  },
  'plan-drafted': {
    title: 'plan drafted',
    tell: ({ text, name }) => `Wrote version ${text('version')} of the plan of ${name('equipment')}: ${text('reason')}`,
  },
  'plan-submitted': {
    title: 'plan submitted',
    tell: ({ text, name }) => `Submitted version ${text('version')} of the plan of ${name('equipment')}`,
  },
  'plan-sent-back': {
    title: 'plan sent back',
    tell: ({ text, name }) =>
      `Sent version ${text('version')} of the plan of ${name('equipment')} back: ${text('reason')}`,
  },
  'plan-withdrawn': {
    title: 'plan withdrawn',
    tell: ({ text, name, has }) =>
      `Withdrew version ${text('version')} of the plan of ${name('equipment')}${has('for') ? ` for version ${text('for')}` : `: ${text('reason')}`}`,
  },
  'system-described': {
    title: 'system begun',
    tell: ({ text, name }) =>
      `Described ${name('system')} by its first answers, revision ${text('revision')} of the site`,
  },
  'safeguard-tested': {
    title: 'safeguard tested',
    tell: ({ text, name }) => `Tested ${name('safeguard')} on ${text('on')}: it ${text('result')}`,
  },
  'test-withdrawn': {
    title: 'test of a safeguard withdrawn',
    tell: ({ text, name, has }) =>
      `Withdrew the test of ${name('safeguard')} of ${text('on')}${has('reason') ? `: ${text('reason')}` : ''}`,
  },
  'safeguard-off': {
    title: 'safeguard taken out of service',
    tell: ({ text, name }) =>
      `Took ${name('safeguard')} out of service from ${text('since')} to ${text('until')}, for ${name('owner')} to put back: ${text('why')}`,
  },
  'safeguard-back': {
    title: 'safeguard put back',
    tell: ({ text, name }) => `Put ${name('safeguard')} back, which was to be out of service until ${text('until')}`,
  },
  'member-let-in': {
    title: 'somebody let in',
    tell: ({ text, name }) => `Let ${name('account')} in as ${roleSaid(text('role'))}`,
  },
  'link-made': {
    title: 'link made for somebody',
    tell: ({ text, name }) =>
      text('link') === 'mail'
        ? `Had a link mailed to ${name('account')}, by which they choose how they sign in`
        : `Made a link by which ${name('account')} chooses how they sign in, and was shown it`,
  },
  'role-changed': {
    title: 'role changed',
    tell: ({ text, name }) =>
      `Changed the role of ${name('account')} from ${roleSaid(text('was'))} to ${roleSaid(text('role'))}`,
  },
  'member-linked': {
    title: 'account linked to the rota',
    tell: ({ name, has }) =>
      has('person')
        ? `Said that ${name('account')} is ${name('person')} of the rota`
        : `Said that ${name('account')} is nobody of the rota`,
  },
  'member-left': {
    title: 'access ended',
    tell: ({ text, name }) => `Ended the access of ${name('account')}, who was ${roleSaid(text('role'))}`,
  },
  'calendar-made': {
    title: 'calendar address made',
    tell: ({ text }) => `Made an address at which a calendar reads ${FEED_SCOPES[text('scope')] ?? text('scope')}`,
  },
  'calendar-ended': {
    title: 'calendar address ended',
    tell: ({ name }) => `Ended the calendar address of ${name('account')}`,
  },
  'person-erased': {
    title: 'person erased',
    tell: () => 'Erased the name and the address of somebody who had left',
  },
};

/** A kind of entry as it stands in a list; one without words of its own by its name. */
export function kindTitle(kind: string): string {
  return wordsFor(kind)?.title ?? kind.replaceAll('-', ' ');
}

/**
 * An entry in plain words. One of a kind without words of its own is told by its kind and all that stands in it.
 *
 * @param kind    of the entry
 * @param body    what it holds
 * @param names   what the ids in it stand for
 */
export function entryWords(kind: string, body: Record<string, unknown>, names: ReadonlyMap<string, string>): string {
  const text = (field: string): string => plain(body[field], names);
  const said = { text, name: text, has: (field: string) => body[field] !== undefined && body[field] !== null };
  const words = wordsFor(kind);
  if (words) return words.tell(said);
  const title = kindTitle(kind);
  const facts = Object.keys(body).filter((field) => field !== 'by');
  const told = facts.map((field) => `${field} ${text(field)}`).join(', ');
  return `${title.charAt(0).toUpperCase()}${title.slice(1)}${told && ': '}${told}`;
}

/** Every id that stands in the body of an entry, at any depth. */
export function idsIn(value: unknown): string[] {
  if (typeof value === 'string') return UUID.test(value) ? [value] : [];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(idsIn) : [];
}

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

function wordsFor(kind: string): Words | undefined {
  return Object.hasOwn(WORDS, kind) ? WORDS[kind] : undefined;
}

function plain(value: unknown, names: ReadonlyMap<string, string>): string {
  if (value === undefined || value === null) return '–';
  if (typeof value === 'string') return names.get(value) ?? value;
  if (Array.isArray(value) && value.every((one) => typeof one === 'string')) return value.join('; ');
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}

function counted(count: string, one: string): string {
  return `${count} ${one}${count === '1' ? '' : 's'}`;
}
