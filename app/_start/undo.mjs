// @ts-check
// What has to be undone when Holdfast ends, last thing first, however far the start had come.

/** @type {(() => Promise<void> | void)[]} */
const steps = [];

let ending = /** @type {Promise<void> | undefined} */ (undefined);

/**
 * @param {() => Promise<void> | void} step how to undo what was just done
 * @returns {() => void} forgets the step, for when it is no longer needed
 */
export function onEnd(step) {
  steps.push(step);
  return () => {
    const place = steps.indexOf(step);
    if (place >= 0) steps.splice(place, 1);
  };
}

/** @returns {Promise<void>} settled once everything is undone; asking twice waits for the same */
export function undoAll() {
  ending ??= (async () => {
    for (let step = steps.pop(); step; step = steps.pop()) {
      await Promise.resolve(step()).catch((error) => console.error(error));
    }
  })();
  return ending;
}

/** @returns {boolean} whether Holdfast is on its way out */
export function isEnding() {
  return ending !== undefined;
}
