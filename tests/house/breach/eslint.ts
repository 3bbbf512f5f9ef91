import { relative } from 'node:path';
import { z } from 'zod';
import { COMMANDS } from './commands';
import type { Report } from './report';
import { run } from './run';

const Output = z.array(
  z.object({
    filePath: z.string(),
    messages: z.array(z.object({ ruleId: z.string().nullable(), message: z.string() })),
  }),
);

/** The three questions that need types, with the command of the house. A file that does not parse reads `parse`. */
export async function eslint(top: string): Promise<Report> {
  const { exitCode, out, err } = await run(COMMANDS.eslint, top, ['--format', 'json']);
  if (!out.startsWith('[')) throw new Error(`eslint printed no JSON: ${out}${err}`);
  const files = Output.parse(JSON.parse(out));
  return {
    exitCode,
    filesRead: files.length,
    complaints: files.flatMap(({ filePath, messages }) =>
      messages.map(({ ruleId }) => ({ file: relative(top, filePath), rule: ruleId ?? 'parse' })),
    ),
    text: JSON.stringify(files.filter((file) => file.messages.length > 0)),
  };
}
