// The language server wherever it runs: in Node or in a worker, of which only the one that fits is loaded. One bundle serves both
// places, since what they share is nearly all of it.

// Only workers have it.
if ('importScripts' in globalThis) void import('./browser.ts');
else void import('./node.ts');

export {};
