import { fileURLToPath } from 'node:url';
import tseslint from 'typescript-eslint';

// Biome does format and general lint. These three rules need the types of packages, which Biome does not follow far
// enough (it missed floating promises of `pg` and `node:fs/promises`), so they alone are asked here.
export default tseslint.config(
  { ignores: ['**/node_modules/**', '.next/**', '.data/**', 'prisma/generated/**', 'next-env.d.ts'] },
  {
    files: ['{app,tests,e2e,seed}/**/*.{ts,tsx,mjs}'],
    languageOptions: {
      parser: tseslint.parser,
      parserOptions: { projectService: true, tsconfigRootDir: fileURLToPath(new URL('..', import.meta.url)) },
    },
    linterOptions: { noInlineConfig: true },
    plugins: { '@typescript-eslint': tseslint.plugin },
    rules: {
      '@typescript-eslint/no-floating-promises': ['error', { checkThenables: true }],
      '@typescript-eslint/no-misused-promises': 'error',
      // A default branch hides the member somebody adds next year, so every member is named all the same.
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        {
          allowDefaultCaseForExhaustiveSwitch: true,
          considerDefaultExhaustiveForUnions: false,
          requireDefaultForNonUnion: true,
        },
      ],
    },
  },
);
