// Bundles the program into one file that runs with nothing but Node: packages/cli/dist/loomproof.cjs, or into
// a new folder that is given as the only argument, so that a test run does not replace what another one starts.
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { phoneScript } from './phone-script.mjs';

const path = (relative) => fileURLToPath(new URL(`../${relative}`, import.meta.url));
const ownFolder = path('packages/cli/dist');
const [folder = ownFolder] = process.argv.slice(2);
const outfile = join(folder, 'loomproof.cjs');

// The finished program carries the script of its pages as text, and needs no bundler. It is packed, since the text of a
// program is read to its end whenever it starts.
const phoneScriptAsText = {
  name: 'phone-script',
  setup: ({ onLoad }) =>
    onLoad({ filter: /sheets[/\\]phone-script\.ts$/ }, () => ({
      contents: `export const phoneScript = async () => {
        const { gunzipSync } = await import('node:zlib');
        return gunzipSync(Buffer.from(${JSON.stringify(gzipSync(phoneScript(), { level: 9 }).toString('base64'))}, 'base64')).toString();
      };`,
    })),
};

// The same code of the YAML reader as ES modules: of these only what is used is bundled, and none asks the environment
// for each token whether it is to be logged.
const modulesOfYaml = {
  name: 'modules-of-yaml',
  setup: ({ onResolve }) =>
    onResolve({ filter: /^yaml$/ }, ({ resolveDir }) => {
      const entry = createRequire(join(resolveDir, 'x')).resolve('yaml');
      return { path: join(dirname(entry), '../browser/index.js'), sideEffects: false };
    }),
};

// The reader of the command line loads what starts other programs, and with it all of the network, for commands that are
// programs of their own; there are none here.
const childProcessWhenUsed = {
  name: 'child-process-when-used',
  setup: ({ onResolve, onLoad }) => {
    onResolve({ filter: /^node:child_process$/ }, ({ namespace }) =>
      namespace === 'when-used' ? { external: true } : { path: 'child_process', namespace: 'when-used' },
    );
    onLoad({ filter: /./, namespace: 'when-used' }, () => ({
      contents: "exports.spawn = (...of) => require('node:child_process').spawn(...of);",
    }));
  },
};

// Only what this script made itself is ever removed.
if (folder === ownFolder) rmSync(folder, { recursive: true, force: true });
const { metafile, outputFiles } = await build({
  absWorkingDir: path(''),
  entryPoints: ['packages/cli/src/main.ts'],
  outfile,
  bundle: true,
  write: false,
  platform: 'node',
  // What loads a CommonJS file is in Node from its start; what loads ES modules is not.
  format: 'cjs',
  target: 'node20.19',
  // What is loaded later is loaded like the rest: the text of the program has no loader of modules of its own.
  supported: { 'dynamic-import': false },
  // A small kit is judged in the time in which this file is read, so all that is not needed for it counts.
  // Names stay, so that a stack can be read in a report.
  minifyWhitespace: true,
  minifySyntax: true,
  metafile: true,
  plugins: [phoneScriptAsText, modulesOfYaml, childProcessWhenUsed],
  // Licence comments of the bundled packages stay in the file, ahead of their code.
  legalComments: 'external',
  logLevel: 'warning',
});
mkdirSync(folder, { recursive: true });
const [program, legal] = ['.cjs', '.LEGAL.txt'].map(
  (end) => outputFiles.find((file) => file.path.endsWith(end))?.text ?? '',
);
writeFileSync(outfile, programFile(inAscii(program), legal));
chmodSync(outfile, 0o755);
// The packed program carries its own licence and those of the packages bundled into it; dist is the only folder
// that is packed.
copyFileSync(path('LICENSE'), join(folder, 'LICENSE'));
writeFileSync(join(folder, 'THIRD-PARTY-LICENSES.txt'), licencesOf(Object.keys(metafile.inputs)));
process.stdout.write(`${relative(path(''), outfile)} ${Math.round(statSync(outfile).size / 1024)} KiB\n`);

/**
 * The program with what V8 makes of it once it has proved the shipped kits, since a small kit is proved in less time than V8
 * takes to read the program. Both stand in comments, which are passed over, and are taken out of the file by itself.
 * Another version of Node, or one with other flags, finds that what V8 made is not its own, and reads the text.
 */
function programFile(code, legal) {
  const text = `(function (exports, require, module, __filename) {${code.trimEnd()}\n})`;
  // A comment ends with the first of these.
  if (text.includes('*~/')) throw new Error('the program holds what stands for the end of a comment');
  const file = join(folder, 'code-cache');
  const made = spawnSync(process.execPath, [path('scripts/code-cache.mjs'), file, ...shippedKits()], {
    input: text,
    encoding: 'utf8',
  });
  if (made.status !== 0) throw new Error(`the program cannot judge the shipped kits: ${made.stderr}`);
  const cache = readFileSync(file).toString('base64');
  rmSync(file);
  return [
    '#!/usr/bin/env node',
    legal.trimEnd(),
    "'use strict';",
    "const [, text, cache] = require('node:fs').readFileSync(__filename, 'latin1').split('\\n/*\\n');",
    "const program = new (require('node:vm').Script)(text.slice(0, -3).replaceAll('*~/', '*/'), {",
    '  filename: __filename,',
    "  cachedData: Buffer.from(cache.slice(0, -3), 'base64'),",
    '});',
    'program.runInThisContext()(exports, require, module, __filename);',
    '/*',
    text.replaceAll('*/', '*~/'),
    '*/',
    '/*',
    cache,
    '*/',
  ].join('\n');
}

/** Regular expressions and tagged templates keep characters of their own, and with one of them V8 keeps all in two bytes each. */
function inAscii(code) {
  return code.replace(/[^\0-\x7f]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

function shippedKits() {
  return readdirSync(path('fixtures'))
    .map((name) => path(`fixtures/${name}/kit.yaml`))
    .filter((file) => existsSync(file));
}

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
