import { RULES } from '#core/review/rules/catalogue';
import { type Change, example } from '#core/review/rules/example/example';
import type { Breach, RuleContext } from '#core/review/rules/rule';

/** What one rule finds in a context. */
export function findsIn(id: string, context: RuleContext): Breach[] {
  const rule = RULES.find((one) => one.id === id);
  if (!rule) throw new Error(`No rule ${id}`);
  return rule.check(context);
}

/** What one rule finds in the example once these changes are made to it. */
export function finds(id: string, ...changes: Change[]): Breach[] {
  return findsIn(id, example(...changes));
}

/** Names of what it finds fault with. */
export function causes(id: string, ...changes: Change[]): string[] {
  return finds(id, ...changes).map(({ cause }) => cause);
}

/** One figure of a breach, as it is shown. */
export function shown(breach: Breach | undefined, name: string): string | undefined {
  return breach?.figures.find((figure) => figure.name === name)?.value;
}
