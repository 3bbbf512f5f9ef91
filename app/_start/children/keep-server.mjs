// @ts-check
// Watches the embedded server, which may be a child of a former start and so is watched by its process number.

const GLANCE_MS = 1000;

/**
 * @param {import('../postgres/server.mjs').Server} server to watch
 * @param {(line: string) => void} tell prints what happened
 * @returns {() => Promise<void>} ends the watch, once no restart is under way
 */
export function keepServer(server, tell) {
  let restart = /** @type {Promise<void> | undefined} */ (undefined);
  const glance = setInterval(() => {
    if (restart || server.isAlive()) return;
    tell('database: PostgreSQL ended; starting it again');
    restart = server
      .startAgain()
      .then(() => tell('database: PostgreSQL is back'))
      .catch((error) => tell(`database: ${error.message}`))
      .finally(() => {
        restart = undefined;
      });
  }, GLANCE_MS);
  return async () => {
    clearInterval(glance);
    await restart;
  };
}
