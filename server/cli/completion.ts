// Scripts that let shells complete the command line, made from the tree of commands, so that they know all that it knows.

import type { Command } from 'commander';
import type { Shell } from './shells.ts';

export function completionFor(shell: Shell, program: Command): string {
  const commands = program.commands.map(wordsOf);
  return { bash, zsh, fish }[shell](commands, wordsOf(program).options);
}

interface CommandWords {
  readonly name: string;
  readonly says: string;
  readonly options: readonly OptionWords[];
  /** What its first argument may be, where that is one of a few words. */
  readonly values: readonly string[];
  readonly takesFiles: boolean;
}

interface OptionWords {
  readonly name: string;
  readonly says: string;
  readonly takesValue: boolean;
  readonly values: readonly string[];
  readonly takesFile: boolean;
}

function wordsOf(command: Command): CommandWords {
  const [first] = command.registeredArguments;
  const options = command.options.map(option => ({
    name: option.long ?? option.short ?? '',
    says: option.description,
    takesValue: option.required || option.optional,
    values: option.argChoices ?? [],
    takesFile: /path|file/u.test(option.flags),
  }));
  return {
    name: command.name(),
    says: command.summary(),
    options: [...options, { name: '--help', says: 'print this help', takesValue: false, values: [], takesFile: false }],
    values: first?.argChoices ?? [],
    takesFiles: /file|paths|about|old/u.test(first?.name() ?? ''),
  };
}

function bash(commands: readonly CommandWords[], top: readonly OptionWords[]): string {
  const cases = commands.map(({ name, options, values, takesFiles }) => {
    const byValue = options
      .filter(option => option.takesValue)
      .map(option => {
        const reply = option.takesFile
          ? 'compopt -o default; COMPREPLY=()'
          : `COMPREPLY=($(compgen -W '${option.values.join(' ')}' -- "$word"))`;
        return `        ${option.name}) ${reply}; return ;;\n`;
      });
    const inner = byValue.length === 0 ? '' : `      case $before in\n${byValue.join('')}      esac\n`;
    const words = options.map(option => option.name).join(' ');
    const rest = takesFiles
      ? 'compopt -o default; COMPREPLY=()'
      : `COMPREPLY=($(compgen -W '${values.join(' ')}' -- "$word"))`;
    return `    ${name})\n${inner}      if [[ $word == -* ]]; then COMPREPLY=($(compgen -W '${words}' -- "$word")); else ${rest}; fi ;;\n`;
  });
  const names = [...commands.map(({ name }) => name), ...top.map(({ name }) => name)].join(' ');
  return `# bash completion for tidemark
_tidemark() {
  local word=\${COMP_WORDS[COMP_CWORD]} before=\${COMP_WORDS[COMP_CWORD-1]}
  # --format=json is three words to bash.
  if [[ $before == '=' ]]; then before=\${COMP_WORDS[COMP_CWORD-2]}; fi
  if [[ $word == '=' ]]; then word=; fi
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    COMPREPLY=($(compgen -W '${names}' -- "$word"))
    return
  fi
  case \${COMP_WORDS[1]} in
${cases.join('')}  esac
}
complete -F _tidemark tidemark
`;
}

function zsh(commands: readonly CommandWords[], top: readonly OptionWords[]): string {
  const quoted = (text: string): string => text.replaceAll("'", "'\\''").replaceAll(/[[\]:]/gu, sign => `\\${sign}`);
  const optionSpec = ({ name, says, takesValue, values, takesFile }: OptionWords): string => {
    const action = values.length > 0 ? `(${values.join(' ')})` : takesFile ? '_files' : '';
    return takesValue
      ? `'${name}=[${quoted(says)}]:${name.replace(/^-+/u, '')}:${action}'`
      : `'${name}[${quoted(says)}]'`;
  };
  const cases = commands.map(({ name, options, values, takesFiles }) => {
    const rest = takesFiles ? ["'*:file:_files'"] : values.length > 0 ? [`'1:${name}:(${values.join(' ')})'`] : [];
    return `    ${name})\n      _arguments ${[...options.map(optionSpec), ...rest].join(' \\\n        ')} ;;\n`;
  });
  const described = commands.map(({ name, says }) => `    '${name}:${quoted(says)}'\n`).join('');
  return `#compdef tidemark
_tidemark() {
  local -a commands
  commands=(
${described}  )
  if ((CURRENT == 2)); then
    _describe -t commands command commands
    _arguments ${top.map(optionSpec).join(' ')}
    return
  fi
  shift words
  ((CURRENT--))
  case \${words[1]} in
${cases.join('')}  esac
}
# Loaded from a folder of completions, this file is the function that is asked; read by a start-up file, it only tells of it.
if [[ $funcstack[1] == _tidemark ]]; then _tidemark "$@"; else compdef _tidemark tidemark; fi
`;
}

function fish(commands: readonly CommandWords[], top: readonly OptionWords[]): string {
  const quoted = (text: string): string => `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;
  const option = (condition: string, { name, says, takesValue, values, takesFile }: OptionWords): string => {
    const long = name.startsWith('--') ? `-l ${name.slice(2)}` : `-s ${name.slice(1)}`;
    const value = takesValue ? (takesFile ? ' -rF' : ' -x') : '';
    const words = values.length > 0 ? ` -a ${quoted(values.join(' '))}` : '';
    return `complete -c tidemark -n ${quoted(condition)} ${long}${value}${words} -d ${quoted(says)}\n`;
  };
  const lines = commands.flatMap(({ name, says, options, values, takesFiles }) => {
    const within = `__fish_seen_subcommand_from ${name}`;
    const files = takesFiles ? ' -F' : values.length > 0 ? ` -a ${quoted(values.join(' '))}` : '';
    return [
      `complete -c tidemark -n '__fish_use_subcommand' -a ${name} -d ${quoted(says)}\n`,
      ...(files === '' ? [] : [`complete -c tidemark -n ${quoted(within)}${files}\n`]),
      ...options.map(one => option(within, one)),
    ];
  });
  return [
    '# fish completion for tidemark\n',
    'complete -c tidemark -f\n',
    ...top.map(one => option('__fish_use_subcommand', one)),
    ...lines,
  ].join('');
}
