// How words are made to stand out in a terminal. Reports ask for emphasis by meaning; whether there are colours is decided by who
// prints.

import type { Severity } from '../../../schema/findings.ts';

export interface Paint {
  readonly strong: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly of: (severity: Severity, text: string) => string;
}

export const plainPaint: Paint = { strong: text => text, faint: text => text, of: (_, text) => text };

const ink: Readonly<Record<Severity, string>> = { error: '31', warning: '33', information: '36', hint: '2' };

export const colourPaint: Paint = {
  strong: text => inked('1', text),
  faint: text => inked('2', text),
  of: (severity, text) => inked(`1;${ink[severity]}`, text),
};

function inked(code: string, text: string): string {
  return `\u001b[${code}m${text}\u001b[0m`;
}
