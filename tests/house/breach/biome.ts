import { z } from 'zod';
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
  const args = ['ci', '--config-path=.config', '--reporter=json', '--max-diagnostics=none', '.'];
  const { exitCode, out, err } = await run('biome', args, top);
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
