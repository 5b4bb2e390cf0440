// Listens to the editor in a page: it tells what its tests log and how they ended. It stands apart because the editor with a host in
// Node and the one wholly in the browser tell it alike.
import type { Page } from './browser.ts';

export interface Listening {
  /** Resolves when the tests have ended, with how, and with what was logged last. */
  readonly end: Promise<string>;
  /** Resolves with the first line logged that holds a text. */
  readonly line: (part: string) => Promise<string>;
}

/** The editor calls two functions where a page has them. */
export async function listen(page: Page): Promise<Listening> {
  let ended: (last: string) => void = () => {};
  const end = new Promise<string>(resolve => {
    ended = resolve;
  });
  const lines: string[] = [];
  const waiting = new Set<() => void>();
  const last = (): string => lines.slice(-20).join('\n');
  await page.exposeFunction('codeAutomationLog', (type: string, args: readonly unknown[]) => {
    lines.push(`${type} ${args.map(arg => (typeof arg === 'string' ? arg : JSON.stringify(arg))).join(' ')}`);
    for (const look of waiting) look();
  });
  await page.exposeFunction('codeAutomationExit', (code: number) => ended(`exit ${code}\n${last()}`));
  // Whoever has seen enough before the end need not wait for this.
  const tooLong = setTimeout(() => ended(`no end after four minutes\n${last()}`), 240_000).unref();
  const line = (part: string): Promise<string> =>
    new Promise(resolve => {
      waiting.add(() => {
        const found = lines.find(one => one.includes(part));
        if (found !== undefined) resolve(found);
      });
    });
  return { end: end.finally(() => clearTimeout(tooLong)), line };
}
