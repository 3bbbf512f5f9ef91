import { z } from 'zod';
import { hinted } from '../form/hints';
import { keyOf } from './words';

/** Who answers: the rota, nobody, or named people. @param about what they answer */
export function answeredBy(about: string) {
  const people = z.array(keyOf('person', 'Key of a person.')).min(1);
  const shape = z
    .union([z.enum(['rota', 'nobody']), people], { error: 'must be rota, nobody, or a list of keys of people' })
    .describe(`${about} rota, nobody, or a list of keys of people.`);
  return hinted(shape, { as: 'answered-by' });
}
