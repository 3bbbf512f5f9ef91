// @ts-check
// `npm run faults -- [N]`: N rounds of what `tests/server/alarms/faults.test.ts` does to two workers once: killed, cut off from
// the database, cut off from the mail server. Ends with 0 when no alarm was missed or doubled and everybody was told.
import { spawn } from 'node:child_process';

const rounds = process.argv[2] ?? '10';
const args = ['vitest', 'run', '--config', 'tests/vitest.config.ts', 'tests/server/alarms/faults.test.ts'];
const env = { ...process.env, HOLDFAST_FAULT_ROUNDS: rounds };
spawn('npx', args, { env, stdio: 'inherit' }).on('exit', (code) => {
  process.exitCode = code ?? 1;
});
