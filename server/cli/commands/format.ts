// `tidemark format`: puts the spaces of recipes in order.

import { format as formatted } from '../../answers/format.ts';
import { openDocument } from '../../syntax/document.ts';
import { positionAt } from '../../syntax/position.ts';
import type { Asked } from '../args.ts';
import type { ExitCode, Io } from '../output.ts';
import { type Rewritten, rewrite } from '../rewrite.ts';

export function format(asked: Extract<Asked, { command: 'format' }>, io: Io): ExitCode {
  return rewrite(asked, textFor, { would: 'would be formatted', done: 'formatted' }, io);
}

function textFor(text: string): Rewritten {
  const document = openDocument(text);
  const result = formatted(document);
  if (result.kind === 'formatted') return { kind: 'text', text: result.text };
  const { line } = positionAt(document, result.offset);
  return {
    kind: 'refused',
    says: `line ${line + 1} is broken, so nothing is moved; \`tidemark check\` says what is wrong`,
  };
}
