// Bundles the program into one file that runs with nothing but Node: packages/cli/dist/loomproof.mjs, or into
// a new folder that is given as the only argument, so that a test run does not replace what another one starts.
import { chmodSync, copyFileSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { phoneScript } from './phone-script.mjs';

const path = (relative) => fileURLToPath(new URL(`../${relative}`, import.meta.url));
const ownFolder = path('packages/cli/dist');
const [folder = ownFolder] = process.argv.slice(2);
const outfile = join(folder, 'loomproof.mjs');

// Only what this script made itself is ever removed.
if (folder === ownFolder) rmSync(folder, { recursive: true, force: true });
const { metafile } = await build({
  absWorkingDir: path(''),
  entryPoints: ['packages/cli/src/main.ts'],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20.19',
  minify: false,
  metafile: true,
  // The finished program carries the script of its pages as text, and needs no bundler.
  plugins: [
    {
      name: 'phone-script',
      setup: ({ onLoad }) =>
        onLoad({ filter: /sheets[/\\]phone-script\.ts$/ }, () => ({
          contents: `export const phoneScript = async () => ${JSON.stringify(phoneScript())};`,
        })),
    },
  ],
  // Licence comments of the bundled packages stay beside their code.
  legalComments: 'inline',
  logLevel: 'warning',
  // Packages in the CommonJS form call require, which an ES module does not have of itself.
  banner: {
    js: [
      '#!/usr/bin/env node',
      "import { createRequire as createRequireOfBundle } from 'node:module';",
      'const require = createRequireOfBundle(import.meta.url);',
    ].join('\n'),
  },
});
chmodSync(outfile, 0o755);
// The packed program carries its own licence and those of the packages bundled into it; dist is the only folder
// that is packed.
copyFileSync(path('LICENSE'), join(folder, 'LICENSE'));
writeFileSync(join(folder, 'THIRD-PARTY-LICENSES.txt'), licencesOf(Object.keys(metafile.inputs)));
process.stdout.write(`${relative(path(''), outfile)} ${Math.round(statSync(outfile).size / 1024)} KiB\n`);

/** The licence text of each installed package that one of the bundled files lies in; throws where one has none. */
function licencesOf(inputs) {
  const folders = new Set();
  for (const input of inputs) {
    const folder = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0];
    if (folder !== undefined) folders.add(folder);
  }
  const texts = [...folders].map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(path(`${folder}/package.json`), 'utf8'));
    const file = readdirSync(path(folder)).find((entry) => /^licen[cs]e(\.(md|txt))?$/i.test(entry));
    if (file === undefined) throw new Error(`no licence text in the bundled package ${name} ${version}`);
    return `${name} ${version} (${license})\n\n${readFileSync(path(`${folder}/${file}`), 'utf8').trim()}\n`;
  });
  return texts.sort().join(`\n${'-'.repeat(80)}\n\n`);
}
