import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import { expect, test } from 'vitest';
import { yamlModules } from '../../tools/yaml-modules.ts';
import { moduleOfYaml } from '../../tools/yaml-source.mjs';
import { withTree } from '../rooms/fixture.ts';

const setup = 'format: 1\nname: plain\n';
const parsed = { format: 1, name: 'plain' };

test('moduleOfYaml() names file and line of every problem', () => {
  expect(() => moduleOfYaml('a: 1\na: 2\nb: [1\n', 'kit.yaml')).toThrow(
    /kit\.yaml: .*unique.*line 2(.|\n)*kit\.yaml: /,
  );
});

test('moduleOfYaml() keeps text that looks like script a text', async () => {
  const source = moduleOfYaml('a: "`${1}`;\\u2028</script>"', 'kit.yaml');
  const built: unknown = await import(/* @vite-ignore */ `data:text/javascript,${encodeURIComponent(source)}`);
  expect(built).toMatchObject({ default: { a: '`${1}`;\u2028</script>' } });
});

test('yamlModules() stops the build at a setup that its reader refuses', async () => {
  const files = {
    'src/diver/setups/broken.yaml': 'format: 1\ndiver:\n  massKg: -4\n',
    'main.ts': "import broken from './src/diver/setups/broken.yaml';\nexport default broken;\n",
  };
  await withTree(files, async (root) => {
    const plugins = [yamlModules()];
    const lib = { entry: 'main.ts', formats: ['es' as const], fileName: () => 'out.mjs' };
    const building = build({ root, configFile: false, logLevel: 'silent', plugins, build: { lib } });
    await expect(building).rejects.toThrow(/broken\.yaml.*massKg/s);
  });
});

test('yamlModules() ships data and no parser', async () => {
  const files = {
    'src/diver/setups/plain.yaml': setup,
    'main.ts': "import plain from './src/diver/setups/plain.yaml';\nexport default plain;\n",
  };
  await withTree(files, async (root) => {
    await build({
      root,
      configFile: false,
      logLevel: 'silent',
      plugins: [yamlModules()],
      build: { lib: { entry: 'main.ts', formats: ['es'], fileName: () => 'out.mjs' }, minify: false },
    });
    const built: unknown = await import(/* @vite-ignore */ pathToFileURL(join(root, 'dist/out.mjs')).href);
    expect(built).toMatchObject({ default: parsed });
  });
});

test('yaml-register.mjs lets a command import the same file', async () => {
  const text = "import plain from './plain.yaml';\nconst said: string = JSON.stringify(plain);\nconsole.log(said);\n";
  await withTree({ 'package.json': '{"type":"module"}', 'plain.yaml': setup, 'main.ts': text }, async (root) => {
    const register = new URL('../../tools/yaml-register.mjs', import.meta.url).href;
    const tsx = import.meta.resolve('tsx');
    const said = execFileSync(process.execPath, ['--import', tsx, '--import', register, join(root, 'main.ts')]);
    expect(JSON.parse(said.toString())).toEqual(parsed);
  });
});
