// What the command line understands: commands, options, help. It gives what is asked as data and runs nothing.

import { Command, CommanderError } from 'commander';
import { version } from '../../package.json';
import { type BenchAsked, declareBench } from './args-bench.ts';
import { declareFiles, type FilesAsked } from './args-files.ts';
import { declareReview, type ReviewAsked } from './args-review.ts';
import { type Answering, answering, type Common, common, examples } from './options.ts';
import { exit, type Io } from './output.ts';

export type Asked =
  | BenchAsked
  | FilesAsked
  | ReviewAsked
  | (Common & { readonly command: 'plan'; readonly file: string; readonly format: 'text' | 'json' })
  | (Common & {
      readonly command: 'water';
      readonly file: string;
      readonly name?: string;
      readonly format: 'text' | 'json';
    })
  | (Answering & {
      readonly command: 'explain';
      /** The code of a finding, or a recipe. */
      readonly about?: string;
      /** Which number of the recipe. */
      readonly path?: string;
      readonly format: 'text' | 'json';
    })
  | { readonly command: 'serve' };

/** What is asked for, or the exit code where that was help, the version, or not understood. */
export function readArgs(args: readonly string[], io: Io, checkFormats: readonly string[]): Asked | number {
  let asked: Asked | undefined;
  const program = commandTree(checkFormats, said => {
    asked = said;
  });
  for (const command of [program, ...program.commands]) {
    command.exitOverride().configureOutput({
      writeOut: text => io.out.write(text),
      writeErr: text => io.err.write(text),
      outputError: (text, write) => write(`tidemark: ${text.replace(/^error: /u, '')}`),
    });
  }
  if (args.length === 0) {
    program.outputHelp({ error: true });
    return exit.trouble;
  }
  try {
    program.parse(args, { from: 'user' });
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exit.clean : exit.trouble;
    throw error;
  }
  return asked ?? exit.trouble;
}

/** All commands with their options; what is asked for is told to `say`. */
export function commandTree(checkFormats: readonly string[], say: (asked: Asked) => void): Command {
  const program = new Command('tidemark')
    .description('Grow recipes for passive hydroponics: doses, pH, fills, forecasts and findings from the text.')
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand(false)
    .addHelpText(
      'before',
      examples(['tidemark check', 'tidemark plan bench.grow.yaml', 'tidemark explain batch-too-small']),
    )
    .addHelpText(
      'after',
      '\nExit codes: 0 nothing found, 1 findings at or above --fail-on, 2 usage or unreadable input.',
    );

  declareFiles(program, checkFormats, say);

  common(program.command('plan'), ['text', 'json'])
    .summary('print everything that a recipe comes to')
    .description(
      'Prints doses, loads, elements, pH, EC, adjustment, fills, forecasts, tasks and supplies of one recipe.',
    )
    .argument('<file>', 'a recipe, or - for standard input')
    .addHelpText('before', examples(['tidemark plan bench.grow.yaml', 'tidemark plan bench.grow.yaml --format json']))
    .action((file: string, options: Common & { format: 'text' | 'json' }) =>
      say({ command: 'plan', file, ...options }),
    );

  common(program.command('water'), ['text', 'json'])
    .summary('print what the source waters hold')
    .description('Prints the pH, alkalinity, carbon, ions, EC and balance of the source waters of a recipe.')
    .argument('<file>', 'a recipe, or - for standard input')
    .argument('[name]', 'one water; all of them where none is named')
    .addHelpText(
      'before',
      examples(['tidemark water bench.grow.yaml', 'tidemark water bench.grow.yaml mains --format json']),
    )
    .action((file: string, name: string | undefined, options: Common & { format: 'text' | 'json' }) =>
      say({ command: 'water', file, ...(name === undefined ? {} : { name }), ...options }),
    );

  declareBench(program, say);
  declareReview(program, say);

  answering(program.command('explain'), ['text', 'json'])
    .summary('say what a finding means, or where a number comes from')
    .description(
      'Says what a finding means and how to mend it; or walks one number of a recipe back to what is written and to the ' +
        'publications it rests on. Without arguments it lists all findings, with a recipe alone all its numbers.',
    )
    .argument('[about]', 'the code of a finding, as printed by check; or a recipe, or - for standard input')
    .argument('[path]', 'which number of the recipe, by the keys of plan --format json')
    .addHelpText(
      'before',
      examples([
        'tidemark explain unit-mismatch',
        'tidemark explain bench.grow.yaml batches/opening/doses/green',
        'tidemark explain bench.grow.yaml batches/opening/pH',
        'tidemark explain bench.grow.yaml',
      ]),
    )
    .action((about: string | undefined, path: string | undefined, options: Answering & { format: 'text' | 'json' }) =>
      say({
        command: 'explain',
        ...(about === undefined ? {} : { about }),
        ...(path === undefined ? {} : { path }),
        ...options,
      }),
    );

  program
    .command('serve')
    .summary('run the language server')
    .description('Runs the language server for an editor.')
    .requiredOption('--stdio', 'talk over standard input and output')
    // Editors add options of their own.
    .allowUnknownOption()
    .allowExcessArguments()
    .addHelpText('before', examples(['tidemark serve --stdio']))
    .action(() => say({ command: 'serve' }));
  return program;
}
