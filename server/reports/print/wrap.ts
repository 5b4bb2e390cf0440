// Words broken into lines of a width in columns.

import { widthOf } from './terminal.ts';

/** A text in lines no wider than a width; a single word that is wider is cut. Never empty. */
export function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/ +/u).flatMap(word => cut(word, width))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (widthOf(longer) <= width) {
      line = longer;
      continue;
    }
    lines.push(line);
    line = word;
  }
  return [...lines, line];
}

function cut(word: string, width: number): readonly string[] {
  if (widthOf(word) <= width) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const character of word) {
    if (piece !== '' && widthOf(piece + character) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += character;
  }
  return [...pieces, piece];
}
