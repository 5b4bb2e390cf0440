// Reads what the editor logged about the extension. It stands apart because a test inside the editor cannot see it.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Different lines that tell of an error in the extension, its server, or in the host because of it; ten at most. */
export function errorsLogged(userFolder: string): readonly string[] {
  const folder = join(userFolder, 'logs');
  if (!existsSync(folder)) return ['the editor kept no logs'];
  const errors = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith('.log'))
    .flatMap(name => {
      const own = /tidemark/i.test(name);
      const lines = readFileSync(join(folder, name), 'utf8').split('\n');
      return lines.flatMap((line, index) => {
        if (!/\[error\]/.test(line)) return [];
        if (!own && !/tidemark\.tidemark|dist[/\\](client|server)\.cjs/.test(line)) return [];
        // The line after it tells what failed.
        return [`${line}\n${lines[index + 1] ?? ''}`.replace(/^[\d-]+ [\d:.]+ /gm, '')];
      });
    });
  return [...new Set(errors)].slice(0, 10);
}
