// A review as one comment of a pull request: a headline, the rows that change, the rest folded. It begins with a mark by which a later
// run finds the comment and writes over it, and it never outgrows what a forge accepts.

import { markdownLine } from '../print/markdown.ts';
import { causeText } from './causes.ts';
import { cell, estimates, findingLine, headline, ofWhat, remarksOn, toldFiles } from './headline.ts';
import type { FileReview, Review, Row } from './review.ts';

/** The first line of every comment; whoever updates a comment looks for it. */
export const reviewMark = '<!-- tidemark review -->';

/** Below the 65,536 characters that a comment may have, with room for what a workflow adds. */
export const mostCharacters = 65_000;

/** A review in at most so many characters: what is folded goes first, then rows, recipes and findings from the end. */
export function reviewMarkdown(review: Review, most = mostCharacters): string {
  const all = toldFiles(review).reduce((sum, file) => sum + linesOf(file), 0);
  for (const isFolded of [true, false]) {
    const whole = written(review, all, isFolded);
    if (whole.length <= most) return whole;
  }
  let fits = 0;
  for (let step = 2 ** Math.ceil(Math.log2(all + 1)); step >= 1; step /= 2) {
    if (fits + step <= all && written(review, fits + step, false).length <= most) fits += step;
  }
  return written(review, fits, false);
}

/** How many lines of a recipe can be dropped one by one, its own heading among them. */
function linesOf({ rows, findings }: FileReview): number {
  return 1 + rows.length + findings.appear.length + findings.change.length + findings.disappear.length;
}

function written(review: Review, room: number, isFolded: boolean): string {
  const parts: string[] = [reviewMark, `**${headline(review)}**`, `${code(review.before)} → ${code(review.after)}`];
  let left = room;
  let dropped = 0;
  let hasAmounts = false;
  for (const file of toldFiles(review)) {
    const take = Math.min(left, linesOf(file));
    left -= take;
    dropped += linesOf(file) - take;
    if (take === 0) continue;
    hasAmounts ||= file.rows.length > 0;
    parts.push(...fileParts(file, take - 1, isFolded));
  }
  if (dropped > 0)
    parts.push(`_… and ${dropped} more ${dropped === 1 ? 'line' : 'lines'}: \`tidemark diff\` shows all._`);
  if (hasAmounts) parts.push(`_${estimates}_`);
  return `${parts.join('\n\n')}\n`;
}

function fileParts(file: FileReview, room: number, isFolded: boolean): readonly string[] {
  const { appear, change, disappear } = file.findings;
  const findings = [
    ...appear.map(one => `- appears: ${short(findingLine(one))}`),
    ...change.map(({ before, after }) => `- changes: ${short(findingLine(after))} (before: ${short(before.message)})`),
    ...disappear.map(one => `- disappears: ${short(findingLine(one))}`),
  ];
  // Findings first: there are few, and they matter most.
  const told = findings.slice(0, room);
  const rows = file.rows.slice(0, room - told.length);
  return [
    `#### ${short(file.file)}`,
    ...remarksOn(file).map(short),
    ...(told.length === 0 ? [] : [told.join('\n')]),
    ...(rows.length === 0 ? [] : [tableOf(rows), ...causesOf(file, rows)]),
    ...(rows.length === 0 || file.cautions.length === 0
      ? []
      : [`> **With acid and base:** ${file.cautions.map(markdownLine).join(' ')}`]),
    ...(isFolded ? folded(file) : []),
  ];
}

function tableOf(rows: readonly Row[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [
    line(['Of', 'What', 'Before', 'After', 'Change', 'Because']),
    line(['---', '---', '---:', '---:', '---:', '---']),
    ...rows.map(row =>
      line([
        ...[ofWhat(row), row.what, cell(row.before), cell(row.after), row.change ?? ''].map(short),
        row.because.map(at => `(${at + 1})`).join(' '),
      ]),
    ),
  ].join('\n');
}

/** The causes that the rows name, by the numbers that the rows give them. */
function causesOf({ causes }: FileReview, rows: readonly Row[]): readonly string[] {
  const named = new Set(rows.flatMap(({ because }) => because));
  const lines = causes.flatMap((cause, at) =>
    named.has(at) ? [`- (${at + 1}) ${short(causeText(cause))}, ${code(`${cause.file}:${cause.line}`)}`] : [],
  );
  return lines.length === 0 ? [] : [`Because of what is written:\n\n${lines.join('\n')}`];
}

function folded({ unchanged, findings, state }: FileReview): readonly string[] {
  if (unchanged.length === 0) return [];
  const byEntry = new Map<string, string[]>();
  for (const fact of unchanged) byEntry.set(ofWhat(fact), [...(byEntry.get(ofWhat(fact)) ?? []), fact.what]);
  const lines = [...byEntry].map(([entry, whats]) => `- ${short(entry)}: ${whats.map(short).join(', ')}`);
  const stays = findings.stay === 0 ? '' : ` and ${findings.stay} ${findings.stay === 1 ? 'finding' : 'findings'}`;
  const summary =
    state === 'compared' ? `${unchanged.length} values${stays} stay the same` : `${unchanged.length} values`;
  return [`<details><summary>${summary}</summary>`, lines.join('\n'), '</details>'];
}

/** A text of one line and of no more than a cell can hold, which calls nobody by name. */
function short(text: string): string {
  const characters = [...text];
  const line = markdownLine(characters.length <= longest ? text : `${characters.slice(0, longest).join('')}…`);
  return line.replaceAll('@', '@<!-- -->');
}

const longest = 300;

/** A text as code, whatever it holds. */
function code(text: string): string {
  const plain = text.replaceAll(/[\s`|<>]+/gu, ' ').trim();
  return `\`${plain}\``;
}
