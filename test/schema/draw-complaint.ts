// Draws what a parser answers as a reader would see it: the text, the wrong part underlined, and the text as mended.

import { findings } from '../../schema/findings.ts';
import type { Complaint, Parsed } from '../../schema/parsed.ts';

/** The drawings of several texts, one after another. */
export function drawEach(texts: readonly string[], parse: (text: string) => Parsed<unknown>): string {
  return texts.map(text => draw(text, parse)).join('');
}

/** `read` for a value; for a complaint three lines, or two where no rewriting is clear. */
export function draw(text: string, parse: (text: string) => Parsed<unknown>): string {
  const answer = parse(text);
  if (answer.kind === 'read') return 'read';
  const { from, to } = answer.slice;
  const lines = [text, `${' '.repeat(from)}${'^'.repeat(to - from)} ${answer.code}: ${say(answer)}`];
  if (answer.instead !== undefined) lines.push(text.slice(0, from) + answer.instead + text.slice(to));
  return `\n${lines.join('\n')}\n`;
}

function say(complaint: Complaint): string {
  switch (complaint.code) {
    case 'unit-unknown':
      return findings['unit-unknown'].what(complaint.params, show);
    case 'unit-mismatch':
      return findings['unit-mismatch'].what(complaint.params, show);
    case 'unit-missing':
      return findings['unit-missing'].what(complaint.params, show);
    case 'value-invalid':
      return findings['value-invalid'].what(complaint.params, show);
  }
}

const show = { amount: () => 'an amount' };
