// The seed of every property test: fixed, so that a build tells of the change it builds and of nothing else. Set
// TIDEMARK_SEED to another number, or to `random`, to look for what nobody has met yet.

import fc from 'fast-check';

const asked = process.env.TIDEMARK_SEED;

if (asked !== 'random') fc.configureGlobal({ seed: asked === undefined ? 20_270_201 : Number(asked) });
