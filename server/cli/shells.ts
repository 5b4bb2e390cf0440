// The shells for which completion is written.

export const shells = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof shells)[number];
