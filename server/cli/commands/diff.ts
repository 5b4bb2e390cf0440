// `tidemark diff`: what a change does to all that is computed.

import { relative, resolve } from 'node:path';
import { pathOf } from '../../host/disk.ts';
import { countsOf, isChanged } from '../../reports/diff/headline.ts';
import { reviewJson } from '../../reports/diff/json.ts';
import { reviewMarkdown } from '../../reports/diff/markdown.ts';
import { reviewHtml } from '../../reports/diff/page.ts';
import { type Review, review } from '../../reports/diff/review.ts';
import { reviewText } from '../../reports/diff/text.ts';
import type { Paint } from '../../reports/print/paint.ts';
import type { ReviewAsked } from '../args-review.ts';
import { slashed } from '../open-recipes.ts';
import { complain, type ExitCode, exit, type Io, paintFor } from '../output.ts';
import { pairsOf } from '../pairs.ts';
import { type NoSource, namedSide, type Source, sideAt } from '../sides.ts';

export async function diff(asked: ReviewAsked, io: Io): Promise<ExitCode> {
  const sides = sidesOf(asked, io);
  if (typeof sides === 'string') {
    complain(io, sides);
    return exit.trouble;
  }
  const { before, after } = sides;
  const { pairs, untouched } = await pairsOf(before, after);
  if (pairs.length + untouched === 0) {
    complain(io, 'neither side holds a recipe (*.grow.yaml, *.grow.yml)');
    return exit.trouble;
  }
  const made = review(before.name, after.name, pairs, untouched);
  io.out.write(printers[asked.format](made, paintFor(io.out, io.env, asked.color), asked.maxCharacters));
  if (countsOf(made).unread > 0) return exit.trouble;
  return asked.exitCode && isChanged(made) ? exit.findings : exit.clean;
}

const printers: Readonly<Record<ReviewAsked['format'], (review: Review, paint: Paint, most?: number) => string>> = {
  text: reviewText,
  markdown: (made, _, most) => reviewMarkdown(made, most),
  json: reviewJson,
  html: reviewHtml,
};

interface Sides {
  readonly before: Source;
  readonly after: Source;
}

/** Both sides, or what is wrong with what was asked. */
function sidesOf({ before: old, after: now, stdinFilename }: ReviewAsked, io: Io): Sides | string {
  if (old === '-' && now === '-') return 'standard input can be one side only.';
  const first = namedSide(old, io, stdinFilename);
  if (first?.kind === 'none') return first.says;
  if (now === undefined) return withWorkingTree(old, first, io);
  const second = namedSide(now, io, stdinFilename);
  if (second?.kind === 'none') return (first === undefined ? takenAway(old, now, io) : undefined) ?? second.says;
  // A bare name is a revision: of what the other side names, or of everything where neither names a file.
  const before = first ?? sideAt(old, second, io);
  if (before.kind === 'none') return before.says;
  const after = second ?? sideAt(now, first, io);
  if (after.kind === 'none') return after.says;
  if (before.isFolder !== after.isFolder) return 'a file is compared with a file, and a folder with a folder.';
  return { before, after };
}

/** Only the old state was named: the new one is what stands in the same place now. */
function withWorkingTree(named: string, first: Source | undefined, io: Io): Sides | string {
  const before: Source | NoSource = first ?? sideAt(named, undefined, io);
  if (before.kind === 'none') return before.says;
  if (before.revision === undefined) {
    return `say what ${named} is to be compared with: \`tidemark diff HEAD ${named}\` compares it with the last commit.`;
  }
  const now = pathOf(before.isFolder ? before.base : ([...before.recipes.values()][0] ?? before.base));
  const name = relative(io.cwd, now ?? io.cwd);
  const after = namedSide(name === '' ? '.' : name, io);
  if (after?.kind === 'source') return { before, after: { ...after, name: asTheyAre } };
  // It was taken away since.
  return { before, after: { ...before, name: asTheyAre, recipes: new Map() } };
}

/** A file that only the old revision has. */
function takenAway(revision: string, path: string, io: Io): Sides | undefined {
  const before = namedSide(`${revision}:./${slashed(relative(io.cwd, resolve(io.cwd, path)))}`, io);
  if (before?.kind !== 'source') return undefined;
  return { before: { ...before, name: revision }, after: { ...before, name: path, recipes: new Map() } };
}

const asTheyAre = 'the files as they are now';
