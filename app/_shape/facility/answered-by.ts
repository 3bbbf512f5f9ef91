import { z } from 'zod';
import { keyText } from './words';

/** Who answers: the rota, nobody, or named people. @param about what they answer */
export function answeredBy(about: string) {
  const people = z.array(keyText('Key of a person.')).min(1);
  return z
    .union([z.enum(['rota', 'nobody']), people], { error: 'must be rota, nobody, or a list of keys of people' })
    .describe(`${about} rota, nobody, or a list of keys of people.`);
}
