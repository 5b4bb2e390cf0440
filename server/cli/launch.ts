// What a shell starts: it loads the command line, which lies beside it, the fast way.

import { join } from 'node:path';
import { compile } from './compiled.ts';

compile(join(__dirname, 'cli-main.cjs')).run();
