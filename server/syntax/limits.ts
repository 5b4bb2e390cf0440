// How much of a file is read. Apart from the readers, so that every bound that keeps a hostile file from hanging the
// editor stands in one place.

export const limits = {
  /** The longest file that is read, in UTF-16 units. A recipe of 20,000 lines has about a third of this. */
  fileLength: 1_000_000,
  /** How deep lists and maps may stand inside each other. */
  depth: 64,
  /** How many values one entry may hold once its aliases are followed. */
  valuesThroughAliases: 20_000,
  /** How many notes of broken YAML one entry may raise: after the first few they only echo each other. */
  notesPerEntry: 5,
} as const;
