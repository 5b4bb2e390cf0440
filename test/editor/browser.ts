// Opens pages of the editor in a headless browser. It stands apart because the browser's driver lives in the on-demand
// installation, so only the few calls that are used are described here.
import { execFileSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { Installation } from './install.ts';
import type { Editor } from './serve.ts';

export interface Page {
  goto(url: string): Promise<unknown>;
  exposeFunction(name: string, callee: (...args: never[]) => unknown): Promise<unknown>;
  waitForSelector(selector: string, options?: { readonly timeout?: number; readonly state?: string }): Promise<unknown>;
  waitForTimeout(milliseconds: number): Promise<void>;
  screenshot(options: {
    readonly path: string;
    readonly clip?: Clip;
    readonly omitBackground?: boolean;
  }): Promise<unknown>;
  setContent(html: string): Promise<void>;
  readonly keyboard: { press(key: string): Promise<void>; type(text: string): Promise<void> };
  readonly mouse: { move(x: number, y: number): Promise<void> };
  close(): Promise<void>;
}

interface Clip {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Browser {
  newPage(options?: {
    readonly viewport?: { readonly width: number; readonly height: number };
    readonly deviceScaleFactor?: number;
    readonly colorScheme?: 'light' | 'dark';
  }): Promise<Page>;
  close(): Promise<void>;
}

interface Driver {
  readonly chromium: { launch(options: object): Promise<Browser> };
}

export async function openBrowser(installation: Installation): Promise<Browser> {
  const driver: Driver = createRequire(join(installation.root, 'package.json'))('playwright-core');
  const executablePath = join(installation.browser, 'chromium');
  return driver.chromium.launch({
    executablePath,
    env: { ...process.env, ...librariesFor(executablePath, installation.browser) },
    args: ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage', '--font-render-hinting=none'],
  });
}

/** A bare machine may lack the browser's libraries or any font; the package brings both. */
function librariesFor(executable: string, browser: string): NodeJS.ProcessEnv {
  const linked = execFileSync('ldd', [executable], { encoding: 'utf8' });
  if (!linked.includes('not found')) return {};
  return { LD_LIBRARY_PATH: join(browser, 'al2023', 'lib'), FONTCONFIG_PATH: join(browser, 'fonts') };
}

/** The address of a page that shows `folder` and does what `payload` says, in the editor's own key-value list. */
export function pageAddress(editor: Editor, folder: string, payload: readonly (readonly [string, string])[]): string {
  const address = `${editor.origin}/?folder=${encodeURI(folder)}`;
  return payload.length === 0 ? address : `${address}&payload=${encodeURIComponent(JSON.stringify(payload))}`;
}
