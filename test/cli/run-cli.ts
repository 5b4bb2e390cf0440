// Runs the command line in this process: files in a folder of their own, standard streams caught.

import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';
import { dayOf } from '../../schema/date.ts';
import type { Io } from '../../server/cli/output.ts';
import { run } from '../../server/cli/run.ts';

export interface Answer {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

export interface Setting {
  /** Texts, or bytes, by their paths below the folder. */
  readonly files?: Readonly<Record<string, string | Uint8Array>>;
  readonly stdin?: string | Uint8Array;
  readonly env?: Readonly<Record<string, string>>;
  readonly isTTY?: boolean;
  /** A folder that is there already. */
  readonly folder?: string;
  /** Other threads that may help. */
  readonly threads?: Io['threads'];
}

/** Runs one command line in a new folder, or in one that is given. */
export async function runCli(args: readonly string[], setting: Setting = {}): Promise<Answer> {
  const folder = setting.folder ?? folderWith(setting.files ?? {});
  const caught = { out: '', err: '' };
  const isTTY = setting.isTTY ?? false;
  const code = await run(args, {
    out: { isTTY, write: text => (caught.out += text) },
    err: { isTTY, write: text => (caught.err += text) },
    cwd: folder,
    env: setting.env ?? {},
    today: () => dayOf(2027, 3, 1),
    readInput: () => Buffer.from(setting.stdin ?? ''),
    ...(setting.threads && { threads: setting.threads }),
  });
  return { code, ...caught };
}

/** A folder with these files, for as long as the test runs. It is a repository of its own, so that nothing above it counts. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'tidemark-cli-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  mkdirSync(join(folder, '.git'));
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  return folder;
}
