// @ts-check
// Node 20 does not hand its reader of TypeScript on to a thread: it is set up anew here, before the thread's own file.
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { workerData } from 'node:worker_threads';
import { register as readRequired } from 'tsx/cjs/api';
import { register as readImported } from 'tsx/esm/api';

readRequired();
readImported();
await import(pathToFileURL(resolve(String(workerData))).href);
