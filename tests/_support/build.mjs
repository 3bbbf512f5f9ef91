// @ts-check
// The build as `npm start` makes it, so that the end-to-end tests find it ready.
import { buildPages } from '../../app/_start/build.mjs';
import { Failure } from '../../app/_start/failure.mjs';
import { ROOT } from '../../app/_start/places.mjs';

try {
  await buildPages(ROOT, process.env);
  console.log('the build is made from the present sources');
} catch (error) {
  if (!(error instanceof Failure)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}
