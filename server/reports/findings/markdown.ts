// Findings as Markdown for the summary of a build or one comment on a change: a headline, then a folded part for each recipe.

import { oneLine } from './concise.ts';
import { counted, countOf, partsOf } from './count.ts';
import { gathered } from './printer.ts';
import type { FileReport, Reported } from './reported.ts';

/** By this mark a comment is found again, to be written anew in place of adding another. It does not show. */
export const commentMark = '<!-- tidemark:check -->';

/** A comment on GitHub holds 65,536 characters; what else is put into it needs some of them. */
const mostCharacters = 60_000;

export const findingsMarkdown = gathered(reports => {
  const found = reports.filter(report => report.findings.length > 0);
  const head = `${commentMark}\n${headline(reports)}\n`;
  const parts: string[] = [];
  let left = mostCharacters - head.length - reserve;
  for (const [at, report] of found.entries()) {
    const part = filePart(report, left);
    if (part === undefined) {
      parts.push(
        `\n_${counted(found.length - at, 'more recipe')} with findings: \`tidemark check\` shows them all._\n`,
      );
      break;
    }
    parts.push(part);
    left -= part.length;
  }
  return head + parts.join('');
});

/** Room for the lines that say what was left out. */
const reserve = 300;

function headline(reports: readonly FileReport[]): string {
  const recipes = counted(reports.length, 'recipe');
  const parts = partsOf(countOf(reports));
  return parts.length === 0 ? `**Nothing found** in ${recipes}.` : `**${parts.join(', ')}** in ${recipes}.`;
}

/** The findings of a recipe as far as they fit; undefined where not even one does. Folded unless something in it is grave. */
function filePart(report: FileReport, room: number): string | undefined {
  const { findings, fromRoot } = report;
  const isGrave = findings.some(({ severity }) => severity === 'error');
  const title = `${code(fromRoot)}: ${partsOf(countOf([report])).join(', ')}`;
  const top = `\n<details${isGrave ? ' open' : ''}><summary>${title}</summary>\n\n| line | finding | what |\n| ---: | --- | --- |\n`;
  const rest = (count: number): string =>
    count === 0 ? '' : `\n_${counted(count, 'more finding')} in this recipe._\n`;
  const bottom = '\n</details>\n';
  const rows: string[] = [];
  let left = room - top.length - bottom.length - rest(findings.length).length;
  for (const finding of findings) {
    const row = rowOf(finding);
    if (row.length > left) break;
    rows.push(row);
    left -= row.length;
  }
  return rows.length === 0 ? undefined : `${top}${rows.join('')}${rest(findings.length - rows.length)}${bottom}`;
}

function rowOf({ range, severity, code: name, message, fix, help, caution }: Reported): string {
  const says = [
    words(message),
    `<br>To fix: ${words(fix === undefined ? help : `${fix}. ${help}`)}`,
    ...(caution === undefined ? [] : [`<br>**Caution:** ${words(caution)}`]),
  ];
  return `| ${range.start.line + 1} | ${severity} ${code(name)} | ${says.join('')} |\n`;
}

/** A sentence in which what stands between backticks is code, and no sign means anything to Markdown, HTML or the forge. */
function words(text: string): string {
  const parts = text.split('`');
  // An odd backtick is one of the text.
  const last = parts.length % 2 === 0 ? parts.length - 1 : parts.length;
  return parts
    .map((part, at) => (at >= last ? `&#96;${plain(part)}` : at % 2 === 0 ? plain(part) : code(part)))
    .join('');
}

function code(text: string): string {
  return `<code>${plain(text)}</code>`;
}

/** Every sign that could begin something is written by its number: mentions and numbers of issues too. */
function plain(text: string): string {
  return oneLine(text).replaceAll(/[\\`*_[\]<>|~&@#$]/gu, sign => `&#${sign.charCodeAt(0)};`);
}
