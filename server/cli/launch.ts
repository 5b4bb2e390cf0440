// What a shell starts: it loads the command line, which lies beside it, the fast way.

import { join } from 'node:path';
import { compile } from './compiled.ts';

// All that is said has been written by then, and the engine need not tidy up.
void compile(join(__dirname, 'cli-main.cjs'))
  .run()
  .main()
  .then(code => process.exit(code));
