// What is asked about the files themselves: checked, formatted, begun, brought to a new format; and how a shell completes all that.
// Apart from the other commands, to which it adds itself.

import { type Command, Option } from 'commander';
import { type Common, common, examples, readCount } from './options.ts';
import { type Shell, shells } from './shells.ts';

export type FilesAsked =
  | (Common & {
      readonly command: 'check';
      readonly paths: readonly string[];
      readonly format: string;
      readonly changedSince?: string;
      /** How many findings are printed at most. */
      readonly max?: number;
    })
  | (Rewriting & { readonly command: 'format'; readonly paths: readonly string[] })
  | (Rewriting & { readonly command: 'migrate'; readonly paths: readonly string[] })
  | { readonly command: 'new'; readonly name?: string; readonly us: boolean }
  | { readonly command: 'completion'; readonly shell: Shell };

/** Of commands that give a file another text: it is printed, unless it is to be checked or written. */
export interface Rewriting {
  readonly check: boolean;
  readonly write: boolean;
}

export function declareFiles(
  program: Command,
  checkFormats: readonly string[],
  say: (asked: FilesAsked) => void,
): void {
  common(program.command('check'), checkFormats)
    .summary('find what is wrong in recipes')
    .description('Finds what is wrong in recipes: files, folders (all *.grow.yaml in them), or - for standard input.')
    .argument('[paths...]', 'files and folders; the current folder where none is given')
    .option('--changed-since <revision>', 'only recipes that have changed since a Git revision, or use what has')
    .option('--max <count>', 'print so many findings at most', readCount)
    .addHelpText(
      'before',
      examples([
        'tidemark check',
        'tidemark check shelf.grow.yaml plots/',
        'tidemark check - < draft.grow.yaml',
        'tidemark check --changed-since main --fail-on warning',
        'tidemark check --format sarif > findings.sarif',
      ]),
    )
    .action((paths: string[], options: Omit<Extract<FilesAsked, { command: 'check' }>, 'command' | 'paths'>) =>
      say({ command: 'check', paths, ...options }),
    );

  rewriting(program.command('format'))
    .summary('put the spaces of recipes in order')
    .description(
      'Prints a recipe with its indentation, spaces and blank lines in order. Words, numbers, quotes and comments stay as they are.',
    )
    .addHelpText(
      'before',
      examples([
        'tidemark format bench.grow.yaml',
        'tidemark format --write .',
        'tidemark format --check plots/',
        'tidemark format - < draft.grow.yaml',
      ]),
    )
    .action((paths: string[], options: Rewriting) => say({ command: 'format', paths, ...options }));

  program
    .command('new')
    .summary('begin a recipe')
    .description('Prints a recipe to start from, with a remark to each part; with a name, writes it to a new file.')
    .argument('[name]', 'the file to write: bench, or bench.grow.yaml')
    .option('--us', 'in gallons, inches and ounces', false)
    .addHelpText('before', examples(['tidemark new bench', 'tidemark new --us > bench.grow.yaml']))
    .action((name: string | undefined, { us }: { us: boolean }) =>
      say({ command: 'new', ...(name === undefined ? {} : { name }), us }),
    );

  rewriting(program.command('migrate'))
    .summary('bring recipes to the newest version of the format')
    .description('Prints a recipe in the newest version of the format; only lines that must change do.')
    .addHelpText('before', examples(['tidemark migrate bench.grow.yaml', 'tidemark migrate --write .']))
    .action((paths: string[], options: Rewriting) => say({ command: 'migrate', paths, ...options }));

  program
    .command('completion')
    .summary('print what lets a shell complete commands')
    .description('Prints a script by which a shell completes commands, options and values.')
    .addArgument(program.createArgument('<shell>', 'the shell').choices(shells))
    .addHelpText(
      'before',
      examples([
        'tidemark completion bash > ~/.local/share/bash-completion/completions/tidemark',
        'tidemark completion zsh > ~/.zfunc/_tidemark',
        'tidemark completion fish > ~/.config/fish/completions/tidemark.fish',
      ]),
    )
    .action((shell: Shell) => say({ command: 'completion', shell }));
}

function rewriting(command: Command): Command {
  return command
    .argument('<paths...>', 'files and folders, or - for standard input')
    .addOption(new Option('--check', 'write nothing, and give exit code 1 where something would change').default(false))
    .addOption(new Option('--write', 'write the files').default(false).conflicts('check'));
}
