// Bundles the script of a work instruction: the page of a phone with the engine in it, as one text.
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';

/** The script as text. Nothing in it can end the script element that it stands in. */
export function phoneScript() {
  const { outputFiles } = buildSync({
    absWorkingDir: fileURLToPath(new URL('../', import.meta.url)),
    entryPoints: ['packages/sheets/browser/phone.ts'],
    bundle: true,
    minify: true,
    write: false,
    platform: 'browser',
    format: 'iife',
    target: 'es2022',
    charset: 'ascii',
    logLevel: 'warning',
    legalComments: 'none',
  });
  const text = outputFiles[0].text;
  if (/<\/script|<!--/i.test(text)) throw new Error('the script of the page could end its own element');
  return text;
}
