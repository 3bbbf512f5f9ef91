// @ts-check
// Loaded into the web and worker processes before anything else. When the supervisor is gone, killed without a chance to
// stop them, they end too: otherwise they would keep the port, and run beside those of the next start.

/** s a process may take to end of its own accord once its supervisor is gone. */
const PATIENCE_S = 5;

// It may be gone already, before this very line.
if (!process.connected) process.exit(1);
process.on('disconnect', () => {
  setTimeout(() => process.exit(1), PATIENCE_S * 1000).unref();
  process.kill(process.pid, 'SIGTERM');
});
// The channel alone keeps no process alive.
process.channel?.unref();
