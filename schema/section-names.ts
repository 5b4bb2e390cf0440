// The sections of a recipe that hold named entries, and how a message speaks of one such entry.

export const sectionNames = {
  waters: 'water',
  feeds: 'feed',
  adjusters: 'adjuster',
  tools: 'tool',
  containers: 'container',
  targets: 'target',
  stages: 'stage',
  plantings: 'planting',
  batches: 'batch',
} as const satisfies Record<string, string>;

export type SectionName = keyof typeof sectionNames;

/** The sections that a file may lend to another by `use`. */
export const lentSections: readonly SectionName[] = [
  'waters',
  'feeds',
  'adjusters',
  'tools',
  'containers',
  'targets',
  'stages',
];
