import { Command, CommanderError, Option } from 'commander';
import manifest from '../package.json' with { type: 'json' };
import { exitCode } from './exit-code.ts';
import type { Io } from './io/io.ts';

const helpWidth = 100;

/**
 * Reads the command line and does what it says.
 *
 * @param argv - the arguments after the program's name
 * @param io - the world around the program
 * @returns the exit code
 * @throws what a command throws, which is always a mistake in the program
 */
export async function runProgram(argv: readonly string[], io: Io): Promise<number> {
  const complaints: string[] = [];
  let code: number = exitCode.good;
  const program = defineProgram(io, complaints, (result) => {
    code = result;
  });
  try {
    await program.parseAsync([...argv], { from: 'user' });
    return code;
  } catch (failure) {
    if (!(failure instanceof CommanderError)) throw failure;
    if (failure.exitCode === 0) return exitCode.good;
    await reportUsage(complaints.join(''), argv.includes('--json'), io);
    return exitCode.unusable;
  }
}

function defineProgram(io: Io, complaints: string[], finish: (code: number) => void): Command {
  const program = new Command('loomproof')
    .description(
      'Proves retrofit wiring kits: every promised circuit continuous, every abandoned conductor isolated ' +
        'and insulated, nothing shorted, nothing else changed.',
    )
    .version(manifest.version)
    .exitOverride()
    .configureOutput({
      writeOut: io.out,
      writeErr: (text) => complaints.push(text),
      getOutHelpWidth: () => helpWidth,
      getErrHelpWidth: () => helpWidth,
      getOutHasColors: () => false,
      getErrHasColors: () => false,
    })
    .addHelpText(
      'after',
      examples(
        ['loomproof prove kit.yaml', 'is the kit right, in all its variants?'],
        ['loomproof prove kit.yaml --variant side=left', 'in one of them?'],
        ['loomproof trace kit.yaml K10:4', 'what is cavity 4 joined to, before and after?'],
      ) +
        '\nExit status: 0 proved, equal or done; 1 not proved or different; 2 the input could not be used;\n' +
        '70 the program itself failed; 74 the output could not be written.\n',
    );

  program
    .command('prove')
    .summary('prove or refute a kit')
    .description('Proves or refutes every variant of a kit and shows the evidence.')
    .argument('<kit>', 'the kit file')
    .addOption(variantOption())
    .option('--paths', 'show the proof of every circuit hop by hop, and long lists to their end')
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `${examples(
        ['loomproof prove kit.yaml', ''],
        ['loomproof prove kit.yaml --variant side=left --variant roof=high', ''],
        ['loomproof prove kit.yaml --json > verdict.json', ''],
      )}\nExit status: 0 proved; 1 refuted or undecided; 2 the input could not be used.\n`,
    )
    .action(async (kit: string, options: { variant?: string[]; json?: boolean; paths?: boolean }) => {
      const { prove } = await import('./commands/prove.ts');
      const { variant = [], json = false, paths = false } = options;
      finish(prove(kit, { variant, json, paths }, io));
    });

  program
    .command('diff')
    .summary('compare two pin tables or two kit files')
    .description(
      'Compares two pin tables, or two kit files before and after their work: nets kept, split and merged, ' +
        'cavities gained and lost, conductors moved and changed.',
    )
    .argument('<before>', 'a pin table (.csv) or a kit file (.yaml, .yml, .json)')
    .argument('<after>', 'the same kind of file')
    .addOption(variantOption())
    .addOption(namesOption('--splice <name>', 'pin tables: a splice, where wires end without a cavity'))
    .addOption(namesOption('--stud <name>', 'pin tables: a stud, where wires end without a cavity'))
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `${examples(
        ['loomproof diff stock.csv modified.csv', ''],
        ['loomproof diff stock.csv modified.csv --splice S1 --stud G1', ''],
        ['loomproof diff kit-A.yaml kit-B.yaml', ''],
      )}\nExit status: 0 equal; 1 different; 2 the input could not be used.\n`,
    )
    .action(
      async (
        before: string,
        after: string,
        options: { variant?: string[]; splice?: string[]; stud?: string[]; json?: boolean },
      ) => {
        const { diff } = await import('./commands/diff.ts');
        const { variant = [], splice = [], stud = [], json = false } = options;
        finish(diff(before, after, { variant, points: [...splice, ...stud], json }, io));
      },
    );

  program
    .command('limits')
    .summary('losses, fuses and outputs with their margins')
    .description(
      'Shows what each circuit loses out and return, each conductor with the fuse ahead of it, and what fuses and ' +
        'outputs carry, with the limit, the margin and where the limit comes from. A size, a length, a fuse or a load ' +
        'can be changed to see the margins move; the kit file stays as it is.',
    )
    .argument('<kit>', 'the kit file')
    .addOption(variantOption())
    .addOption(namesOption('--size <wire=size>', 'what if a wire had this size, such as "feed=4 mm2"'))
    .addOption(namesOption('--length <wire=length>', 'what if a wire were this long, such as "feed=3 m"'))
    .addOption(namesOption('--fuse <fuse=rating>', 'what if a fuse had this rating, such as "F6=10 A"'))
    .addOption(namesOption('--load <load=power>', 'what if a load took this power, such as "lamp=21 W"'))
    .addOption(new Option('--csv', 'print CSV').conflicts(['json', 'page']))
    .addOption(new Option('--page', 'print a page of HTML for printing').conflicts(['json', 'csv']))
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `${examples(
        ['loomproof limits kit.yaml', ''],
        ['loomproof limits kit.yaml --size "feed=4 mm2" --fuse "F6=10 A"', ''],
        ['loomproof limits kit.yaml --page > limits.html', ''],
      )}\nExit status: 0 limits kept; 1 not kept or not known; 2 the input could not be used.\n`,
    )
    .action(
      async (
        kit: string,
        options: {
          variant?: string[];
          size?: string[];
          length?: string[];
          fuse?: string[];
          load?: string[];
          json?: boolean;
          csv?: boolean;
          page?: boolean;
        },
      ) => {
        const { limits } = await import('./commands/limits.ts');
        const { variant = [], size = [], length = [], fuse = [], load = [], json, csv, page } = options;
        const form = json === true ? 'json' : csv === true ? 'csv' : page === true ? 'page' : 'text';
        finish(limits(kit, { variant, changes: { size, length, fuse, load }, form }, io));
      },
    );

  program
    .command('trace')
    .summary('show what a cavity is joined to')
    .description(
      'Shows what a cavity is joined to before and after the work, hop by hop, with the step of every hop.',
    )
    .argument('<kit>', 'the kit file')
    .argument('<cavity>', 'an address such as K10:4, or the name of a stud or boundary')
    .addOption(variantOption())
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `${examples(
        ['loomproof trace kit.yaml K10:4', ''],
        ['loomproof trace kit.yaml K10:4 --variant side=left --json', ''],
      )}\nExit status: 0 done; 2 the input could not be used.\n`,
    )
    .action(async (kit: string, cavity: string, options: { variant?: string[]; json?: boolean }) => {
      const { trace } = await import('./commands/trace.ts');
      const { variant = [], json = false } = options;
      finish(trace(kit, cavity, { variant, json }, io));
    });

  program
    .command('checks')
    .summary('the readings that find every mistake')
    .description(
      'Prints the readings with an ohmmeter that find every mistake that can be measured, the fewest or those that ' +
        'prove everything touched, and names what no reading shows.',
    )
    .argument('<kit>', 'the kit file')
    .addOption(variantOption())
    .addOption(stageOption())
    .addOption(pullOption())
    .addOption(wholeOption())
    .addOption(openOption())
    .addOption(
      new Option('--list <which>', 'the fewest readings, or all').choices(['short', 'full']).default('short'),
    )
    .option('--csv', 'print the list as CSV, to be filled in and given to `diagnose`')
    .addOption(
      new Option(
        '--out <folder>',
        'write the work instruction that takes these readings, a page for a phone, into a folder',
      ).conflicts(['csv', 'json']),
    )
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `${examples(
        ['loomproof checks kit.yaml --variant side=left', ''],
        ['loomproof checks kit.yaml --variant side=left --list full --csv > sheet.csv', ''],
        ['loomproof checks kit.yaml --stage in-place --pull K10', ''],
        ['loomproof checks kit.yaml --list full --out sheets', 'the work instruction with these readings'],
      )}\nExit status: 0 done; 2 the input could not be used.\n`,
    )
    .action(
      async (
        kit: string,
        options: {
          variant?: string[];
          stage: string;
          pull?: string[];
          whole?: string;
          open?: string;
          list: 'short' | 'full';
          csv?: boolean;
          out?: string;
          json?: boolean;
        },
      ) => {
        const { checks } = await import('./commands/checks.ts');
        const { stageNamed } = await import('./checks/stage-of.ts');
        const { variant = [], pull = [], list, csv = false, json = false, out } = options;
        const page =
          out === undefined
            ? null
            : { out, script: await (await import('./sheets/phone-script.ts')).phoneScript() };
        const { whole = null, open = null } = options;
        const how = {
          variant,
          stage: stageNamed(options.stage),
          pulled: pull,
          whole,
          open,
          list,
          csv,
          json,
          page,
        };
        finish(await checks(kit, how, io));
      },
    );

  program
    .command('diagnose')
    .summary('explain readings')
    .description(
      'Explains readings: as designed, or every single fault, else every pair of faults that agrees with all of them, ' +
        'most likely first, and the next reading that tells most.',
    )
    .argument('<kit>', 'the kit file')
    .argument('<readings>', 'a CSV with the columns from, to and reading')
    .addOption(variantOption())
    .addOption(stageOption())
    .addOption(pullOption())
    .addOption(wholeOption())
    .addOption(openOption())
    .option('--shipped <file>', 'the kit file as it was shipped, to compare with instead of the one of today')
    .addOption(namesOption('--revision <file>', 'a kit file of another revision that it may be; repeat it'))
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `${examples(
        ['loomproof diagnose kit.yaml readings.csv --variant side=left', ''],
        ['loomproof diagnose kit.yaml readings.csv', 'which variant is this?'],
        ['loomproof diagnose kit.yaml readings.csv --shipped kit-A.yaml', ''],
        ['loomproof diagnose kit.yaml readings.csv --revision kit-A.yaml', 'which revision is this?'],
      )}\nExit status: 0 as designed; 1 otherwise; 2 the input could not be used.\n`,
    )
    .action(
      async (
        kit: string,
        readings: string,
        options: {
          variant?: string[];
          stage: string;
          pull?: string[];
          whole?: string;
          open?: string;
          shipped?: string;
          revision?: string[];
          json?: boolean;
        },
      ) => {
        const { diagnose } = await import('./commands/diagnose.ts');
        const { stageNamed } = await import('./checks/stage-of.ts');
        const { variant = [], pull = [], whole = null, open = null, json = false } = options;
        const { shipped = null, revision: revisions = [] } = options;
        const stage = stageNamed(options.stage);
        const how = { variant, stage, pulled: pull, whole, open, shipped, revisions, json };
        finish(await diagnose(kit, readings, how, io));
      },
    );

  program
    .command('sheets')
    .summary('write the documents of a kit')
    .description(
      'Writes for every variant the work instruction, the pin table before and after, the parts list, the cut list ' +
        'and the circuits before and after; and what differs between the variants. One self-contained file each.',
    )
    .argument('<kit>', 'the kit file')
    .requiredOption(
      '--out <folder>',
      'the folder, made when it is not there; files of the same names are replaced',
    )
    .addOption(variantOption())
    .addOption(
      namesOption(
        '--pair <variant>',
        'put two variants side by side, not all: given twice, as side=left,roof=high',
      ),
    )
    .addOption(jsonOption())
    .addHelpText(
      'after',
      `${examples(
        ['loomproof sheets kit.yaml --out sheets', ''],
        ['loomproof sheets kit.yaml --out sheets --variant side=left', ''],
        ['loomproof sheets kit.yaml --out sheets --pair side=left --pair side=right', ''],
      )}\nExit status: 0 done, also when the kit is not proved, which its sheets then say; 2 the input could not be\nused, or a file not be written.\n`,
    )
    .action(
      async (kit: string, options: { out: string; variant?: string[]; pair?: string[]; json?: boolean }) => {
        const { sheets } = await import('./commands/sheets.ts');
        const { phoneScript } = await import('./sheets/phone-script.ts');
        const { variant = [], pair = [], json = false, out } = options;
        finish(sheets(kit, { variant, pair, json, out, script: await phoneScript() }, io));
      },
    );

  program
    .command('schema')
    .summary('print a JSON Schema')
    .description('Prints the JSON Schema of kit files, or of what `prove --json` or `limits --json` prints.')
    .addOption(new Option('--of <document>', 'of what').choices(['kit', 'verdict', 'limits']).default('kit'))
    .addOption(jsonOption('accepted as everywhere: a schema is JSON'))
    .addHelpText(
      'after',
      examples(
        ['loomproof schema > kit.schema.json', ''],
        ['loomproof schema --of verdict > verdict.schema.json', ''],
      ),
    )
    .action(async (options: { of: 'kit' | 'verdict' | 'limits' }) => {
      const { schema } = await import('./commands/schema.ts');
      finish(schema(options.of, io));
    });

  program
    .command('start')
    .summary('write a first kit file from a pin table')
    .description(
      'Writes a first kit file from the pin table of the stock harness. The work and what is wanted are left ' +
        'empty: that is for its author.',
    )
    .argument('<table>', 'the pin table (.csv)')
    .addOption(namesOption('--splice <name>', 'a splice, where wires end without a cavity'))
    .addOption(namesOption('--stud <name>', 'a stud, where wires end without a cavity'))
    .option('-o, --output <file>', 'write to a file beside the table instead of printing')
    .option('--force', 'replace the file if it is there')
    .addOption(jsonOption('the kit file as JSON, which is a kit file too'))
    .addHelpText(
      'after',
      `${examples(
        ['loomproof start stock.csv > kit.yaml', ''],
        ['loomproof start stock.csv --splice S1 --stud G1 --output kit.yaml', ''],
      )}\nExit status: 0 done; 2 the table could not be used, or the file not be written.\n`,
    )
    .action(
      async (
        table: string,
        options: { splice?: string[]; stud?: string[]; output?: string; force?: boolean; json?: boolean },
      ) => {
        const { start } = await import('./commands/start.ts');
        const { splice = [], stud = [], force = false, json = false, output = null } = options;
        finish(start(table, { splice, stud, force, json, output }, io));
      },
    );
  return program;
}

function jsonOption(description = 'print JSON for programs'): Option {
  return new Option('--json', description);
}

function stageOption(): Option {
  return new Option('--stage <stage>', 'what is plugged while readings are taken')
    .choices(['bench', 'unplugged', 'in-place'])
    .default('unplugged');
}

function wholeOption(): Option {
  return new Option('--whole <ohms>', 'the most that a whole path reads, 1 ohm when not said');
}

function openOption(): Option {
  return new Option('--open <ohms>', 'the least that an open one reads, 1 Mohm when not said');
}

function pullOption(): Option {
  return namesOption('--pull <connector>', 'in place: a connector that is unplugged all the same; repeat it');
}

function variantOption(): Option {
  return namesOption('--variant <axis=value>', 'only variants that meet this; repeat it for several axes');
}

function namesOption(flags: string, description: string): Option {
  return (
    new Option(flags, description)
      // Without a default of its own, so that the help shows none.
      .argParser((name: string, before: readonly string[] = []) => [...before, name])
  );
}

function examples(...lines: readonly (readonly [string, string])[]): string {
  const width = Math.max(...lines.map(([command]) => command.length));
  const rows = lines.map(([command, what]) => `  ${command.padEnd(width)}  ${what}`.trimEnd());
  return `\nExamples:\n${rows.join('\n')}\n`;
}

async function reportUsage(complaint: string, json: boolean, io: Io): Promise<void> {
  const { makeDiagnostic, visibleText } = await import('@loomproof/netlist');
  const { reportUnusable } = await import('./output/report-unusable.ts');
  const isHelp = !complaint.startsWith('error:');
  if (isHelp && !json) {
    io.err(complaint);
    return;
  }
  const [first = '', ...rest] = complaint
    .replace(/^error: /, '')
    .trim()
    .split('\n');
  const message = isHelp ? 'no command is given' : visibleText(first);
  const suggestion = rest.map((line) => visibleText(line.replace(/^\(|\)$/g, ''))).join(' ');
  const help = suggestion === '' ? 'see `loomproof --help`' : suggestion;
  reportUnusable([makeDiagnostic({ code: 'usage', message, help })], json, { verdict: null }, io);
}
