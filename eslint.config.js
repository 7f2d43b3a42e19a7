import js from '@eslint/js';
import tseslint from 'typescript-eslint';

/** Functions whose last bit is the engine's choice; `src/portable` has ones that are the same everywhere. */
const engineDependent = [
  'sin',
  'cos',
  'tan',
  'asin',
  'acos',
  'atan',
  'atan2',
  'exp',
  'expm1',
  'log',
  'log1p',
  'log2',
  'log10',
  'pow',
  'sinh',
  'cosh',
  'tanh',
  'cbrt',
  'hypot',
];

export default tseslint.config(
  { ignores: ['**/dist/**', '**/out/**', '**/node_modules/**', 'packages/notebooks/pages/**'] },
  js.configs.recommended,
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: {
      parserOptions: {
        projectService: { allowDefaultProject: ['*.js'] },
        tsconfigRootDir: import.meta.dirname,
      },
    },
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      'max-lines': ['error', { max: 400, skipComments: true, skipBlankLines: true }],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'chance comes in as a named stream' },
      ],
      eqeqeq: 'error',
    },
  },
  {
    files: ['packages/sim/src/**/*.ts'],
    ignores: ['packages/sim/src/portable/**'],
    rules: {
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'chance comes in as a named stream' },
        ...engineDependent.map((property) => ({
          object: 'Math',
          property,
          message: 'use src/portable: same bits in every engine',
        })),
      ],
      'no-restricted-syntax': [
        'error',
        { selector: "BinaryExpression[operator='**']", message: 'use src/portable or multiply' },
      ],
    },
  },
  {
    files: ['packages/sim/src/**/*.ts'],
    ignores: ['packages/sim/src/cli/**', 'packages/sim/src/node/**', 'packages/sim/src/node.ts'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          patterns: [
            {
              group: ['node:*'],
              message: 'the library runs in a browser; Node belongs to cli, node and the node entry',
            },
          ],
        },
      ],
    },
  },
  { files: ['*.js'], ...tseslint.configs.disableTypeChecked },
);
