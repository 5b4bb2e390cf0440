// A finding as programs are given it, the same in every JSON; and what `check --format json` prints, version 1.

import * as z from 'zod/mini';
import { type FindingCode, findings } from './findings.ts';
import { said, text } from './json-words.ts';

const position = z.object({ line: z.int(), character: z.int() });
const codes = Object.keys(findings) as [FindingCode, ...FindingCode[]];

export const findingJson = z.object({
  code: z.enum(codes),
  severity: z.enum(['error', 'warning', 'information', 'hint']),
  message: text,
  file: said(z.string(), 'as the reader named it, with forward strokes'),
  range: said(
    z.object({ start: position, end: position }),
    'lines and characters count from 0; characters are UTF-16 units',
  ),
  help: said(z.string(), 'how to put it right'),
});

export const checkJson = z.object({
  formatVersion: z.literal(1),
  files: said(z.array(text), 'every file that was read'),
  findings: z.array(findingJson),
});

export type FindingJson = z.infer<typeof findingJson>;
export type CheckJson = z.infer<typeof checkJson>;
