// What another thread of the command line starts with: the same bundle, to help in place of running a command.

import { join } from 'node:path';
import { compile } from './compiled.ts';

void compile(join(__dirname, 'cli-main.cjs')).run().help();
