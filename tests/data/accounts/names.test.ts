import { accountNames } from '#data/accounts/names';
import { expect, test } from 'vitest';
import { freshDatabase } from '../../_support/database';

const { query } = freshDatabase();
const id = (last: number) => `019a0000-0000-7000-8000-00000000000${last}`;

test('everybody the record speaks of has something to be called, erased or not', async () => {
  await query(`INSERT INTO account (id, email, name, created_at) VALUES
    ('${id(1)}', 'ines@aquarium.example', 'Ines', now()), ('${id(2)}', 'jo@aquarium.example', NULL, now()),
    ('${id(3)}', NULL, NULL, now())`);
  const names = await accountNames([id(1), id(2), id(3), id(4), 'local', 'whatever']);
  expect(Object.fromEntries(names)).toEqual({
    [id(1)]: 'Ines',
    [id(2)]: 'jo@aquarium.example',
    [id(3)]: 'name erased',
    [id(4)]: 'name erased',
    local: 'the machine itself',
    whatever: 'name erased',
  });
});
