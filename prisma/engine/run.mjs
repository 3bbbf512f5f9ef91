// @ts-check
// Runs Prisma's command line with our own schema engine: `node prisma/engine/run.mjs migrate deploy`.
import { spawn } from 'node:child_process';
import { prismaCommand } from './command.mjs';

const { file, args, env } = prismaCommand(process.argv.slice(2));
const child = spawn(file, args, { env, stdio: 'inherit' });
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM'])) process.on(signal, () => child.kill(signal));
child.on('exit', (code) => {
  process.exitCode = code ?? 1;
});
