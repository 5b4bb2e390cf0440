// One run of the command line: from its arguments to its exit code. Apart from the entry, so that tests run it in their own process.

import { findingsFormats } from '../reports/findings/formats.ts';
import { readArgs } from './args.ts';
import { calendar } from './commands/calendar.ts';
import { check } from './commands/check.ts';
import { explain } from './commands/explain.ts';
import { format } from './commands/format.ts';
import { log } from './commands/log.ts';
import { migrate } from './commands/migrate.ts';
import { plan } from './commands/plan.ts';
import { sheet } from './commands/sheet.ts';
import { supplies } from './commands/supplies.ts';
import { water } from './commands/water.ts';
import { complain, exit, type Io } from './output.ts';

/** The server ends the process itself. */
const untilItEnds = new Promise<never>(() => {});

export async function run(args: readonly string[], io: Io): Promise<number> {
  try {
    const asked = readArgs(args, io, [...findingsFormats.keys()]);
    if (typeof asked === 'number') return asked;
    switch (asked.command) {
      case 'check': {
        const printed = findingsFormats.get(asked.format);
        if (printed === undefined) throw new Error(`no format ${asked.format}`);
        return await check(asked, printed, io);
      }
      case 'plan':
        return await plan(asked, io);
      case 'water':
        return await water(asked, io);
      case 'sheet':
        return await sheet(asked, io);
      case 'calendar':
        return await calendar(asked, io);
      case 'supplies':
        return await supplies(asked, io);
      case 'log':
        return await log(asked, io);
      case 'diff': {
        // What starts git and compares plans is set up only when it is wanted.
        const { diff } = await import('./commands/diff.ts');
        return await diff(asked, io);
      }
      case 'explain':
        return await explain(asked, io);
      case 'format':
        return format(asked, io);
      case 'new': {
        const { newRecipe } = await import('./commands/new.ts');
        return newRecipe(asked, io);
      }
      case 'migrate':
        return migrate(asked, io);
      case 'completion': {
        const { completion } = await import('./commands/completion.ts');
        return completion(asked, [...findingsFormats.keys()], io);
      }
      case 'serve':
        // Loaded only when it is asked for: it is most of the program.
        await import('../node.ts');
        return await untilItEnds;
    }
  } catch (error) {
    complain(
      io,
      `a defect in Tidemark, not in the recipe: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
    );
    return exit.defect;
  }
}
