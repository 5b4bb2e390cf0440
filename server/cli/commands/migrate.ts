// `tidemark migrate`: brings recipes to the newest version of the format.

import { migrate as migrated, newestVersion } from '../../recipe/migrate.ts';
import { openDocument } from '../../syntax/document.ts';
import type { Asked } from '../args.ts';
import { complain, type ExitCode, type Io } from '../output.ts';
import { type Rewritten, rewrite } from '../rewrite.ts';

export function migrate(asked: Extract<Asked, { command: 'migrate' }>, io: Io): ExitCode {
  const words = { would: `is of an older version than ${newestVersion}`, done: `is of version ${newestVersion} now` };
  let newest = 0;
  let all = 0;
  const code = rewrite(
    asked,
    text => {
      all++;
      const result = textFor(text);
      if (result.kind === 'text' && result.text === text) newest++;
      return result;
    },
    words,
    io,
  );
  if (all > 0 && newest === all) {
    const which = all === 1 ? 'the recipe is' : `all ${all} recipes are`;
    complain(io, `nothing to migrate: ${which} of version ${newestVersion}, the newest.`);
  }
  return code;
}

function textFor(text: string): Rewritten {
  const result = migrated(openDocument(text));
  switch (result.kind) {
    case 'newest':
      return { kind: 'text', text };
    case 'migrated':
      return { kind: 'text', text: result.text };
    case 'later':
      return {
        kind: 'refused',
        says: `it is of version ${result.version}, and this Tidemark knows versions up to ${newestVersion}; a later Tidemark reads it`,
      };
    case 'unversioned':
      return { kind: 'refused', says: `it does not say its version; begin it with \`recipe: ${newestVersion}\`` };
  }
}
