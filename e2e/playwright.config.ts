import { defineConfig, devices } from '@playwright/test';
import { CHROMIUM_FLAGS, chromiumPath } from './_support/chromium';
import { freePort } from './_support/port';

const port = freePort();
const address = `http://127.0.0.1:${port}`;

// A real browser against the built product, started the way a person starts it.
export default defineConfig({
  testDir: '.',
  outputDir: '../test-results',
  reporter: [['list']],
  forbidOnly: true,
  // One server and one database for all: the stories must not tread on each other.
  workers: 1,
  timeout: 60_000,
  use: {
    ...devices['Desktop Chrome'],
    baseURL: address,
    launchOptions: { executablePath: chromiumPath(), args: CHROMIUM_FLAGS },
    screenshot: 'only-on-failure',
    trace: 'retain-on-failure',
  },
  webServer: {
    command: `node e2e/_support/serve.mjs --port ${port}`,
    cwd: '..',
    url: `${address}/api/health`,
    timeout: 240_000,
    gracefulShutdown: { signal: 'SIGTERM', timeout: 30_000 },
    reuseExistingServer: false,
    stdout: 'pipe',
    stderr: 'pipe',
  },
});
