/** The commands of the house, as `npm test` runs them; the planted breaches are shown to these and to no others. */
export const COMMANDS = {
  biome: ['biome', 'ci', '--config-path=.config', '.'],
  eslint: ['eslint', '-c', '.config/eslint.config.mjs', 'app', 'tests', 'e2e', 'seed'],
  cruiser: ['depcruise', '--config', '.config/dependency-cruiser.cjs', 'app', 'seed', 'tests', 'e2e'],
  knip: ['knip', '--config', '.config/knip.json'],
  coreTypes: ['tsc', '--noEmit', '-p', 'app/_core/tsconfig.json'],
} as const;
