// Draws client/icons/tidemark.png from the SVG beside it, since the package accepts no SVG as its icon. Run by hand with
// `npx tsx test/editor/draw-icon.ts` after the drawing has changed.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { openBrowser } from './browser.ts';
import { install } from './install.ts';

const icons = join(import.meta.dirname, '..', '..', 'client', 'icons');
const size = 128;

const browser = await openBrowser(install());
const page = await browser.newPage({ viewport: { width: size, height: size }, deviceScaleFactor: 2 });
const drawing = readFileSync(join(icons, 'tidemark.svg'), 'utf8');
await page.setContent(`<body style="margin: 0; background: transparent">${drawing}</body>`);
await page.screenshot({ path: join(icons, 'tidemark.png'), omitBackground: true });
await browser.close();
