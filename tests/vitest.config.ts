import { defineConfig } from 'vitest/config';

// `server-only` throws outside the web server; tests and commands are servers too, so it becomes an empty module here.
export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  resolve: { alias: { 'server-only': new URL('./_support/empty.ts', import.meta.url).pathname } },
  test: { include: ['tests/**/*.test.ts'], testTimeout: 60_000, hookTimeout: 120_000 },
});
