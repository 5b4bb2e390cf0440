// What is asked about a change: the comparison of two states of recipes. Apart from the other commands, to which it adds itself.

import type { Command } from 'commander';
import { type Answering, answering, examples, readCount } from './options.ts';

export const diffFormats = ['text', 'markdown', 'json', 'html'] as const;

export interface ReviewAsked extends Answering {
  readonly command: 'diff';
  readonly before: string;
  /** Left out: the files as they are now. */
  readonly after?: string;
  readonly format: (typeof diffFormats)[number];
  /** How long Markdown may get. */
  readonly maxCharacters?: number;
  /** 1 where anything computed differs. */
  readonly exitCode: boolean;
}

export function declareReview(program: Command, say: (asked: ReviewAsked) => void): void {
  answering(program.command('diff'), diffFormats)
    .summary('print what a change does to doses, pH, EC, fills and dates')
    .description(
      'Compares two states of recipes by what is computed from them: files, folders, REVISION:FILE as Git writes it, or a revision alone, which means the same file or folder at that revision.',
    )
    .argument('<old>', 'the state before')
    .argument('[new]', 'the state after; the files as they are now where it is left out and OLD is a revision')
    .option('--max-characters <count>', 'let Markdown get no longer than this, where a comment holds more', readCount)
    .option('--exit-code', 'give exit code 1 where anything that is computed differs', false)
    .addHelpText(
      'before',
      examples([
        'tidemark diff HEAD bench.grow.yaml',
        'tidemark diff HEAD~3:bench.grow.yaml HEAD:bench.grow.yaml',
        'tidemark diff main .',
        'tidemark diff last-year/ this-year/',
        'tidemark diff --format markdown origin/main HEAD > comment.md',
      ]),
    )
    .action((before: string, after: string | undefined, options: Omit<ReviewAsked, 'command' | 'before' | 'after'>) =>
      say({ command: 'diff', before, ...(after === undefined ? {} : { after }), ...options }),
    );
}
