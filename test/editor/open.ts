// `npm run editor`: the samples in a real editor in your browser, with the packaged extension in it, until Ctrl+C.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pageAddress } from './browser.ts';
import { install, reasonToSkip } from './install.ts';
import { packaged } from './packaged.ts';
import { startEditor } from './serve.ts';

const folder = resolve(process.argv[2] ?? join(import.meta.dirname, '..', '..', 'samples'));

const skip = reasonToSkip();
if (skip === undefined) await open();
else process.stdout.write(`not opened: ${skip}\nIn an editor of your own: code --install-extension ${packaged()}\n`);

async function open(): Promise<void> {
  const installation = install();
  const vsix = packaged();
  const home = mkdtempSync(join(tmpdir(), 'tidemark-editor-'));
  process.once('SIGINT', () => process.exit(0));
  const editor = await startEditor(installation, home, vsix);
  process.once('exit', () => {
    editor.stop();
    rmSync(home, { recursive: true, force: true, maxRetries: 5 });
  });
  process.stdout.write(`${folder} is open at\n\n  ${pageAddress(editor, folder, [])}\n\nCtrl+C ends it.\n`);
}
