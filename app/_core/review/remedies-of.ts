import { alsoCalled } from '../faults/catalogue';
import type { Context } from './context';
import type { Subject } from './trial';

/**
 * Remedies that would answer a fault case: those of its failure mode, most direct first, then what else answers the modes
 * that it stands for.
 * @returns ids of `remedies.json`, each once
 */
export function remediesOf({ facility, system }: Pick<Context, 'facility' | 'system'>, subject: Subject): string[] {
  const { fault, thing } = subject;
  const others = alsoCalled(fault).filter((one) => one.things(facility, system).some(({ key }) => key === thing.key));
  return [...new Set([fault, ...others].flatMap(({ remedies }) => remedies))];
}
