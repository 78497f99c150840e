import js from '@eslint/js';
import tseslint from 'typescript-eslint';
import * as lit from 'eslint-plugin-lit';
import * as wc from 'eslint-plugin-wc';

/**
 * Imports run one way (DEVELOPERS.md, "The house"): a folder may import those before it in this list, never those after.
 * dependency-cruiser holds the same rule for circles.
 */
const CORE_ORDER = ['length', 'reckoning', 'clock', 'wood', 'tenon', 'piece', 'joint', 'faces', 'layout', 'stock', 'glue', 'edge', 'true', 'work', 'journal', 'bench', 'talk', 'respond'];

const coreLayers = CORE_ORDER.map((folder, index) => ({
  files: [`core/${folder}/**/*.ts`],
  rules: {
    'no-restricted-imports': ['error', {
      patterns: [
        { group: CORE_ORDER.slice(index + 1).map((later) => `**/${later}/**`).concat('**/kiosk/**', '**/deploy/**', '**/sounds/**', 'node:*', 'lit', 'idb'),
          message: `core/${folder} is ground for the folders after it (${CORE_ORDER.join(' < ')}) and must not lean on them.` },
      ],
    }],
  },
}));

export default tseslint.config(
  { ignores: ['node_modules', 'dist', '.cache', 'coverage'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  js.configs.recommended,
  {
    files: ['**/*.ts'],
    extends: [...tseslint.configs.strictTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': ['error', { considerDefaultExhaustiveForUnions: true }],
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      'no-console': 'error',
      eqeqeq: 'error',
    },
  },
  {
    files: ['core/**/*.ts'],
    rules: {
      'no-restricted-globals': ['error',
        ...['Date', 'setTimeout', 'setInterval', 'performance', 'indexedDB', 'localStorage', 'fetch', 'window', 'document', 'crypto'].map(
          (name) => ({ name, message: 'core is pure: it is given the time and the facts, and never asks for them.' }))],
      'no-restricted-properties': ['error', { object: 'Math', property: 'random', message: 'core has no randomness.' }],
    },
  },
  ...coreLayers,
  {
    files: ['kiosk/**/*.ts'],
    plugins: { lit, wc },
    rules: {
      ...lit.configs['flat/recommended'].rules,
      ...wc.configs['flat/recommended'].rules,
      'no-restricted-imports': ['error', { patterns: [{ group: ['**/deploy/**', 'node:*'], message: 'the kiosk runs in the browser and knows the server only by its addresses.' }] }],
      'no-restricted-syntax': ['error',
        { selector: "CallExpression[callee.property.name=/^(put|add|delete|clear)$/][callee.object.name=/^(db|database|opened)$/]", message: 'This would commit with relaxed durability, which a power cut undoes: use strictly() of kiosk/store/database.ts.' },
        { selector: "CallExpression[callee.property.name='transaction']:has(Literal[value='readwrite']):not(:has(Property[key.name='durability']))", message: 'A writing transaction must ask for durability: strict.' },
        { selector: "TaggedTemplateExpression[tag.name='html'] TemplateElement[value.raw=/\\sstyle=/]", message: 'The page policy blocks style attributes silently: use a class, or el.style.setProperty in updated().' }],
    },
  },
  { files: ['deploy/**/*.{ts,mjs}', 'test/**/*.ts', 'sounds/**/*.ts'], rules: { 'no-console': 'off' } },
  {
    // The assertion plugins' types call every assertion a promise, which none of those used is.
    files: ['test/kiosk/**/*.ts'],
    rules: { '@typescript-eslint/no-floating-promises': 'off' },
  },
  { files: ['**/*.mjs', '**/*.js'], languageOptions: { globals: { process: 'readonly', console: 'readonly', URL: 'readonly', setTimeout: 'readonly' } } },
);
