import { join } from 'node:path';
import { z } from 'zod';
import { ROOT } from '../inspect/files';
import { COMMANDS } from './commands';
import type { Report } from './report';
import { readJson, run } from './run';

const Output = z.object({
  filesRead: z.number(),
  complaints: z.array(z.object({ rule: z.string(), file: z.string(), symbol: z.string() })),
});

/** Files, exports and packages that nobody uses, with the command of the house. */
export async function knip(top: string): Promise<Report> {
  const reporter = join(ROOT, 'tests/house/breach/knip-reporter.mjs');
  const { exitCode, out, err } = await run(COMMANDS.knip, top, ['--reporter', reporter]);
  const { filesRead, complaints } = Output.parse(readJson('knip', out, err));
  return { exitCode, filesRead, complaints, text: JSON.stringify(complaints) };
}
