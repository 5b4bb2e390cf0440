// What is asked for at the bench: sheets, the calendar, supplies, and what is to be written down. Apart from the other commands, to
// which it adds itself.

import type { Command } from 'commander';
import { type Common, common, examples } from './options.ts';

export type BenchAsked =
  | (Common & {
      readonly command: 'sheet';
      readonly file: string;
      readonly batch?: string;
      readonly day?: string;
      readonly format: 'text' | 'markdown' | 'html';
    })
  | (Common & { readonly command: 'calendar'; readonly file: string })
  | (Common & { readonly command: 'supplies'; readonly file: string; readonly format: 'text' | 'json' })
  | (LogOptions & { readonly command: 'log'; readonly file: string });

/** All as it was typed; the command says what fits together. */
export interface LogOptions {
  readonly planting?: string;
  readonly batch?: string;
  readonly on?: string;
  readonly pH?: string;
  readonly EC?: string;
  readonly level?: string;
  readonly topUp?: string;
  readonly from?: string;
  readonly water?: string;
  readonly note?: string;
  /** `down 4 mL`, each. */
  readonly add: readonly string[];
  readonly write: boolean;
  readonly stdinFilename?: string;
}

const recipeFile = 'a recipe, or - for standard input';

export function declareBench(program: Command, say: (asked: BenchAsked) => void): void {
  common(program.command('sheet'), ['text', 'markdown', 'html'])
    .summary('print the bench sheet of a batch or a day')
    .description(
      'Prints what to do at the bench for one batch, or for one day: a page to work from, with room to write.',
    )
    .argument('<file>', recipeFile)
    .option('--batch <name>', 'the batch; the one that is to be mixed next where neither is given')
    .option('--day <date>', 'the day, as 2027-03-01, today or tomorrow')
    .addHelpText(
      'before',
      examples([
        'tidemark sheet bench.grow.yaml --batch opening',
        'tidemark sheet bench.grow.yaml --day tomorrow',
        'tidemark sheet bench.grow.yaml --batch opening --format html > sheet.html',
      ]),
    )
    .action((file: string, options: Common & { format: 'text' | 'markdown' | 'html' }) =>
      say({ command: 'sheet', file, ...options }),
    );

  common(program.command('calendar'), [])
    .summary('print the tasks of a recipe as a calendar')
    .description(
      'Prints all tasks as an iCalendar file (RFC 5545). Read in again, it moves the events that it made before.',
    )
    .argument('<file>', recipeFile)
    .addHelpText('before', examples(['tidemark calendar bench.grow.yaml > bench.ics']))
    .action((file: string, options: Common) => say({ command: 'calendar', file, ...options }));

  common(program.command('supplies'), ['text', 'json'])
    .summary('print what the plan uses, and what it costs')
    .description('Prints how much of every feed and adjuster the plan uses, the packages to have, and what they cost.')
    .argument('<file>', recipeFile)
    .addHelpText(
      'before',
      examples(['tidemark supplies bench.grow.yaml', 'tidemark supplies bench.grow.yaml --format json']),
    )
    .action((file: string, options: Common & { format: 'text' | 'json' }) =>
      say({ command: 'supplies', file, ...options }),
    );

  program
    .command('log')
    .summary('write down a reading or a top-up')
    .description(
      'Adds one entry to the log, or with --batch one reading to a batch, and changes nothing else. Without --write it only shows it.',
    )
    .argument('<file>', recipeFile)
    .option('--planting <name>', 'the planting that it is about')
    .option('--batch <name>', 'the batch on which it was measured, in place of a planting')
    .option('--on <date>', 'the day, as 2027-03-01; today where left out')
    .option('--pH <number>', 'the measured pH')
    .option('--EC <quantity>', "the measured EC at 25 °C, as '1.3 mS/cm'")
    .option('--level <length>', "the measured level above the floor of the container, as '11.5 cm'")
    .option('--top-up <volume>', "what went into each container, as '400 mL'")
    .option('--from <batch>', 'the batch that it was topped up from')
    .option('--water <name>', 'the plain water that it was topped up with')
    .option('--note <text>', 'a remark of your own')
    .option(
      '--add <what>',
      "what was added to the batch before it was measured, as 'down 4 mL'; may be repeated",
      gather,
      [],
    )
    .option('--write', 'write it into the file', false)
    .option('--stdin-filename <path>', 'what standard input is called; `use` is followed from there')
    .addHelpText(
      'before',
      examples([
        "tidemark log bench.grow.yaml --planting berry --pH 6.2 --EC '1.3 mS/cm' --write",
        "tidemark log bench.grow.yaml --planting berry --top-up '400 mL' --from opening --write",
        "tidemark log bench.grow.yaml --batch opening --add 'down 4 mL' --pH 6.6 --write",
      ]),
    )
    .action((file: string, options: LogOptions) => say({ command: 'log', file, ...options }));
}

function gather(value: string, before: readonly string[]): readonly string[] {
  return [...before, value];
}
