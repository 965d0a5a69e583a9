// Lint rules. The engine has two of its own: no clock and no randomness of its own, they are handed in.
import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['dist/**', 'node_modules/**', 'config/eslint.config.js'] },
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: { parserOptions: { project: './tsconfig.json', tsconfigRootDir: new URL('..', import.meta.url).pathname } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      'no-restricted-exports': ['error', { restrictDefaultExports: { direct: true } }],
      eqeqeq: 'error',
      'prefer-const': 'error',
    },
  },
  {
    files: ['engine/**/*.ts'],
    rules: {
      'no-restricted-globals': ['error', { name: 'Date', message: 'The engine knows no clock: take epoch seconds as an argument.' }, { name: 'performance', message: 'The engine knows no clock.' }],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: 'The engine draws no random numbers of its own: take a generator as an argument.' }],
      'max-params': ['error', 5],
      'no-console': 'error',
    },
  },
  { files: ['config/vitest*.config.ts', '**/*.d.ts'], rules: { 'no-restricted-exports': 'off' } },
);
