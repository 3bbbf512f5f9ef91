import 'server-only';
import { z } from 'zod';

/** What Holdfast reads from its environment. An empty text means that nothing was said. */
const Environment = z.object({
  DATABASE_URL: z.url({ protocol: /^postgres(ql)?$/ }).optional(),
  HOLDFAST_DATA: z.string().optional(),
});

export type Environment = z.infer<typeof Environment>;

let parsed: Environment | undefined;

/**
 * The environment, parsed once.
 *
 * @returns   what was said in it
 * @throws    when something in it has no meaning
 */
export function env(): Environment {
  const said = Object.entries(process.env).filter(([, value]) => value !== '');
  parsed ??= Environment.parse(Object.fromEntries(said));
  return parsed;
}
