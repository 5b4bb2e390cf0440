// A finding in words: its one-line message for lists, and for hovers why it matters and how to mend it.

import { type Finding, findingRow, type Severity, sayWhat } from '../../schema/findings.ts';
import { type SourceKey, sources } from '../../schema/sources.ts';
import { type Reader, showIn } from './amount.ts';

export interface FindingWords {
  readonly severity: Severity;
  readonly title: string;
  readonly what: string;
  readonly why: string;
  readonly fix: string;
  /** Titles of the publications it rests on; the format itself is none. */
  readonly sources: readonly string[];
  readonly caution?: string;
}

/** What is wrong, in the reader's units. */
export function findingMessage(finding: Finding, reader: Reader): string {
  return sayWhat(finding, showIn(reader));
}

/** Everything the catalogue says of a finding, with its case's own names and amounts. */
export function findingWords(finding: Finding, reader: Reader): FindingWords {
  const row = findingRow(finding.code);
  return {
    severity: row.severity,
    title: row.title,
    what: findingMessage(finding, reader),
    why: row.why,
    fix: row.fix,
    sources: row.sources.flatMap(titleOf),
    ...(row.caution === undefined ? {} : { caution: row.caution }),
  };
}

/** A source's title, or nothing where the source is the format's own definition. */
export function titleOf(source: SourceKey): readonly string[] {
  return source === 'tidemark-design' ? [] : [sources[source].title];
}
