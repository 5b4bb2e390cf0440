// The little Markdown that the generated pages are made of. Apart, so that every page escapes its cells alike.

/** What stands at the top of every generated page. */
export function generatedNote(from: string): string {
  return `<!-- Generated from ${from} by npm run generate. -->`;
}

/** A table; a bar or a line end inside a cell would break its row. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ').trim();
}

export function code(text: string): string {
  return text.includes('`') ? `\`\` ${text} \`\`` : `\`${text}\``;
}

/** Blocks parted by empty lines, ended by one line end. */
export function page(...blocks: readonly string[]): string {
  return `${blocks.filter(block => block !== '').join('\n\n')}\n`;
}

/** The address GitHub and VS Code give to a heading. */
export function anchor(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/[^\p{L}\p{N} _-]/gu, '')
    .replaceAll(' ', '-');
}
