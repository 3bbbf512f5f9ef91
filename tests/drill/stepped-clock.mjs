// @ts-check
// Loaded before a process of a drill (`NODE_OPTIONS=--import …`): its clock is that of the machine and as many ms ahead as the
// file at HOLDFAST_DRILL_CLOCK says, which it looks at all the time. The drill sets the clock so, and no other.
import { readFileSync } from 'node:fs';

/** ms between two looks. */
const GLANCE_MS = 50;
const file = process.env.HOLDFAST_DRILL_CLOCK;
const Real = Date;
let aheadMs = 0;

function look() {
  try {
    aheadMs = Number(readFileSync(String(file), 'utf8')) || 0;
  } catch {
    // Not written yet: the clock is right.
    aheadMs = 0;
  }
}

const now = () => Real.now() + aheadMs;

if (file !== undefined) {
  look();
  setInterval(look, GLANCE_MS).unref();
  globalThis.Date = new Proxy(Real, {
    construct: (target, given) => Reflect.construct(target, given.length === 0 ? [now()] : given),
    apply: () => new Real(now()).toString(),
    get: (target, name) => (name === 'now' ? now : Reflect.get(target, name)),
  });
}
