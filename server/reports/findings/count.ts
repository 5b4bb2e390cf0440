// How many findings there are, counted file by file, and how that is said.

import type { Severity } from '../../../schema/findings.ts';
import type { FileReport } from './reported.ts';

export interface Count {
  readonly recipes: number;
  readonly of: Readonly<Record<Severity, number>>;
}

export const noCount: Count = { recipes: 0, of: { error: 0, warning: 0, information: 0, hint: 0 } };

export function countWith(count: Count, { findings, unshown = [] }: FileReport): Count {
  const of = { ...count.of };
  for (const { severity } of [...findings, ...unshown]) of[severity]++;
  return { recipes: count.recipes + 1, of };
}

export function countOf(reports: readonly FileReport[]): Count {
  return reports.reduce(countWith, noCount);
}

/** `2 recipes checked: 1 error, 3 warnings.` */
export function summary(count: Count): string {
  const parts = partsOf(count);
  const files = `${counted(count.recipes, 'recipe')} checked`;
  return parts.length === 0 ? `${files}, nothing found.` : `${files}: ${parts.join(', ')}.`;
}

/** `1 error`, `3 warnings`: gravest first, those of which there are none left out. */
export function partsOf({ of }: Count): readonly string[] {
  return severities
    .filter(severity => of[severity] > 0)
    .map(severity =>
      severity === 'information' ? `${of[severity]} for information` : counted(of[severity], severity),
    );
}

/** Gravest first. */
export const severities: readonly Severity[] = ['error', 'warning', 'information', 'hint'];

export function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
