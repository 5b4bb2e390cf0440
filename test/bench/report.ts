// The measurements as a page: ratios to floors first, since milliseconds are the machine's and ratios are ours.

import type { CheckTimes, CommandLineTimes } from './command-line.ts';
import type { CoreTimes } from './in-process.ts';
import type { Kind } from './keystrokes.ts';
import type { ServerTimes } from './over-stdio.ts';

export interface Measured {
  readonly lines: number;
  /** One parse of the whole file by the `yaml` package, in milliseconds. */
  readonly parse: number;
  /** The same in processor time. */
  readonly parseCpu: number;
  readonly core: CoreTimes;
  readonly server: ServerTimes;
  /** A server for YAML in general, asked the same, where its folder was given. */
  readonly peer?: ServerTimes;
}

export interface Machine {
  readonly processor: string;
  readonly cores: number;
  readonly node: string;
  readonly date: string;
}

export function reportOf(all: readonly Measured[], commandLine: CommandLineTimes, machine: Machine): string {
  const sizes = all.map(({ lines }) => thousands(lines));
  const row = (what: string, of: (one: Measured) => string): readonly string[] => [what, ...all.map(of)];
  const [smallest] = all;
  const kinds = Object.keys(smallest?.core.byKind ?? {}) as Kind[];
  const hasPeer = all.some(({ peer }) => peer !== undefined);
  return `# Speed

Written by \`npm run bench\` on ${machine.date}: ${machine.processor}, ${machine.cores} cores, Node ${machine.node}. Recipes are drawn
from a seed; every floor is measured in the same run on the same file. Trust the ratios; milliseconds are this machine's.

## Against one whole parse

How many times a parse of the whole file by the \`yaml\` package is what a keystroke takes, from the change to all findings, chemistry
and forecasts included.

${table(
  ['lines', ...sizes],
  [
    row('one parse', ({ parse }) => ms(parse)),
    row('keystroke, median', ({ core, parse }) => `${ms(core.keystroke.p50)} (1/${ratio(parse, core.keystroke.p50)})`),
    row(
      'keystroke, processor time',
      ({ core, parse }) => `${ms(core.keystrokeCpu)} (1/${ratio(parse, core.keystrokeCpu)})`,
    ),
    row('grown since the smallest', ({ core }) => `${ratio(core.keystrokeCpu, smallest?.core.keystrokeCpu ?? 0)} x`),
    row('opening, to all findings', ({ core, parse }) => `${ms(core.open)} (${ratio(core.open, parse)} x)`),
  ],
)}

## Keystrokes by what is typed in

Median and 95th percentile of a letter put in or taken out, in the core.

${table(
  ['lines', ...sizes],
  kinds.map(kind => row(`in a ${kind}`, ({ core }) => both(core.byKind[kind]))),
)}

## Questions

${table(
  ['lines', ...sizes],
  [row('hover', ({ core }) => both(core.hover)), row('completion', ({ core }) => both(core.completion))],
)}

## The server, as an editor waits for it

${table(
  ['lines', ...sizes],
  [
    row('start to first findings', ({ server }) => ms(server.firstFindings)),
    row('keystroke to findings', ({ server }) => both(server.keystroke)),
    ...kinds.map(kind => row(`in a ${kind}`, ({ server }) => both(server.byKind[kind]))),
    row('its processor time', ({ server }) => ms(server.keystrokeCpu)),
    row('ten letters at once', ({ server }) => both(server.burst)),
    row('hover', ({ server }) => both(server.hover)),
    row('completion', ({ server }) => both(server.completion)),
    row('memory after all that', ({ server }) =>
      server.memoryMB === undefined ? 'not known' : `${server.memoryMB.toFixed(0)} MB`,
    ),
  ],
)}
${hasPeer ? peerPart(all, sizes) : ''}
${commandLinePart(commandLine)}`;
}

/** What a check takes, beside what is aimed at. */
export function commandLinePart({ recipes, kinds }: CommandLineTimes): string {
  const [all, tenth] = [thousands(recipes), thousands(Math.ceil(recipes / 10))];
  const row = (what: string, aim: string, of: (kind: CheckTimes) => string): readonly string[] => [
    what,
    aim,
    ...kinds.map(of),
  ];
  const times = (ours: number, floor: number): string => `${ratio(ours, floor)} x of ${ms(floor)}`;
  return `## The command line

What \`tidemark check\` takes from the start of its process to the end. One recipe is held against \`node -e 0\`; ${all} of a kind against
a bare parse of the same files by the \`yaml\` package, bundled the same way. Processor time is that of all threads together.

${table(
  ['', 'aim', ...kinds.map(({ kind, lines }) => `${kind}, ${lines} lines`)],
  [
    row('one recipe', 'at most 1.7 x', ({ one, node }) => times(one.wall, node.wall)),
    row('one recipe, processor time', 'at most 1.7 x', ({ one, node }) => times(one.cpu, node.cpu)),
    row(`${all} recipes`, 'at most 1.5 x', ({ all: many, bareParse }) => times(many.wall, bareParse.wall)),
    row(`${all} recipes, processor time`, 'at most 1.5 x', ({ all: many, bareParse }) =>
      times(many.cpu, bareParse.cpu),
    ),
    row(`${all} recipes, as a time`, 'at most 3 s for 1,000', ({ all: many }) => `${(many.wall / 1000).toFixed(1)} s`),
    row(`memory at ${tenth} recipes`, '', ({ few }) => `${few.memory.toFixed(0)} MB`),
    row(`memory at ${all} recipes`, 'no more', ({ all: many }) => `${many.memory.toFixed(0)} MB`),
  ],
)}
`;
}

function peerPart(all: readonly Measured[], sizes: readonly string[]): string {
  const row = (what: string, of: (one: ServerTimes) => number | undefined): readonly string[] => [
    what,
    ...all.map(({ server, peer }) => {
      const [ours, theirs] = [of(server), peer && of(peer)];
      return ours === undefined || theirs === undefined
        ? 'not known'
        : `${ratio(ours, theirs)} x of ${theirs.toFixed(1)}`;
    }),
  ];
  return `
## Beside a server for YAML in general

What ours takes as a share of what yaml-language-server takes for the same keystrokes and questions on the same file, with our JSON
Schema.

${table(
  ['lines', ...sizes],
  [
    row('start to first findings', ({ firstFindings }) => firstFindings),
    row('keystroke to findings', ({ keystroke }) => keystroke.p50),
    row('its processor time', ({ keystrokeCpu }) => keystrokeCpu),
    row('hover, 95 %', ({ hover }) => hover.p95),
    row('completion, 95 %', ({ completion }) => completion.p95),
    row('memory', ({ memoryMB }) => memoryMB),
  ],
)}
`;
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

function both({ p50, p95 }: { readonly p50: number; readonly p95: number }): string {
  return `${ms(p50)} / ${ms(p95)}`;
}

function ms(value: number | undefined): string {
  return value === undefined ? 'not known' : `${value < 10 ? value.toFixed(2) : value.toFixed(0)} ms`;
}

function ratio(of: number, to: number): string {
  const is = of / to;
  return is < 10 ? is.toFixed(2) : is.toFixed(0);
}

function thousands(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/gu, ',');
}
