import { expect, test } from 'vitest';
import { connectionSettings } from '#data/connection';

test('the session zone is added to what the address already asks of the session', () => {
  const plain = connectionSettings('postgresql://a:b@host:5432/db');
  expect(new URL(plain.connectionString ?? '').searchParams.get('options')).toBe('-c timezone=UTC');
  const asked = connectionSettings('postgresql://a:b@host:5432/db?options=-c%20statement_timeout%3D5s');
  expect(new URL(asked.connectionString ?? '').searchParams.get('options')).toBe(
    '-c statement_timeout=5s -c timezone=UTC',
  );
});

test('without an address the message says how Holdfast is started', () => {
  expect(() => connectionSettings(undefined)).toThrow('npm start');
});
