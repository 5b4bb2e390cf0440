// The little markdown that hovers are made of. Apart from what they say, so that a name can never break out of its place.

/** Blocks one under the other; those that have nothing to say are left out. */
export function blocks(...parts: readonly (string | undefined)[]): string {
  return parts.filter(part => part !== undefined && part !== '').join('\n\n');
}

/** Lines of one block, each on a line of its own. */
export function lines(...parts: readonly (string | undefined)[]): string | undefined {
  const said = parts.filter(part => part !== undefined && part !== '');
  return said.length === 0 ? undefined : said.join('  \n');
}

/** Short parts in a row: `pH 7.8 · EC 0.42 mS/cm`. */
export function row(...parts: readonly (string | undefined)[]): string | undefined {
  const said = parts.filter(part => part !== undefined && part !== '');
  return said.length === 0 ? undefined : said.join(' · ');
}

/** A name or a written text, as code. */
export function code(text: string): string {
  return `\`${text.replaceAll('`', 'ˋ').replace(/\s+/gu, ' ')}\``;
}

/** Text of a reader's own, with what markdown would take for marks disarmed. */
export function plain(text: string): string {
  return text.replace(/[\\`*_{}[\]<>()#+!|~]/gu, mark => `\\${mark}`).replace(/\s+/gu, ' ');
}

/** A table; `right` are the columns of numbers. */
export function table(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly number[],
): string | undefined {
  if (rows.length === 0) return undefined;
  const rule = head.map((_, column) => (right.includes(column) ? '--:' : ':--'));
  return [head, rule, ...rows].map(cells => `| ${cells.join(' | ')} |`).join('\n');
}
