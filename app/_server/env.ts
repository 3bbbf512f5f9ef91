import 'server-only';
import { z } from 'zod';

/** What Holdfast reads from its environment. An empty text means that nothing was said. */
const Environment = z.object({
  /** Address of the database; `npm start` sets it for the processes it starts. */
  DATABASE_URL: z.url({ protocol: /^postgres(ql)?$/ }),
});

type Environment = z.infer<typeof Environment>;

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
