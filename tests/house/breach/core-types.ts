import { COMMANDS } from './commands';
import type { Report } from './report';
import { run } from './run';

/** The core under its own library list, which holds the language and neither Node nor a browser. */
export async function coreTypes(top: string): Promise<Report> {
  const { exitCode, out } = await run(COMMANDS.coreTypes, top, ['--listFiles', '--pretty', 'false']);
  const complaints = [...out.matchAll(/^(app\/_core\/[^(]+)\(\d+,\d+\): error (TS\d+)/gm)].map(([, file, rule]) => ({
    file: file ?? '',
    rule: rule ?? '',
  }));
  const filesRead = [...out.matchAll(/^\S*\/app\/_core\/\S+$/gm)].length;
  return { exitCode, filesRead, complaints, text: out };
}
