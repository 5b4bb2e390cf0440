// Text as a terminal can show it: control characters made harmless, and its width in columns.

/** A text without control characters, which could move the cursor or recolour what follows; a tab becomes two spaces. */
export function printable(text: string): string {
  return text.replace(/\t/gu, '  ').replace(controls, '\uFFFD');
}

// Control characters, and the marks that turn the direction of text round.
const controls = /[\p{Cc}\u200E\u200F\u202A-\u202E\u2066-\u2069\uD800-\uDFFF]/gu;

/** How many columns a text takes: none for combining marks, two for wide scripts and emoji. */
export function widthOf(text: string): number {
  let width = 0;
  for (const character of text) width += /\p{M}|\u200D/u.test(character) ? 0 : wide.test(character) ? 2 : 1;
  return width;
}

const wide =
  /[\u1100-\u115F\u2E80-\uA4CF\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6]|\p{Emoji_Presentation}/u;

/** A text filled up with spaces to a width. */
export function padded(text: string, width: number): string {
  return text + ' '.repeat(Math.max(0, width - widthOf(text)));
}
