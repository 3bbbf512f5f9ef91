import 'server-only';

/**
 * What an alarm watches, in a definition as it was kept.
 *
 * @param definition   as it was kept
 * @param noun         `sensor`, `equipment` or `gateway`
 * @returns            its key; undefined when it watches nothing of this kind
 */
export function thingIn(definition: unknown, noun: string): string | undefined {
  const on = fieldOf(definition, 'on');
  const key = fieldOf(on, noun);
  return typeof key === 'string' ? key : undefined;
}

function fieldOf(value: unknown, field: string): unknown {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[field] : undefined;
}
