import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { MESSAGE_TYPES } from '#core/alarms/message-types';
import { expect, test } from 'vitest';

const SERVER = join(import.meta.dirname, '../../../app/_server');

/** Types of messages that the code sends: wherever a message is made, its type stands as a word. */
function sent(): string[] {
  const files = readdirSync(SERVER, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.ts'));
  const texts = files
    .map((file) => readFileSync(join(SERVER, file), 'utf8'))
    .filter((text) => text.includes("/message'"));
  const found = texts.flatMap((text) =>
    [...text.matchAll(/\btype: '([a-z-]+\.[a-z-]+)'/g)].map(([, type]) => type ?? ''),
  );
  return [...new Set(found)].sort();
}

test('The recipe for telephones names every type of message that is really sent, and no other', () => {
  expect(sent()).toEqual(Object.keys(MESSAGE_TYPES).sort());
});
