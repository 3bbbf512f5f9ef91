// @ts-check
// A thread that answers one call after another by the `answer` of the file it was started for, which draws and computes and
// knows neither threads nor the server.
import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parentPort, workerData } from 'node:worker_threads';
import { register as readRequired } from 'tsx/cjs/api';
import { register as readImported } from 'tsx/esm/api';

readRequired();
readImported();
const { answer } = await import(pathToFileURL(resolve(String(workerData))).href);

parentPort?.on('message', (job) => {
  void answerTo(job);
});

/** @param {unknown} job   as it was sent */
async function answerTo(job) {
  try {
    parentPort?.postMessage({ answer: await answer(job) });
  } catch (error) {
    parentPort?.postMessage({ broke: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
}
