import { z } from 'zod';
import type { Report } from './report';
import { readJson, run } from './run';

const Output = z.object({
  modules: z.array(
    z.object({
      source: z.string(),
      dependencies: z.array(z.object({ resolved: z.string(), dependencyTypes: z.array(z.string()) })),
    }),
  ),
  summary: z.object({
    totalCruised: z.number(),
    violations: z.array(z.object({ from: z.string(), rule: z.object({ name: z.string() }) })),
  }),
});

/** Who imports whom, as dependency-cruiser sees it. */
export type Graph = z.infer<typeof Output>['modules'];

/** The direction of imports, with the command of the house. */
export async function cruiser(top: string): Promise<Report & { graph: Graph }> {
  const args = ['--config', '.config/dependency-cruiser.cjs', 'app', 'seed', 'tests', 'e2e'];
  // Asked for JSON it exits with 0 whatever it found, so the code comes from a run as the house runs it.
  const [plain, { out, err }] = await Promise.all([
    run('depcruise', args, top),
    run('depcruise', ['-T', 'json', ...args], top),
  ]);
  const { modules, summary } = Output.parse(readJson('depcruise', out, err));
  return {
    exitCode: plain.exitCode,
    filesRead: modules.filter(({ source }) => /^(app|seed|tests|e2e)\//.test(source)).length,
    complaints: summary.violations.map(({ from, rule }) => ({ file: from, rule: rule.name })),
    text: JSON.stringify(summary.violations),
    graph: modules,
  };
}
