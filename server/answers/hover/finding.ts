// Why the findings at a place matter and how to mend them. What is wrong is said by the editor beside it already.

import { findingWords } from '../../words/finding.ts';
import type { Located } from '../../workspace/located.ts';
import type { Snapshot } from '../../workspace/snapshot.ts';
import { blocks } from './blocks.ts';

/** The findings whose text an offset is in or at the end of. */
export function findingsAt({ findings }: Snapshot, offset: number): readonly Located[] {
  return findings.filter(({ range }) => range.from <= offset && offset <= range.to);
}

/** `warned`: a caution stands above already. */
export function findingBlock({ finding }: Located, snapshot: Snapshot, warned: boolean): string {
  const { title, why, fix, caution, sources } = findingWords(finding, snapshot.recipe.show);
  return blocks(
    `**${title}** \`${finding.code}\``,
    why,
    `*How to mend it:* ${fix}`,
    caution === undefined || warned ? undefined : `⚠ ${caution}`,
    sources.length === 0 ? undefined : `*${sources.join('; ')}*`,
  );
}
