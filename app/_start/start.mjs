// @ts-check
// `npm start`: from a fresh clone to a running Holdfast. This file and what it imports before the packages are installed
// use nothing but Node's own modules.
import { nodeRefusal } from './node-version.mjs';

const refusal = nodeRefusal(process.versions.node);
if (refusal) {
  console.error(refusal);
  process.exit(1);
}
// Loaded only now: older versions of Node would stumble over the syntax before they could say why.
const { main } = await import('./main.mjs');
await main(process.argv.slice(2), process.env);
