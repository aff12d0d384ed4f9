// Who may import whom. tests/rooms proves that each rule is reported when it is broken.

/** In this order: a room imports only from rooms to its left. `cli` stands apart, see below. */
const rooms = 'water gas diver dive insight pilot bench lesson stage panels store app'.split(' ');
/** These know no screen and no clock; the bench alone among them knows an engine. */
const pure = rooms.slice(0, rooms.indexOf('stage')).filter((room) => room !== 'bench');

/** One package, or any of a scope, wherever it is installed. */
const packages = (...names) => `(^|node_modules/)(${names.join('|')})(/|$)`;
const places = (...names) => `^(${names.join('|')})/`;
const src = (...names) => names.map((name) => `src/${name}`);

/** Only these places may import the packages. */
const only = (name, allowed, ...names) => ({
  name,
  severity: 'error',
  from: { pathNot: [places(...allowed), '^node_modules/', packages(...names)] },
  to: { path: packages(...names) },
});

const oneWay = rooms.slice(0, -1).map((room, at) => ({
  name: `${room}-imports-only-earlier-rooms`,
  severity: 'error',
  from: { path: `^src/${room}/` },
  to: { path: `^src/(${rooms.slice(at + 1).join('|')}|cli)/` },
}));

module.exports = {
  forbidden: [
    ...oneWay,
    {
      name: 'app-imports-no-cli',
      severity: 'error',
      from: { path: '^src/app/' },
      to: { path: '^src/cli/' },
    },
    {
      name: 'cli-has-no-screen',
      severity: 'error',
      from: { path: '^src/cli/' },
      to: { path: '^src/(stage|panels|store|app)/' },
    },
    {
      name: 'rooms-meet-at-the-door',
      comment:
        'Another room is imported through its index.ts, file.ts where it reads files that people write, or lesson/bench.ts, which carries the engine.',
      severity: 'error',
      from: { path: '^src/([^/]+)/' },
      to: { path: '^src/[^/]+/', pathNot: ['^src/$1/', '^src/[^/]+/(index|file)\\.ts$', '^src/lesson/bench\\.ts$'] },
    },
    {
      name: 'no-circles',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    only('only-bench-imports-matter', ['src/bench', 'tests/bench', 'tools'], 'matter-js', '@types/matter-js'),
    only('only-stage-imports-pixi', ['src/stage', 'tests/stage'], 'pixi\\.js', '@pixi/[^/]+'),
    only(
      'only-panels-and-app-import-lit',
      [...src('panels', 'app'), 'tests/panels', 'tests/app'],
      ...['lit', 'lit-html', 'lit-element', '@lit/[^/]+'],
    ),
    only('only-panels-import-uplot', ['src/panels', 'tests/panels'], 'uplot'),
    only('only-cli-imports-png', ['src/cli', 'tests/cli', 'tests/browser'], 'fast-png'),
    only('only-store-imports-idb', ['src/store', 'tests/store'], 'idb'),
    only(
      'only-file-readers-import-yaml',
      [...src('diver', 'lesson', 'cli', 'app'), 'tests', 'tools', 'vite[.]config[.]ts'],
      'yaml',
    ),
    {
      name: 'app-loads-yaml-on-demand',
      comment: 'A person opens a file: only then is the parser fetched.',
      severity: 'error',
      from: { path: '^src/app/' },
      to: { path: packages('yaml'), dynamic: false },
    },
    {
      name: 'pure-rooms-stand-alone',
      comment: 'They compute; the only packages they know read and check files.',
      severity: 'error',
      from: { path: `^src/(${pure.join('|')})/` },
      to: {
        dependencyTypes: ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'npm-no-pkg', 'npm-unknown', 'core'],
        pathNot: packages('valibot', 'yaml', 'fflate'),
      },
    },
    {
      name: 'only-cli-knows-node',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/cli/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'product-knows-no-tests-or-tools',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^(tests|tools)/' },
    },
    {
      name: 'product-ships-what-it-imports',
      comment: 'A package the product imports is a dependency, not a development one.',
      severity: 'error',
      from: { path: '^src/' },
      to: { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'], pathNot: 'node_modules/@types/' },
    },
    {
      name: 'imports-resolve',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    // Imports of types count too: who knows a room's records knows the room.
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'browser', 'default', 'types'],
      extensions: ['.ts', '.mjs', '.js', '.json', '.d.ts'],
    },
  },
};
