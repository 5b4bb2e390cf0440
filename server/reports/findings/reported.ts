// A finding as every format prints it: worded, with its file, its lines and the line of text it is about.

import { type FindingCode, findingRow, type Severity } from '../../../schema/findings.ts';
import { textOf } from '../../syntax/document.ts';
import { type Position, positionAt } from '../../syntax/position.ts';
import { findingMessage } from '../../words/finding.ts';
import type { Located } from '../../workspace/located.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { severities } from './count.ts';

export interface Reported {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly message: string;
  /** As the reader named it, with forward slashes. */
  readonly file: string;
  /** Lines and characters count from 0; characters are UTF-16 units. */
  readonly range: { readonly start: Position; readonly end: Position };
  /** How to put it right. */
  readonly help: string;
  /** What the first fix of an editor would do. */
  readonly fix?: string;
  readonly caution?: string;
  /** Where it is in the recipe, which does not change as lines move: `batches/opening/volume`. */
  readonly path: string;
  readonly excerpt: Excerpt;
}

/** The first line of what is found, and the part of it that is meant, in UTF-16 units of the line. */
export interface Excerpt {
  readonly line: string;
  readonly from: number;
  readonly to: number;
}

/** The findings of one file. */
export interface FileReport {
  /** As the reader named it, with forward slashes. */
  readonly file: string;
  /** The same from the root of its repository, by which services that show findings beside the text know it. */
  readonly fromRoot: string;
  readonly findings: readonly Reported[];
  /** Those that are counted but not printed, where only so many are wanted. */
  readonly unshown?: readonly Reported[];
}

export function reportOf(snapshot: Snapshot, file: string, fromRoot = file): FileReport {
  return { file, fromRoot, findings: snapshot.findings.map(located => reported(snapshot, file, located)) };
}

function reported(snapshot: Snapshot, file: string, { finding, range }: Located): Reported {
  const { document, recipe } = snapshot;
  const row = findingRow(finding.code);
  const fix = finding.fixes?.[0]?.title;
  return {
    code: finding.code,
    severity: row.severity,
    message: findingMessage(finding, recipe.show),
    file,
    range: { start: positionAt(document, range.from), end: positionAt(document, range.to) },
    help: row.fix,
    ...(fix === undefined ? {} : { fix }),
    ...(row.caution === undefined ? {} : { caution: row.caution }),
    path: finding.at.path.join('/'),
    excerpt: excerptOf(textOf(document), range.from, range.to),
  };
}

function excerptOf(text: string, from: number, to: number): Excerpt {
  const start = text.lastIndexOf('\n', from - 1) + 1;
  const feed = text.indexOf('\n', from);
  // A slice would keep the whole text in memory for as long as the finding; joined anew it is a text of its own.
  const line = [...text.slice(start, feed === -1 ? text.length : feed).replace(/\r$/u, '')].join('');
  const first = Math.min(from - start, line.length);
  return { line, from: first, to: Math.max(first, Math.min(to - start, line.length)) };
}

/** Whether a severity is at least as grave as another. */
export function isAtLeast(severity: Severity, least: Severity): boolean {
  return severities.indexOf(severity) <= severities.indexOf(least);
}
