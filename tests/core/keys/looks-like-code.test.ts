import { expect, test } from 'vitest';
import { looksLikeCode } from '#core/keys/looks-like-code';

test.each([
  '4711',
  'gate 47 11',
  'door: 4-7-1-1',
  'alarm 004711',
  'PIN 12',
  'keypad, code 3x',
  'Combination 9/3',
  'shed 2.0.2.6',
])('"%s" would open something, and is refused', (text) => expect(looksLikeCode(text)).toBe(true));

// The names of keys, invented.
test.each([
  'Pump room',
  'K12',
  'key 3 of 5',
  'Back gate, brass',
  'Cabinet 2, upper shelf',
  'in the tin at the gate',
  'code lock of the shed',
])('"%s" names a key or a place, and is taken', (text) => expect(looksLikeCode(text)).toBe(false));
