// The licences of the packages inside the bundles, which ask that their notices go with every copy. It stands apart from
// the build because what may be shipped is a question of its own.
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';

/** The text of dist/third-party.txt for the files that went into the bundles, named from `root`. */
export async function thirdParty(root: string, inputs: readonly string[]): Promise<string> {
  const folders = new Set(inputs.flatMap(input => packageFolder(input) ?? []));
  const notices = await Promise.all([...folders].sort().map(folder => notice(join(root, folder))));
  return `The programs in this folder contain these packages:\n\n${[...new Set(notices)].join('\n\n')}`;
}

/** `node_modules/a/lib/b.js` -> `node_modules/a`; nothing for files of our own. */
function packageFolder(input: string): string | undefined {
  return /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(input)?.[0];
}

async function notice(folder: string): Promise<string> {
  const { name, version, license } = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8'));
  const file = (await readdir(folder)).find(entry => /^licen[cs]e(\.|$)/i.test(entry));
  if (file === undefined) throw new Error(`${name} brings no licence text`);
  const text = (await readFile(join(folder, file), 'utf8')).trim();
  return `${'-'.repeat(72)}\n${name} ${version} (${license})\n\n${text}\n`;
}
