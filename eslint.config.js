import js from '@eslint/js';
import ts from 'typescript-eslint';

// Imports go one way: core ← functions ← sheet ← pane ← hosts. A room may import from those to its left only.
const rooms = ['core', 'functions', 'sheet', 'pane'];
const hosts = ['excel', 'workbench', 'cli', 'samples'];
const forbidden = { core: ['functions', 'sheet', 'pane', ...hosts], functions: ['sheet', 'pane', ...hosts], sheet: ['pane', ...hosts], pane: hosts };
for (const host of hosts) forbidden[host] = hosts.filter((other) => other !== host && !(host === 'samples' && other === 'cli'));

const oneWay = [...rooms, ...hosts].map((room) => ({
  files: [`src/${room}/**/*.ts`],
  rules: {
    'no-restricted-imports': ['error', {
      patterns: [
        { regex: `^(\\.\\./)+(${forbidden[room].join('|')})(/|$)`, message: `src/${room} may not import from there: core ← functions ← sheet ← pane ← hosts` },
        ...(room === 'core' || room === 'functions' ? [{ regex: '^node:', message: 'the engineering is pure: no files, no processes' }] : []),
      ],
    }],
  },
}));

export default ts.config(
  { ignores: ['dist/**', 'build/**', 'node_modules/**', 'coverage/**'] },
  js.configs.recommended,
  ...ts.configs.recommended,
  {
    rules: {
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      '@typescript-eslint/no-explicit-any': 'error',
      'no-restricted-globals': 'off',
      eqeqeq: ['error', 'always', { null: 'ignore' }],
    },
  },
  { files: ['scripts/**/*.mjs', 'bin/**/*.mjs', '*.js', 'tests/**/*.mjs'], languageOptions: { globals: { process: 'readonly', console: 'readonly', URL: 'readonly', setTimeout: 'readonly', clearTimeout: 'readonly', Buffer: 'readonly', fetch: 'readonly', performance: 'readonly' } } },
  ...oneWay,
);
