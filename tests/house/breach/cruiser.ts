import { z } from 'zod';
import { COMMANDS } from './commands';
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
    violations: z.array(z.object({ from: z.string(), rule: z.object({ name: z.string() }) })),
  }),
});

/** Who imports whom, as dependency-cruiser sees it. */
export type Graph = z.infer<typeof Output>['modules'];

/** The direction of imports, with the command of the house. */
export async function cruiser(top: string): Promise<Report> {
  // Asked for JSON it exits with 0 whatever it found, so the code comes from a run as the house runs it.
  const [plain, { modules, summary }] = await Promise.all([run(COMMANDS.cruiser, top), cruise(top)]);
  return {
    exitCode: plain.exitCode,
    filesRead: modules.filter(({ source }) => /^(app|seed|tests|e2e)\//.test(source)).length,
    complaints: summary.violations.map(({ from, rule }) => ({ file: from, rule: rule.name })),
    text: JSON.stringify(summary.violations),
  };
}

/** Who imports whom in a tree, whether that is allowed or not. */
export const readGraph = async (top: string): Promise<Graph> => (await cruise(top)).modules;

async function cruise(top: string): Promise<z.infer<typeof Output>> {
  const { out, err } = await run(COMMANDS.cruiser, top, ['-T', 'json']);
  return Output.parse(readJson('depcruise', out, err));
}
