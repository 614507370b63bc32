/**
 * The script of a work instruction. Run from its sources the program bundles it when it is first asked for; in the built
 * program this whole module is replaced by the finished text, see `scripts/build.mjs`.
 */
export async function phoneScript(): Promise<string> {
  const bundler = await import('../../../../scripts/phone-script.mjs');
  return bundler.phoneScript();
}
