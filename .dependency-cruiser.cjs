/** Imports go one way: web → shop, records, views; shop → records, calc; all → shared. See DEVELOPERS.md, "Rooms". */
module.exports = {
  forbidden: [
    {
      name: 'no-circle',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'shared-imports-nothing-of-ours',
      severity: 'error',
      from: { path: '^shared/' },
      to: { path: '^(src|views|data|tests)/' },
    },
    {
      // Pictures and passwords bring machine code: it comes with the first of them, so that the program starts sooner.
      name: 'machine-code-comes-with-first-use',
      severity: 'error',
      from: { path: '^src/' },
      to: {
        path: '^(node_modules/)?(sharp|@node-rs/argon2)(/|$)',
        dynamic: false,
        dependencyTypesNot: ['type-import'],
      },
    },
    {
      name: 'words-have-no-dependencies',
      severity: 'error',
      from: { path: '^shared/words/' },
      to: { pathNot: '^shared/words/' },
    },
    {
      name: 'calc-imports-only-words',
      severity: 'error',
      from: { path: '^src/calc/' },
      to: {
        pathNot:
          '^(src/calc/|shared/words/|node_modules/(@stdlib|javascript-lp-solver|yalps|ml-matrix|heap)/)',
      },
    },
    {
      name: 'calc-never-reaches-text-or-schemas',
      severity: 'error',
      from: { path: '^src/calc/' },
      to: {
        path: '^(node_modules/(mathjs|zod|express|kysely|better-sqlite3)/|src/(records|web)/|views/)',
        reachable: true,
      },
    },
    {
      name: 'views-see-no-database',
      severity: 'error',
      from: { path: '^views/' },
      to: { path: '^(src/(records|web)/|node_modules/(kysely|better-sqlite3|express)/)' },
    },
    {
      name: 'the-browser-imports-only-what-it-is-sent',
      severity: 'error',
      from: { path: '^(views/browser|shared/(measuring|quantity|words))/' },
      to: {
        pathNot: '^(views/browser|shared/(measuring|quantity|words))/',
        dependencyTypesNot: ['type-only'],
      },
    },
    {
      name: 'shop-sees-no-request-no-view-no-sql',
      severity: 'error',
      from: { path: '^src/shop/' },
      to: {
        pathNot: '^(src/(shop|records|calc)/|src/root[.]ts$|shared/|node_modules/mathjs/)',
        dependencyTypesNot: ['core'],
      },
    },
    {
      // The formula pages explain the calculations, and these calls of the JSON interface are one calculation each.
      name: 'web-asks-the-shop',
      severity: 'error',
      from: { path: '^src/web/', pathNot: '^src/web/(how/|api/calls[.]ts$)' },
      to: { path: '^src/calc/' },
    },
    {
      name: 'shop-never-reaches-pages',
      severity: 'error',
      from: { path: '^src/shop/' },
      to: { path: '^(src/web/|views/|node_modules/(express|preact)/)', reachable: true },
    },
    {
      name: 'records-know-no-pages',
      severity: 'error',
      from: { path: '^src/records/' },
      to: { path: '^(src/(web|shop)/|views/)' },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      extensions: ['.ts', '.tsx', '.js'],
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default'],
    },
  },
};
