import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { asks, exportsNotMade, hidesAction, pastTheGate } from './inspect/entries';
import { listFiles, ROOT, readText } from './inspect/files';
import { firstStatement, parse } from './inspect/source';

/** What is used past the gate, each with the reason. */
const PAST_THE_GATE: Record<string, string> = {
  'app/(house)/view/actions.ts visitOf': 'reads whether the request came by https, which a cookie has to know',
  'app/(house)/sign-out.ts visitOf': 'reads the origin of the request, which the gate does for what is open to all',
  'app/(house)/sign-out.ts signOut': 'ends the session of the browser that asks; there is nothing to be allowed',
  'app/api/auth/[...nextauth]/route.ts fromOutside': 'receives whom an issuer sends back; nobody is signed in yet',
  'app/api/readings/route.ts receiveReadings': 'takes readings from a device that shows its token; nobody is signed in',
  'app/push-worker.js/route.ts PUSH_WORKER': 'a script that shows calls, the same for everybody',
  'app/push-worker.js/route.ts WALK_WORKER': 'a script that keeps one page for rounds, the same for everybody',
  'app/api/health/route.ts reportHealth': 'says to anybody whether the parts of Holdfast are up, and nothing of a site',
};

/** Exports of an actions file or a handler that no maker of entries made, each with the reason. */
const NOT_MADE: Record<string, string> = {
  'app/(house)/sign-out.ts signOutAction': 'ends the session of the browser that asks, as above',
  'app/(house)/view/actions.ts chooseView': 'keeps units and light in the browser that asks; nothing is stored here',
  'app/api/auth/[...nextauth]/route.ts GET': 'receives whom an issuer sends back, as above',
  'app/api/health/route.ts GET': 'says whether Holdfast is up, as above',
  'app/push-worker.js/route.ts GET': 'a script that shows calls, the same for everybody',
  'app/api/readings/route.ts POST': 'takes readings from a device that shows its token, as above',
  'app/api/openapi.json/route.ts GET': 'what machines may ask and send, the same for everybody',
  'app/schema/facility.json/route.ts GET': 'the JSON Schema of the file format, the same for everybody',
};

/** Pages that ask nothing, each with the reason. */
const ASK_NOTHING: Record<string, string> = {
  'app/(house)/almanac/page.tsx': 'the list of tables, the same for everybody',
  'app/(house)/almanac/[table]/page.tsx': 'a table made of published laws, the same for everybody',
  'app/(house)/how/page.tsx': 'how a review is reckoned, the same for everybody',
  'app/(house)/import/page.tsx': 'an empty form; its actions are made by the gate',
  'app/(walk)/walk/page.tsx':
    'a page that is kept by browsers and the same for everybody; what it shows it asks for itself',
};

/** Everything of the app that is in no room: pages, handlers, actions and what they share. */
const routes = listFiles(['app'], /\.tsx?$/).filter((path) => !path.startsWith('app/_'));
const actions = routes.filter((path) => /^['"]use server['"]/.test(firstStatement(parse(path))));
const handlers = routes.filter((path) => path.endsWith('/route.ts'));

/** Whether a page, or a file beside it that it imports, asks through the gate. */
function asksSomewhere(path: string, seen = new Set<string>()): boolean {
  if (seen.has(path)) return false;
  seen.add(path);
  if (asks(parse(path))) return true;
  const beside = [...readText(path).matchAll(/from '(\.[^']+)'/g)].map(([, to]) => join(dirname(path), to ?? ''));
  const files = beside.flatMap((to) => [`${to}.ts`, `${to}.tsx`]).filter((file) => existsSync(join(ROOT, file)));
  return files.filter((file) => !actions.includes(file)).some((file) => asksSomewhere(file, seen));
}

describe('nobody comes in but through the gate', () => {
  test('what the server side can do is handed to the gate, and called past it only where the reason is written here', () => {
    expect(routes.length).toBeGreaterThan(20);
    const past = routes.flatMap((path) => pastTheGate(parse(path)).map(({ name }) => `${path} ${name}`));
    expect([...new Set(past)].sort()).toEqual(Object.keys(PAST_THE_GATE).sort());
  });

  test('every server action and every handler is made by the gate, or its reason is written here', () => {
    expect(actions.length).toBeGreaterThan(3);
    expect(handlers.length).toBeGreaterThan(2);
    const besides = ['dynamic', 'maxDuration'];
    const own = [...actions, ...handlers].flatMap((path) =>
      exportsNotMade(parse(path), handlers.includes(path) ? besides : []).map((name) => `${path} ${name}`),
    );
    expect(own.sort()).toEqual(Object.keys(NOT_MADE).sort());
  });

  test('no function within a file is an action that nobody lists', () => {
    const speaking = listFiles(['app'], /\.tsx?$/).filter((path) => readText(path).includes('use server'));
    expect(speaking.length).toBeGreaterThanOrEqual(actions.length);
    expect(speaking.filter((path) => hidesAction(parse(path)))).toEqual([]);
  });

  test('every page asks through the gate, or its reason is written here', () => {
    const pages = routes.filter((path) => path.endsWith('/page.tsx'));
    expect(pages.length).toBeGreaterThan(5);
    expect(pages.filter((path) => !asksSomewhere(path)).sort()).toEqual(Object.keys(ASK_NOTHING).sort());
  });

  test('what is open to somebody who is not signed in stands apart, where nothing else does', () => {
    const open = (path: string) => /\b(actOpenly|askOpenly)\b/.test(readText(path));
    expect(routes.filter((path) => open(path) && !path.startsWith('app/(open)/'))).toEqual([]);
    const closed = (path: string) => /#server\/gate\/(ask|handle)'|\bact\(/.test(readText(path));
    expect(routes.filter((path) => path.startsWith('app/(open)/') && closed(path))).toEqual([]);
  });
});

describe('the rule about entries', () => {
  const file = (...lines: string[]) =>
    parse(
      'page.ts',
      ["import { ask } from '#server/gate/ask';", "import { act } from '#server/gate/act';", ...lines].join('\n'),
    );
  const LIST = "import { list, listShape } from '#server/list';";
  const past = (...lines: string[]) => pastTheGate(file(...lines)).map(({ name }) => name);

  test('passes a use case that is handed to the gate, as it is or wrapped', () => {
    expect(past(LIST, 'const a = ask(listShape, list);')).toEqual([]);
    expect(past(LIST, 'const a = ask(listShape, (who, input) => list(who, input));')).toEqual([]);
    expect(past("import type { list } from '#server/list';", 'const a: typeof list = 1;')).toEqual([]);
    expect(past("import { refusalWords } from '#server/gate/refusal-words';", 'refusalWords(1);')).toEqual([]);
    expect(past(LIST, 'page.list(); const b = { list: 1 };', 'ask(listShape, list);')).toEqual([]);
  });

  test('sees one that is called, kept, passed on, renamed, or brought in by another way', () => {
    expect(past(LIST, 'await list(who, {});')).toEqual(['list']);
    expect(past(LIST, 'const kept = list;')).toEqual(['list']);
    expect(past(LIST, 'const both = { list };')).toEqual(['list']);
    expect(past(LIST, 'other(list);')).toEqual(['list']);
    expect(past("import { list as ask } from '#server/list';", 'ask(1);')).toContain('ask');
    expect(past("import * as all from '#server/list';", 'all.list(1);')).toEqual(['all']);
    expect(past("import { LOCAL_PERSON } from '#server/gate/who';", 'f(LOCAL_PERSON);')).toEqual(['LOCAL_PERSON']);
    expect(past("const { list } = await import('#server/list');").length).toBe(1);
    expect(past("export { list } from '#server/list';").length).toBe(1);
  });

  test('sees an export that the gate did not make', () => {
    const own = (...lines: string[]) => exportsNotMade(file(...lines), ['dynamic']);
    expect(
      own('export const go = act(a, b);', "export const dynamic = 'force-dynamic';", 'export type A = 1;'),
    ).toEqual([]);
    expect(own('const go = act(a, b);', 'export async function start() { return go(null); }')).toEqual([]);
    expect(own('export async function start() { return go(null); }')).toEqual(['start']);
    expect(own('export const start = async () => 1;')).toEqual(['start']);
    expect(own('export const runtime = 1;')).toEqual(['runtime']);
    expect(own('export default act(a, b);').length).toBe(1);
    expect(own('const go = 1;', 'export { go };')).toEqual(['export { go };']);
  });

  test('sees an action within a file, and whether a file asks', () => {
    expect(hidesAction(file("const go = async () => { 'use server'; return 1; };"))).toBe(true);
    expect(hidesAction(file("const go = async () => { return 'use server'; };"))).toBe(false);
    expect(asks(file('const a = ask(s, c);'))).toBe(true);
    expect(asks(file('const a = other(s, c);'))).toBe(false);
  });
});
