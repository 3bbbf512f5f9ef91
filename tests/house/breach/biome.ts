import { z } from 'zod';
import { COMMANDS } from './commands';
import type { Report } from './report';
import { readJson, run } from './run';

const Output = z.object({
  summary: z.object({ changed: z.number(), unchanged: z.number() }),
  diagnostics: z.array(
    z.object({ severity: z.string(), category: z.string(), location: z.object({ path: z.string() }) }),
  ),
});

/** Format and general lint, with the command of the house. A complaint about a plug-in of our own reads `plugin`. */
export async function biome(top: string): Promise<Report> {
  const { exitCode, out, err } = await run(COMMANDS.biome, top, ['--reporter=json', '--max-diagnostics=none']);
  const { summary, diagnostics } = Output.parse(readJson('biome', out, err));
  return {
    exitCode,
    filesRead: summary.changed + summary.unchanged,
    complaints: diagnostics
      .filter((entry) => entry.severity === 'error')
      .map((entry) => ({ file: entry.location.path, rule: entry.category })),
    text: JSON.stringify(diagnostics, null, 1),
  };
}
