// The formats in which `check` prints findings, by name. A format is a file beside this one and a line here.

import { findingsConcise } from './concise.ts';
import { findingsGithub } from './github.ts';
import { findingsGitlab } from './gitlab.ts';
import { findingsJson } from './json.ts';
import { findingsJunit } from './junit.ts';
import { findingsMarkdown } from './markdown.ts';
import type { FindingsFormat } from './printer.ts';
import { findingsSarif } from './sarif.ts';
import { findingsText } from './text.ts';

export const findingsFormats: ReadonlyMap<string, FindingsFormat> = new Map<string, FindingsFormat>([
  ['text', findingsText],
  ['concise', findingsConcise],
  ['json', findingsJson],
  ['sarif', findingsSarif],
  ['github', findingsGithub],
  ['gitlab', findingsGitlab],
  ['junit', findingsJunit],
  ['markdown', findingsMarkdown],
]);
