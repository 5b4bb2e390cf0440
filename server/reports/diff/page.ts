// A review as a page of tables, for HTML: nothing but words and numbers goes into it.

import { pagesHtml } from '../print/html.ts';
import { type Block, caution, type Page, paragraph, type Section, table } from '../print/page.ts';
import { causeText } from './causes.ts';
import { cell, estimates, findingLine, headline, ofWhat, remarksOn, toldFiles } from './headline.ts';
import type { FileReview, Review } from './review.ts';

export function reviewHtml(review: Review): string {
  return pagesHtml([reviewPage(review)]);
}

function reviewPage(review: Review): Page {
  return {
    title: 'What the change does',
    about: [`${review.before} → ${review.after}`, headline(review)],
    sections: toldFiles(review).map(fileSection),
    foot: estimates,
  };
}

function fileSection(file: FileReview): Section {
  return { heading: file.file, blocks: [...remarksOn(file).map(paragraph), ...tablesOf(file)] };
}

function tablesOf(file: FileReview): readonly Block[] {
  const { rows, causes, cautions } = file;
  const { appear, change, disappear } = file.findings;
  const findings = [
    ...appear.map(one => ['appears', findingLine(one)]),
    ...change.map(({ before, after }) => ['changes', `${findingLine(after)} (before: ${before.message})`]),
    ...disappear.map(one => ['disappears', findingLine(one)]),
  ];
  const right = { align: 'right' } as const;
  const values = table(
    'Values that change',
    [
      { name: 'Of' },
      { name: 'What' },
      { name: 'Before', ...right },
      { name: 'After', ...right },
      { name: 'Change', ...right },
      { name: 'Because' },
    ],
    rows.map(row => [
      ofWhat(row),
      row.what,
      cell(row.before),
      cell(row.after),
      row.change ?? '',
      row.because.map(at => String(at + 1)).join(', '),
    ]),
  );
  const written = table(
    'Because of what is written here',
    [{ name: 'No.' }, { name: 'What is written' }, { name: 'Where' }],
    causes.map((cause, at) => [String(at + 1), causeText(cause), `${cause.file}:${cause.line}`]),
  );
  return [
    ...(rows.length === 0 ? [] : [values]),
    ...(causes.length === 0 ? [] : [written]),
    ...(findings.length === 0
      ? []
      : [table('Findings that come and go', [{ name: 'Now' }, { name: 'Finding' }], findings)]),
    ...(cautions.length === 0 ? [] : [caution('With acid and base', cautions)]),
  ];
}
