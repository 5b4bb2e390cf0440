// One cause, one finding: what a check finds only because something could not be read is left out, for it would be gone once the
// cause is mended, and until then it sends the grower to the wrong place.

import type { Finding } from '../../schema/findings.ts';
import type { Path } from '../../schema/place.ts';

/**
 * The findings of checks without those that follow from something written that could not be read. `unread` are the findings of
 * the syntax, of reading and of following `use`.
 */
export function withoutEchoes(unread: readonly Finding[], checked: readonly Finding[]): readonly Finding[] {
  const notUnderstood = unread.flatMap(causesOf);
  const notFound = checked.flatMap(causesOf);
  if (notUnderstood.length + notFound.length === 0) return checked;
  const isUnclear = onTheWayTo(notUnderstood);
  const isExplained = onTheWayTo([...notUnderstood, ...notFound]);
  const meant = new Set([...unread, ...checked].flatMap(nearestOf));
  return checked.filter(finding => {
    // What could not be read may be what uses the entry, and so may a misspelt name.
    if (finding.code === 'name-unused') return notUnderstood.length === 0 && !meant.has(finding.params.name);
    const rests = finding.code === 'not-computed' || finding.code === 'tool-measures-nothing';
    return !silenceOf(finding).some(rests ? isExplained : isUnclear);
  });
}

function nearestOf({ code, params }: Finding): readonly string[] {
  return (code === 'name-unknown' || code === 'key-unknown') && params.nearest !== undefined ? [params.nearest] : [];
}

/** The places of which a finding says that what is written there was not understood, or not found. */
function causesOf(finding: Finding): readonly Path[] {
  const { code, at } = finding;
  switch (code) {
    case 'key-unknown': {
      const { nearest } = finding.params;
      return nearest === undefined ? [at.path] : [at.path, [...at.path.slice(0, -1), nearest]];
    }
    case 'value-missing':
      return [[...at.path, finding.params.key]];
    case 'name-unknown':
    case 'container-impossible':
    case 'net-cup-too-deep':
    case 'formula-invalid':
    case 'water-impossible':
    case 'temperature-outside':
    case 'adjuster-without-strength':
    case 'acid-with-base':
      return [at.path];
    case 'density-missing':
      return [[...at.path.slice(0, 2), 'density']];
    case 'net-cup-too-wide':
    case 'not-a-vessel':
      return [at.path, ...(finding.related ?? []).map(other => other.at.path)];
    case 'value-invalid':
    case 'unit-missing':
    case 'unit-unknown':
    case 'unit-mismatch':
    case 'yaml-invalid':
    case 'tab-indent':
    case 'conflict-marker':
    case 'second-document':
    case 'alias-limit':
      return [at.path];
    default:
      return [];
  }
}

/** The places that a finding takes to be empty, or to hold all that there is. */
function silenceOf(finding: Finding): readonly Path[] {
  const related = (): readonly Path[] =>
    (finding.related ?? []).flatMap(({ at }) => (at.file === undefined ? [at.path] : []));
  switch (finding.code) {
    case 'name-unknown':
      return finding.params.among.map(section => [section, finding.params.name]);
    case 'not-computed':
    case 'stage-unfed':
    case 'not-a-vessel':
      return [finding.at.path, ...related()];
    case 'tool-measures-nothing':
    case 'adjuster-without-strength':
    case 'nitrogen-mismatch':
      return [finding.at.path];
    case 'feed-wrong-stage':
      return related();
    case 'dose-below-tool':
    case 'dose-rounded':
      return [['tools']];
    default:
      return [];
  }
}

/** Whether a path is one of some paths, leads to one of them, or begins with one. */
function onTheWayTo(paths: readonly Path[]): (path: Path) => boolean {
  const ends = new Set(paths.map(path => path.join('\n')));
  const ways = new Set(paths.flatMap(path => path.map((_, length) => path.slice(0, length).join('\n'))));
  return path => {
    if (ways.has(path.join('\n'))) return true;
    for (let length = 0; length <= path.length; length++) {
      if (ends.has(path.slice(0, length).join('\n'))) return true;
    }
    return false;
  };
}
