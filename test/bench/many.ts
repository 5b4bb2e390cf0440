// `npx tsx test/bench/many.ts [RECIPES] [RUNS]` measures the command line alone and prints its part of the page of speed.

import { measureCommandLine } from './command-line.ts';
import { commandLinePart } from './report.ts';

const [recipes = 1000, runs = 5] = process.argv.slice(2).map(Number);
process.stdout.write(commandLinePart(await measureCommandLine(recipes, runs)));
