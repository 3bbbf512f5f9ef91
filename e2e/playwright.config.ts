import { defineConfig, devices } from '@playwright/test';
import { CHROMIUM_FLAGS, chromiumPath } from './_support/chromium';
import { freePort, mailPort } from './_support/port';
import { runFolder, signedInFile } from './_support/run-folder';

const port = freePort();
const address = `http://localhost:${port}`;

// A real browser against the built product, started the way a person starts it.
export default defineConfig({
  testDir: '.',
  outputDir: '../test-results',
  reporter: [['list']],
  forbidOnly: true,
  // One server and one database for all: the stories must not tread on each other.
  workers: 1,
  timeout: 60_000,
  // A page may take its time on a machine that computes reviews beside it.
  expect: { timeout: 20_000 },
  use: {
    ...devices['Desktop Chrome'],
    baseURL: address,
    launchOptions: { executablePath: chromiumPath(), args: CHROMIUM_FLAGS },
    screenshot: 'only-on-failure',
    trace: 'retain-on-failure',
  },
  // Somebody sets Holdfast up by the link that was printed; everything after is done in their browser.
  projects: [
    { name: 'set-up', testMatch: 'set-up.spec.ts' },
    {
      name: 'stories',
      testIgnore: 'set-up.spec.ts',
      dependencies: ['set-up'],
      use: { storageState: signedInFile() },
    },
  ],
  webServer: {
    command: `node e2e/_support/serve.mjs --port ${port}`,
    cwd: '..',
    env: { HOLDFAST_E2E_FOLDER: runFolder(), HOLDFAST_MAIL_URL: `smtp://127.0.0.1:${mailPort()}` },
    url: `${address}/api/health`,
    timeout: 240_000,
    gracefulShutdown: { signal: 'SIGTERM', timeout: 30_000 },
    reuseExistingServer: false,
    stdout: 'pipe',
    stderr: 'pipe',
  },
});
