// Takes a picture of a recipe in the editor, for looking at and for the README:
//   npx tsx test/editor/shot.ts FILE [--at LINE:COLUMN] [--show hover|suggest|problems] [--run COMMAND] [--dark] [--size 1000x620] [--out FILE.png]
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { openBrowser, type Page, pageAddress } from './browser.ts';
import { install } from './install.ts';
import { packaged } from './packaged.ts';
import { startEditor } from './serve.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    at: { type: 'string' },
    show: { type: 'string' },
    // The title of a command; the first of what it offers is taken.
    run: { type: 'string' },
    dark: { type: 'boolean', default: false },
    size: { type: 'string', default: '1000x620' },
    out: { type: 'string', default: join(import.meta.dirname, 'shots', 'shot.png') },
  },
});
const file = resolve(positionals[0] ?? join(import.meta.dirname, 'recipes', 'stairwell.grow.yaml'));

const keysFor: Readonly<Record<string, readonly string[]>> = {
  hover: ['Control+k', 'Control+i'],
  suggest: ['Control+Space'],
  problems: ['Control+Shift+m'],
};

const installation = install();
const vsix = packaged();
const home = mkdtempSync(join(tmpdir(), 'tidemark-editor-'));
const editor = await startEditor(installation, home, vsix);
editor.settings({
  'workbench.colorTheme': values.dark ? 'Default Dark Modern' : 'Default Light Modern',
  'workbench.activityBar.location': 'hidden',
  'workbench.layoutControl.enabled': false,
  'workbench.statusBar.visible': false,
  'window.commandCenter': false,
  'breadcrumbs.enabled': false,
  'editor.fontSize': 15,
  // The hover under its line leaves the lines above it to be seen.
  'editor.hover.above': false,
  'editor.stickyScroll.enabled': false,
  'editor.scrollbar.vertical': 'hidden',
  'editor.scrollbar.horizontal': 'hidden',
});
const browser = await openBrowser(installation);
const [width = 1000, height = 620] = values.size.split('x').map(Number);
const page = await browser.newPage({ viewport: { width, height }, deviceScaleFactor: 1.25 });
await page.goto(pageAddress(editor, dirname(file), [['openFile', `${editor.remote}${file}`]]));
await page.waitForSelector('.monaco-editor .view-line', { timeout: 60_000 });
await page.keyboard.press('Control+b');
await page.mouse.move(width / 2, height - 10);
// The server starts with the first recipe; its first findings and hints are what settles last.
await page.waitForTimeout(5000);
if (values.at) await goTo(page, values.at);
for (const key of keysFor[values.show ?? ''] ?? []) await page.keyboard.press(key);
if (values.run) await run(page, values.run);
await page.waitForTimeout(2000);
mkdirSync(dirname(values.out), { recursive: true });
await page.screenshot({ path: values.out });
await browser.close();
editor.stop();
rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
process.stdout.write(`${values.out}\n`);

async function goTo(where: Page, place: string): Promise<void> {
  await where.keyboard.press('Control+g');
  await where.waitForSelector('.quick-input-widget input');
  await where.keyboard.type(place);
  await where.keyboard.press('Enter');
  await where.waitForTimeout(300);
}

async function run(where: Page, command: string): Promise<void> {
  await where.keyboard.press('F1');
  await where.waitForSelector('.quick-input-widget input');
  await where.keyboard.type(command);
  await where.waitForTimeout(500);
  await where.keyboard.press('Enter');
  await where.waitForTimeout(1000);
  await where.keyboard.press('Enter');
  await where.waitForTimeout(2000);
}
