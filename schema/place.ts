// A place is where something is written: a file, the way down to a value, and which part of it. It holds no offsets:
// only the syntax can turn a place into a range, and only when somebody asks.

/** A key of a map, or the number of a list item counted from 0. */
export type Key = string | number;

/** The way from the top of a recipe to a value, as in `['batches', 'opening', 'volume']`. */
export type Path = readonly Key[];

/**
 * Which part of what stands at a path: its key, its value, or a slice of the scalar it holds (UTF-16 units counted in the
 * scalar's own value). `nth` tells equal keys of one map apart, counted from 0.
 */
export type Part =
  | { readonly kind: 'key'; readonly nth?: number }
  | { readonly kind: 'value' }
  | { readonly kind: 'slice'; readonly from: number; readonly to: number };

export interface Place {
  /** The file's URI; left out, the recipe's own file. */
  readonly file?: string;
  readonly path: Path;
  readonly part: Part;
}

export const keyPart: Part = { kind: 'key' };
export const valuePart: Part = { kind: 'value' };

/** The place of the value at a path. */
export function valueAt(path: Path, file?: string): Place {
  return file === undefined ? { path, part: valuePart } : { file, path, part: valuePart };
}

/** The place of the key at a path. */
export function keyAt(path: Path, file?: string): Place {
  return file === undefined ? { path, part: keyPart } : { file, path, part: keyPart };
}
